package org.stepwell.plan;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.UUID;

/**
 * The frame of a plan that a school keeps to begin others from; nothing of a child is in it.
 *
 * @param templateId its id
 * @param version 1 for the first; the newest holds
 * @param name what the school calls it, at most 80 characters
 * @param support {@code true} for extra help, {@code false} for deeper work
 * @param skill code of the skill in focus
 * @param step step to be shown without help, 1-5
 * @param share share of looks without help that should show it, percent
 * @param goalWeeks weeks from the first day to the day of the goal, 1-52
 * @param role who gives it, such as aide; no name
 * @param perWeek sessions a school week, 1-10
 * @param minutes minutes of a session, 5-90
 * @param reviewWeeks weeks from the first day to the day to look at the plan again, 1-52
 * @param activity what is done; may be empty
 */
public record PlanTemplate(UUID templateId, int version, String name, boolean support, String skill, int step, int share,
        int goalWeeks, String role, int perWeek, int minutes, int reviewWeeks, String activity) {
    private static final int MOST_WEEKS = 52;

    /** The frame of a plan as it holds in a phase. */
    static PlanTemplate of(UUID templateId, String name, String role, boolean support, PlanTerms terms) {
        return new PlanTemplate(templateId, 1, name, support, terms.skill(), terms.step(), terms.share(),
                weeks(terms.from(), terms.by()), role, terms.perWeek(), terms.minutes(),
                weeks(terms.from(), terms.reviewOn()), terms.activity().strip());
    }

    /** Whole weeks, rounded up, so that no day comes sooner than it was meant. */
    private static int weeks(LocalDate from, LocalDate to) {
        long days = ChronoUnit.DAYS.between(from, to);
        return (int) Math.clamp((days + 6) / 7, 1, MOST_WEEKS);
    }

    /** The same by another name, as the next version. */
    PlanTemplate called(String other) {
        return new PlanTemplate(templateId, version + 1, other, support, skill, step, share, goalWeeks, role, perWeek,
                minutes, reviewWeeks, activity);
    }

    /**
     * Terms for a child.
     *
     * @param from first day
     * @param known skill in focus; the template's where the class has it
     * @param start step where the child stands, 1-5
     * @param givenBy name of the adult who gives it
     */
    public PlanTerms terms(LocalDate from, String known, int start, String givenBy) {
        return new PlanTerms(from, known, start, step, share, from.plusWeeks(goalWeeks), givenBy, perWeek, minutes,
                from.plusWeeks(reviewWeeks), activity);
    }
}
