package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.LookMaker;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;

/**
 * One child and two due skills seen on the same days, which stand for the one skill of a scenario. The week of the
 * review is 9-13 March 2026, the review before it on Friday 6 March.
 */
final class TwoSkills {
    static final String CHILD = "C1";
    static final LocalDate TODAY = LocalDate.of(2026, 3, 13);
    static final LocalDate LAST_REVIEW = LocalDate.of(2026, 3, 6);
    static final List<String> SKILLS = List.of("A1", "A2");

    private final List<Look> looks = new ArrayList<>();
    private int expected = 4;
    private ChildState state = new ChildState(
            CHILD, Tier.ON_LEVEL, null, List.of(LocalDate.of(2026, 2, 27), LAST_REVIEW), null, null, List.of());

    TwoSkills expecting(int step) {
        expected = step;
        return this;
    }

    /** In support since so many school days. */
    TwoSkills inSupport(int schoolDays) {
        LocalDate since = new SchoolCalendar(List.of()).minusSchoolDays(TODAY, schoolDays);
        state = new ChildState(CHILD, Tier.SUPPORT, since, state.reviews(), null, state.dose(), List.of());
        return this;
    }

    TwoSkills dose(int given, int planned) {
        state = new ChildState(
                CHILD, state.tier(), state.since(), state.reviews(), null,
                new ChildState.Dose(planned, given, planned - given, 0), List.of());
        return this;
    }

    /** One look a day at each skill, on the given days of March; the looks differ in their task. */
    TwoSkills days(List<Integer> days, List<Integer> steps, UnaryOperator<LookMaker> how) {
        for (int i = 0; i < steps.size(); i++) {
            for (String skill : SKILLS) {
                looks.add(how.apply(LookMaker.look(CHILD, skill, march(days.get(i)), steps.get(i))).make());
            }
        }
        return this;
    }

    TwoSkills days(List<Integer> days, List<Integer> steps) {
        return days(days, steps, l -> l);
    }

    TwoSkills look(String skill, int day, int step, UnaryOperator<LookMaker> how) {
        looks.add(how.apply(LookMaker.look(CHILD, skill, march(day), step)).make());
        return this;
    }

    /** A day of March 2026; 0 and below reach into February. */
    static LocalDate march(int day) {
        return LocalDate.of(2026, 3, 1).plusDays(day - 1L);
    }

    ClassSetting setting() {
        List<PacingRow> rows = SKILLS.stream()
                .map(s -> new PacingRow(s, LocalDate.of(2026, 2, 2), LocalDate.of(2026, 2, 9), expected))
                .toList();
        return new ClassSetting(
                new Progression("two", List.of(), List.of()), new Pacing(rows), new SchoolCalendar(List.of()), true);
    }

    ChildState state() {
        return state;
    }

    List<Look> looks() {
        return looks;
    }

    Reviewer reviewer(String rules) {
        return new Reviewer(setting(), looks, RuleFile.shipped(rules), Parameters.shipped());
    }

    Suggestion ask(String rules) {
        return reviewer(rules).review(List.of(state), TODAY).suggestions().getFirst();
    }

    @Nullable Note note(Suggestion suggestion, Class<? extends Note> kind) {
        return suggestion.notes().stream().filter(kind::isInstance).findFirst().orElse(null);
    }
}
