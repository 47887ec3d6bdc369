package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Makes looks for tests: {@code look("C1", "T05", "2026-01-12", 3).help(Help.CUBES).make()}. */
public final class LookMaker {
    private static long next;

    private UUID id = new UUID(0x0190_0000_0000_7000L, 0x8000_0000_0000_0000L | ++next);
    private final String child;
    private final @Nullable String skill;
    private OffsetDateTime at;
    private final @Nullable Integer step;
    private Help help = Help.NONE;
    private Kind kind = Kind.TABLE;
    private String observer = "teacher";
    private @Nullable String task;
    private Set<String> tags = Set.of();
    private @Nullable UUID replaces;
    private boolean withdrawn;

    private LookMaker(String child, @Nullable String skill, LocalDate day, @Nullable Integer step) {
        this.child = child;
        this.skill = skill;
        this.at = day.atTime(10, 0).atOffset(ZoneOffset.ofHours(-6));
        this.step = step;
    }

    public static LookMaker look(String child, @Nullable String skill, String day, @Nullable Integer step) {
        return new LookMaker(child, skill, LocalDate.parse(day), step);
    }

    public static LookMaker look(String child, String skill, LocalDate day, int step) {
        return new LookMaker(child, skill, day, step);
    }

    public LookMaker id(UUID value) {
        id = value;
        return this;
    }

    public LookMaker at(String instant) {
        at = OffsetDateTime.parse(instant);
        return this;
    }

    public LookMaker help(Help value) {
        help = value;
        return this;
    }

    public LookMaker kind(Kind value) {
        kind = value;
        return this;
    }

    public LookMaker by(String value) {
        observer = value;
        return this;
    }

    public LookMaker task(String value) {
        task = value;
        return this;
    }

    public LookMaker tags(String... value) {
        tags = new TreeSet<>(Set.of(value));
        return this;
    }

    public LookMaker replaces(Look other) {
        replaces = other.id();
        return this;
    }

    public LookMaker withdraws(Look other) {
        replaces = other.id();
        withdrawn = true;
        return this;
    }

    public Look make() {
        return new Look(
                id, at, child, skill, task, step, help, kind, observer, tags, null, replaces, withdrawn, null);
    }
}
