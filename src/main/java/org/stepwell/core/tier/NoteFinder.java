package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Tags;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.progression.Progression;

/** Finds what a teacher should hear beside the rules. Every note rests on looks or on what was written. */
final class NoteFinder {
    private static final int HARDLY = 2;
    private static final int THREE_WEEKS = 15;
    private static final int BAR_ROSE_WITHIN = 10;
    private static final int KEYSTONE_OF = 2;
    private static final double LITTLE_HELP = 0.6;

    private final ClassHistory history;

    NoteFinder(ClassHistory history) {
        this.history = history;
    }

    List<Note> of(ChildState state, Sight now, Judgement said) {
        List<Note> notes = new ArrayList<>();
        if (said.rule().equals(Suggestion.TOO_FEW_DUE)) {
            notes.add(new Note.TooFewDue(now.context().due().size()));
        }
        provisional(state, now, said).ifPresent(notes::add);
        notSeenLately(state, now, said).ifPresent(notes::add);
        if (notes.isEmpty()) {
            hardlySeen(now).ifPresent(notes::add);
        }
        helpNotGiven(state, said).ifPresent(notes::add);
        for (ChildState.OpenRequest open : state.open()) {
            notes.add(new Note.RequestOpen(open.kind(), open.on()));
        }
        notes.addAll(Disagreements.of(now));
        notes.addAll(SkillNotes.of(now));
        notes.addAll(barRose(now));
        notes.addAll(keystones(now));
        return notes;
    }

    private Optional<Note> provisional(ChildState state, Sight now, Judgement said) {
        LocalDate joined = state.joined();
        if (joined == null || said.verdict() != Verdict.NOT_ENOUGH) {
            return Optional.empty();
        }
        int notCounted = (int) history.looks().stream()
                .filter(l -> l.child().equals(state.child()) && notCounted(l, now.day()))
                .count();
        return Optional.of(
                new Note.Provisional(joined, now.valid().size(), Sight.days(now.valid()), notCounted));
    }

    private static boolean notCounted(Look look, LocalDate day) {
        return look.step() != null
                && !look.day().isAfter(day)
                && Tags.NO_EVIDENCE.stream().anyMatch(look.tags()::contains);
    }

    private static Optional<Note> notSeenLately(ChildState state, Sight now, Judgement said) {
        if (!said.rule().equals(Suggestion.NOT_SEEN_LATELY)) {
            return Optional.empty();
        }
        String skill = now.valid().getLast().skill();
        return Optional.of(new Note.NotSeenLately(now.lastSeen(), skill, state.tier() == Tier.SUPPORT));
    }

    private static Optional<Note> hardlySeen(Sight now) {
        LocalDate from = now.context().calendar().minusSchoolDays(now.day(), THREE_WEEKS - 1);
        int looks = (int)
                now.valid().stream().filter(l -> !l.day().isBefore(from)).count();
        boolean due = now.context().due().size() >= TierChances.FEWEST_DUE_SKILLS;
        return looks > HARDLY || !due ? Optional.empty() : Optional.of(new Note.HardlySeen(looks, THREE_WEEKS));
    }

    private static Optional<Note> helpNotGiven(ChildState state, Judgement said) {
        ChildState.Dose dose = state.dose();
        boolean enough = dose == null
                || dose.share() >= LITTLE_HELP && !said.rule().equals(Suggestion.TOO_FEW_SESSIONS);
        return enough
                ? Optional.empty()
                : Optional.of(new Note.HelpNotGiven(dose));
    }

    private static List<Note> barRose(Sight now) {
        List<Note> notes = new ArrayList<>();
        for (String skill : now.context().due().keySet()) {
            PacingRow row = now.context().pacing().rowOn(skill, now.day()).orElseThrow();
            Integer expected = row.expectedStep();
            Optional<Integer> before = now.context()
                    .pacing()
                    .rowOn(skill, row.due().minusDays(1))
                    .map(PacingRow::expectedStep);
            boolean lately = now.context().calendar().schoolDaysBetween(row.due(), now.day()) <= BAR_ROSE_WITHIN;
            if (expected != null && before.isPresent() && before.get() < expected && lately) {
                List<DayStep> days = now.daySteps().get(skill);
                boolean feltIt =
                        !days.isEmpty() && days.getLast().against(expected) == DayStep.Reading.BELOW;
                if (feltIt && days.getLast().step() >= before.get()) {
                    notes.add(new Note.BarRose(skill, before.get(), expected, row.due()));
                }
            }
        }
        return notes;
    }

    /** Due skills that at least two other skills of the progression rest on, and that are below what is expected. */
    private List<Note> keystones(Sight now) {
        List<Note> notes = new ArrayList<>();
        now.context().due().forEach((skill, expected) -> {
            DaySignal signal = now.signal(skill, expected);
            List<DayStep> days = now.daySteps().get(skill);
            boolean missed = signal == DaySignal.BELOW
                    || signal == DaySignal.TOO_FEW
                            && days.size() >= 2
                            && days.stream().allMatch(d -> d.against(expected) == DayStep.Reading.BELOW);
            List<String> needing = missed ? needing(skill) : List.of();
            if (needing.size() >= KEYSTONE_OF) {
                int step = SkillNotes.usual(days, now.context().settings().signal().days());
                notes.add(new Note.KeystoneMissed(skill, step, expected, List.copyOf(new TreeSet<>(needing))));
            }
        });
        notes.sort(Comparator.comparingInt(n -> -((Note.KeystoneMissed) n).neededBy().size()));
        return notes;
    }

    private List<String> needing(String skill) {
        return history.setting().progression().skills().stream()
                .filter(s -> s.needs().stream().anyMatch(n -> n.skill().equals(skill)))
                .map(Progression.Skill::code)
                .filter(c -> !c.equals(skill))
                .toList();
    }

    /** Looks at the table and elsewhere, without items of a unit check. */
    static List<CountedLook> watched(List<CountedLook> looks) {
        return looks.stream().filter(l -> !l.checkItem()).toList();
    }
}
