package org.stepwell.core.tier;

/**
 * How the measures of a rule file are taken.
 *
 * @param windowDays looks and days count within so many of the last school days, 1-250
 * @param signal how days become a signal
 * @param freeStep step that must be shown without objects to count as {@link Measure#LOOKS_WITHOUT_OBJECTS}, 1-5
 * @param extensionStep step that {@link Measure#SKILLS_MEETING_BEYOND} is held against, 1-5
 * @param settledChance from this chance of the suggested tier on, a stay needs no more looks, 0.5-1
 * @param dipShare more than this share of a class in the same place, and the lesson comes first, 0-1
 */
public record RuleSettings(
        int windowDays,
        DaySignal.Window signal,
        int freeStep,
        int extensionStep,
        double settledChance,
        double dipShare) {}
