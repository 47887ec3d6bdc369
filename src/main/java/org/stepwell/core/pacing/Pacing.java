package org.stepwell.core.pacing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.problem.Refused;

/** All pacing rows of a unit, asked by day. Of a skill's rows with {@code due} up to the day the latest holds. */
public final class Pacing {
    private static final int SCHOOL_DAYS_BEFORE_DUE = 10;

    private final SortedMap<String, List<PacingRow>> bySkill = new TreeMap<>();

    /**
     * @param rows in any order
     * @throws IllegalArgumentException when a skill has two rows with the same due day; names both
     */
    public Pacing(List<PacingRow> rows) {
        for (PacingRow row : rows) {
            List<PacingRow> own = bySkill.computeIfAbsent(row.skill(), s -> new ArrayList<>());
            if (own.stream().anyMatch(r -> r.due().equals(row.due()))) {
                throw new Refused("pacing.twice", row.skill(), row.due());
            }
            own.add(row);
        }
        bySkill.values().forEach(list -> list.sort(Comparator.comparing(PacingRow::due)));
    }

    /** Every skill that has a row, due or not. */
    public SortedSet<String> skills() {
        return new TreeSet<>(bySkill.keySet());
    }

    /** The rows, by skill, oldest due first. */
    public List<PacingRow> rows() {
        return bySkill.values().stream().flatMap(List::stream).toList();
    }

    /** The row that holds for the skill on the day, also when it is one that ends the expectation. */
    public Optional<PacingRow> rowOn(String skill, LocalDate day) {
        return bySkill.getOrDefault(skill, List.of()).stream()
                .filter(r -> !r.due().isAfter(day))
                .reduce((older, newer) -> newer);
    }

    /** The due skills of the day with the step then expected, by skill code. */
    public SortedMap<String, Integer> dueOn(LocalDate day) {
        SortedMap<String, Integer> due = new TreeMap<>();
        for (String skill : bySkill.keySet()) {
            rowOn(skill, day).map(PacingRow::expectedStep).ifPresent(step -> due.put(skill, step));
        }
        return Collections.unmodifiableSortedMap(due);
    }

    /**
     * First day the class worked on the skill: the earliest {@code taughtFrom} given, else ten school days before the
     * first due day. Empty for a skill without rows.
     */
    public Optional<LocalDate> taughtFrom(String skill, SchoolCalendar calendar) {
        List<PacingRow> own = bySkill.getOrDefault(skill, List.of());
        if (own.isEmpty()) {
            return Optional.empty();
        }
        return own.stream()
                .map(PacingRow::taughtFrom)
                .filter(java.util.Objects::nonNull)
                .min(Comparator.naturalOrder())
                .or(() -> Optional.of(calendar.minusSchoolDays(own.getFirst().due(), SCHOOL_DAYS_BEFORE_DUE)));
    }

    /**
     * First day of the unit that is under way on the day: the earliest day on which the class worked on a skill whose
     * expectation has not ended by then. When all have ended, the earliest of all; empty without rows.
     */
    public Optional<LocalDate> unitStart(LocalDate day, SchoolCalendar calendar) {
        LocalDate open = null;
        LocalDate any = null;
        for (String skill : bySkill.keySet()) {
            LocalDate taught = taughtFrom(skill, calendar).orElseThrow();
            any = earlier(any, taught);
            Optional<PacingRow> row = rowOn(skill, day);
            if (row.isEmpty() || row.get().expectedStep() != null) {
                open = earlier(open, taught);
            }
        }
        return Optional.ofNullable(open == null ? any : open);
    }

    private static LocalDate earlier(@Nullable LocalDate a, LocalDate b) {
        return a == null || b.isBefore(a) ? b : a;
    }
}
