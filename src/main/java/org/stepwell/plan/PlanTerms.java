package org.stepwell.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * What holds in a phase of a plan.
 *
 * @param from first day
 * @param skill code of the skill in focus
 * @param start step where the child stood, 1-5
 * @param step step to be shown without help, 1-5
 * @param share share of looks without help that should show it, percent
 * @param by day by which; after {@code from}
 * @param givenBy name of the adult who gives it, as it stands in letters
 * @param perWeek sessions a school week, 1-10
 * @param minutes minutes of a session, 5-90
 * @param reviewOn day to look at the plan again
 * @param activity what is done; may be empty
 */
public record PlanTerms(LocalDate from, String skill, int start, int step, int share, LocalDate by, String givenBy,
        int perWeek, int minutes, LocalDate reviewOn, String activity) {

    /** What is wrong with the terms, by the names of the fields; empty when nothing is. */
    public List<String> problems() {
        List<String> wrong = new ArrayList<>();
        check(wrong, !skill.isBlank(), "skill");
        check(wrong, start >= 1 && start <= 5, "start");
        check(wrong, step >= 1 && step <= 5, "step");
        check(wrong, share >= 1 && share <= 100, "share");
        check(wrong, by.isAfter(from), "by");
        check(wrong, !givenBy.isBlank() && givenBy.strip().length() <= 120, "given-by");
        check(wrong, perWeek >= 1 && perWeek <= 10, "per-week");
        check(wrong, minutes >= 5 && minutes <= 90, "minutes");
        check(wrong, reviewOn.isAfter(from), "review");
        check(wrong, activity.length() <= 2000, "activity");
        return wrong;
    }

    private static void check(List<String> wrong, boolean good, String name) {
        if (!good) {
            wrong.add(name);
        }
    }
}
