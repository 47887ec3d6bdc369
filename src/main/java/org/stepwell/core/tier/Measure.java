package org.stepwell.core.tier;

import java.util.Locale;

/**
 * Something a rule can ask about. Looks and days are valid ones on due skills, unless said otherwise; a share or chance
 * is 0 to 1.
 */
public enum Measure {
    /** Skills with an expected step today. */
    DUE_SKILLS(20),
    /** Looks within the window of the rule file. */
    LOOKS(1000),
    /** Different days with a look, within the window. */
    DAYS(100),
    /** Looks at any skill, due or not, within the window. */
    LOOKS_AT_ANY_SKILL(1000),
    /** Different days with a look at any skill, within the window; one after a hint or a model counts here too. */
    DAYS_AT_ANY_SKILL(100),
    /** Kinds of evidence in the unit: table, exit task, unit check, specialist. */
    KINDS(4),
    /** Skills seen on enough days within the window for a signal. */
    SKILLS_WITH_SIGNAL(20),
    /** School days since the last look. */
    SCHOOL_DAYS_SINCE_LOOK(250),
    /** School days since the last look at any skill, due or not. */
    SCHOOL_DAYS_SINCE_ANY_LOOK(250),
    /** Weekdays of break since the last look. */
    BREAK_DAYS_SINCE_LOOK(250),
    /** School days since the tier in force began. */
    SCHOOL_DAYS_IN_TIER(250),
    /** Looks since the last review. */
    LOOKS_SINCE_REVIEW(1000),
    /** Different numbers or tasks asked in the unit, at any skill, also with help; a look without one counts as another. */
    DIFFERENT_NUMBERS(100),
    /** Looks within the window at the step set as {@code free.step} or above with no objects out. */
    LOOKS_WITHOUT_OBJECTS(1000),
    /** The same at any skill, due or not. */
    FREE_LOOKS_AT_ANY_SKILL(1000),
    /** Sessions given of sessions planned; without a plan it does not apply. */
    SESSIONS_GIVEN(1),
    /** Share of the skills with a signal whose signal is "meets". */
    SKILLS_MEETING(1),
    /** Share of the skills with a signal whose signal is "below". */
    SKILLS_BELOW(1),
    /** Share of the skills with a signal whose signal is "meets" at the step set as {@code extension.step}. */
    SKILLS_MEETING_BEYOND(1),
    /** Share of the due skills with a unit-check item of which every item was right at the expected step or above. */
    CHECK_ALL_RIGHT(1),
    /** Lowest expected step of the due skills. */
    LOWEST_EXPECTED_STEP(5),
    /** Chance that the child needs support. */
    CHANCE_SUPPORT(1),
    /** Chance that the child is on level. */
    CHANCE_ON_LEVEL(1),
    /** Chance that the child is ready for extension. */
    CHANCE_EXTENSION(1),
    /** Chance that the child is on level or ready for extension. */
    CHANCE_NOT_SUPPORT(1),
    /** Chance that the child is on level or needs support. */
    CHANCE_NOT_EXTENSION(1),
    /** Chance that the child is ready for extension, today or at the end of the day of its last look: the lower one. */
    CHANCE_EXTENSION_AS_SEEN(1);

    private final double most;

    Measure(double most) {
        this.most = most;
    }

    /** The word used in rule files, such as {@code chance_support}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The largest threshold that makes sense. */
    public double most() {
        return most;
    }

    /** Whether it is a share or a chance, not a count. */
    public boolean share() {
        return most == 1;
    }
}
