package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.DayStep;

/**
 * What the rules say about one child on one day. The teacher decides.
 *
 * @param child the school's own id
 * @param day everything dated up to the end of this day was known
 * @param current tier in force
 * @param suggested tier in force if the suggestion is taken; equal to {@code current} unless the verdict is a move
 * @param chances of each tier by the model, under every rule file
 * @param looks valid looks on due skills
 * @param days on how many different days
 * @param lastSeen day of the newest of them
 * @param rule id of the rule that spoke: one of the rule file, or one of the constants of this type
 * @param conditions each measured against what was required, in the order of the rule file
 * @param skills the due skills, by code
 * @param notes what a teacher should hear, most important first
 * @param missing what would have to be seen before anything can be said; empty when there is enough
 * @param towards the tier of the move that came closest, when the verdict is a stay; {@code null} when no move applies
 * @param notBefore first day on which the minimum stay allows the move that is otherwise due
 * @param cautions that apply, the two that bear on this child most first
 * @param versions of the rules and of the parameters
 */
public record Suggestion(
        String child,
        LocalDate day,
        Tier current,
        Tier suggested,
        Verdict verdict,
        TierChances chances,
        int looks,
        int days,
        @Nullable LocalDate lastSeen,
        String rule,
        List<Condition> conditions,
        List<SkillSight> skills,
        List<Note> notes,
        List<Missing> missing,
        @Nullable Tier towards,
        @Nullable LocalDate notBefore,
        List<Caution> cautions,
        Versions versions) {

    /** Rule id when the tier goes on. */
    public static final String STAY = "stay";
    /** Rule id when too little was seen. */
    public static final String NOT_ENOUGH = "not_enough";
    /** Rule id when what was seen is too old. */
    public static final String NOT_SEEN_LATELY = "not_seen_lately";
    /** Rule id when fewer than two skills are due. */
    public static final String TOO_FEW_DUE = "too_few_due_skills";
    /** Rule id when planned help was not given. */
    public static final String TOO_FEW_SESSIONS = "too_few_sessions";

    /**
     * One due skill.
     *
     * @param expected step expected today
     * @param step the step the estimate gives, 1-5; 0 when never seen
     * @param atExpected chance of the expected step or above; {@code null} when never seen
     * @param looks valid looks
     * @param days on how many days
     * @param signal of the last evidence days
     * @param latest how the newest evidence day reads against the expected step; {@code null} when there is none
     */
    public record SkillSight(
            String skill,
            int expected,
            int step,
            @Nullable Double atExpected,
            int looks,
            int days,
            @Nullable LocalDate lastSeen,
            DaySignal signal,
            DayStep.@Nullable Reading latest) {}

    /**
     * Something to see first.
     *
     * @param measure which minimum is short
     * @param more by how much, at least 1
     */
    public record Missing(Measure measure, int more) {}

    /** Names and versions that make a suggestion reproducible. */
    public record Versions(String rules, String rulesVersion, String parametersVersion) {}

    /** Copies the lists. */
    public Suggestion {
        conditions = List.copyOf(conditions);
        skills = List.copyOf(skills);
        notes = List.copyOf(notes);
        missing = List.copyOf(missing);
        cautions = List.copyOf(cautions);
    }

    Suggestion with(List<Note> otherNotes, List<Caution> otherCautions) {
        return new Suggestion(
                child, day, current, suggested, verdict, chances, looks, days, lastSeen, rule, conditions, skills,
                otherNotes, missing, towards, notBefore, otherCautions, versions);
    }

    /** Chance of the suggested tier by the model, 0 to 1. */
    public double chance() {
        return chances.of(suggested);
    }
}
