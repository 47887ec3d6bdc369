package org.stepwell.observation;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.problem.Problem;

/**
 * What to make of a tablet's clock. A look carries the tablet's time and, when it was measured, how far that is from
 * the server's. Up to two minutes nothing is done; beyond, the day of the look is taken by the server's clock, so that a
 * tablet a day behind moves no look to another day. The tablet's own time stays known: stored time plus difference.
 */
final class TabletClock {
    /** From this difference on a tablet's time is not trusted. */
    static final Duration WILD = Duration.ofMinutes(2);
    /** A difference of more than a century is no measurement and is left alone. */
    private static final Duration BELIEVABLE = Duration.ofDays(36_525);
    /** Said of a look whose difference was never measured and that claims to come from the future. */
    static final Problem AHEAD = Problem.of("look.ahead");

    private TabletClock() {
    }

    /** The look at the time it was made by the server's clock; the same look when the tablet's clock was near enough. */
    static Look corrected(Look look) {
        Long off = look.clockOffsetMs();
        if (!measuredWild(off)) {
            return look;
        }
        OffsetDateTime at = look.observedAt().minus(off, ChronoUnit.MILLIS);
        return new Look(look.id(), at, look.child(), look.skill(), look.task(), look.step(), look.help(), look.kind(),
                look.observer(), look.tags(), look.note(), look.replaces(), look.withdrawn(), off);
    }

    /** Whether a look claims to have been made after it was stored, beyond what clocks may differ. */
    static boolean ahead(Look look, Instant recordedAt) {
        return look.observedAt().toInstant().isAfter(recordedAt.plus(WILD));
    }

    /** Whether the time of a stored look rests on more than the tablet's word, or is in doubt. */
    static boolean wild(Look look, Instant recordedAt) {
        Long off = look.clockOffsetMs();
        return measuredWild(off) || ahead(look, recordedAt);
    }

    private static boolean measuredWild(@Nullable Long off) {
        if (off == null) {
            return false;
        }
        Duration difference = Duration.ofMillis(off).abs();
        return difference.compareTo(WILD) >= 0 && difference.compareTo(BELIEVABLE) <= 0;
    }
}
