package org.stepwell.core.tier;

import java.time.ZoneOffset;
import java.util.Set;
import java.util.UUID;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Look;

/** Looks that nobody has made: to ask what would follow from them. Never stored. */
final class Supposed {
    private static final long MARK = 0x5_0995_ed00_7000L;

    private Supposed() {}

    /** The wanted look, without help, showing its step or the one below. */
    static CountedLook look(String child, Details.Wanted wanted, boolean reached, int index) {
        int step = reached ? wanted.step() : Math.max(1, wanted.step() - 1);
        Look look = new Look(
                new UUID(MARK, 0x8000_0000_0000_0000L | index),
                wanted.day().atTime(12, 0).atOffset(ZoneOffset.UTC).plusMinutes(index),
                child,
                wanted.skill(),
                null,
                step,
                Help.NONE,
                wanted.kind(),
                "",
                Set.of(),
                null,
                null,
                false,
                null);
        return new CountedLook(look, wanted.skill(), step, false);
    }
}
