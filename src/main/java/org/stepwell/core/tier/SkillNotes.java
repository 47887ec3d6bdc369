package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.evidence.Tags;

/** Notes on single skills: hidden by cubes, nothing above, growing, ready in the one and not in the other. */
final class SkillNotes {
    /** Digits in the mirror are usual at six and no math evidence. */
    static final String MIRROR_WRITTEN = "mirror_written";

    private static final int FEWEST_DAYS = 3;
    private static final int GROWTH_DAYS = 4;
    private static final int TOP_STEP = 5;

    private SkillNotes() {}

    static List<Note> of(Sight now) {
        List<Note> notes = new ArrayList<>();
        Map<String, Integer> due = now.context().due();
        cubesHide(now).ifPresent(notes::add);
        due.forEach((skill, expected) -> growing(skill, expected, now).ifPresent(notes::add));
        due.forEach((skill, expected) -> nothingAbove(skill, expected, now).ifPresent(notes::add));
        butNot(now).ifPresent(notes::add);
        return notes;
    }

    /** No day had a look without objects, and none went beyond what is expected: nobody can tell. */
    private static Optional<Note> cubesHide(Sight now) {
        List<String> skills = new ArrayList<>();
        List<DayStep> hidden = new ArrayList<>();
        int atLeast = TOP_STEP;
        for (Map.Entry<String, Integer> due : now.context().due().entrySet()) {
            List<DayStep> days = now.daySteps().get(due.getKey());
            int highest = days.stream().mapToInt(DayStep::step).max().orElse(0);
            if (days.size() >= 2 && days.stream().allMatch(DayStep::atLeast) && highest <= due.getValue()) {
                skills.add(due.getKey());
                hidden.addAll(days);
                atLeast = Math.min(atLeast, days.getLast().step());
            }
        }
        int on = (int) hidden.stream().map(DayStep::day).distinct().count();
        return skills.isEmpty() ? Optional.empty() : Optional.of(new Note.CubesHide(skills, atLeast, on));
    }

    /** The step that is usual on the last days: the lower middle one of up to as many days as a signal looks at. */
    static int usual(List<DayStep> days, int last) {
        List<Integer> steps = days.subList(Math.max(0, days.size() - last), days.size()).stream()
                .map(DayStep::step)
                .sorted()
                .toList();
        return steps.get((steps.size() - 1) / 2);
    }

    /** Never down, and up within the last four days. */
    private static Optional<Note> growing(String skill, int expected, Sight now) {
        List<Integer> steps = now.watchedDays(skill).stream().map(DayStep::step).toList();
        boolean rising =
                steps.size() >= GROWTH_DAYS && steps.getLast() > steps.getFirst() && steps.getLast() < expected;
        for (int i = 1; i < steps.size(); i++) {
            rising &= steps.get(i) >= steps.get(i - 1);
        }
        rising = rising && steps.getLast() > steps.get(steps.size() - GROWTH_DAYS);
        return rising ? Optional.of(new Note.Growing(skill, steps, expected)) : Optional.empty();
    }

    /** The same good step on every day, nothing above it ever seen, and explained in other ways than speech. */
    private static Optional<Note> nothingAbove(String skill, int expected, Sight now) {
        List<DayStep> days = now.daySteps().get(skill);
        if (days.size() < FEWEST_DAYS) {
            return Optional.empty();
        }
        int step = days.getLast().step();
        boolean same = step >= expected && step < TOP_STEP && !days.getLast().atLeast();
        List<DayStep> last = days.subList(days.size() - FEWEST_DAYS, days.size());
        if (!same || last.stream().anyMatch(d -> d.step() != step)) {
            return Optional.empty();
        }
        List<CountedLook> own =
                now.looks().stream().filter(l -> l.skill().equals(skill)).toList();
        boolean top = own.stream().allMatch(l -> l.step() <= step);
        boolean unspoken = own.stream().noneMatch(l -> l.look().tags().contains(Tags.SAID))
                && last.stream().flatMap(d -> d.looks().stream()).anyMatch(CountedLook::explained);
        int on = (int) days.stream().filter(d -> d.step() == step).count();
        return top && unspoken ? Optional.of(new Note.NothingAbove(skill, step, on)) : Optional.empty();
    }

    /** Beyond what is expected in most due skills, and clearly below it in one. */
    private static Optional<Note> butNot(Sight now) {
        List<String> ahead = new ArrayList<>();
        List<String> behind = new ArrayList<>();
        now.context().due().forEach((skill, expected) -> {
            int beyond = Math.min(TOP_STEP, expected + 1);
            if (now.signal(skill, beyond) == DaySignal.MEETS) {
                ahead.add(skill);
            }
            List<DayStep> days = now.daySteps().get(skill);
            boolean below = days.size() >= 2
                    && days.stream().allMatch(d -> d.against(expected) == DayStep.Reading.BELOW);
            if (below) {
                behind.add(skill);
            }
        });
        if (ahead.size() < 2 || behind.isEmpty()) {
            return Optional.empty();
        }
        String skill = behind.getFirst();
        boolean mirror = now.looks().stream()
                .anyMatch(l -> l.skill().equals(skill) && l.look().tags().contains(MIRROR_WRITTEN));
        int step = usual(now.daySteps().get(skill), now.context().settings().signal().days());
        return Optional.of(new Note.ButNot(ahead, skill, step, now.context().due().get(skill), mirror));
    }
}
