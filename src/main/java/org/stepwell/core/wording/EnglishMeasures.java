package org.stepwell.core.wording;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.Requirement;

/** What is measured and what is required, in English. */
final class EnglishMeasures {
    private EnglishMeasures() {}

    static String open(Condition condition, @Nullable LocalDate notBefore, EnglishPhrases words) {
        Requirement required = condition.required();
        if (condition.held() > 0) {
            int more = required.reviews() - condition.held();
            return Figures.count(more, "more review has", "more reviews have") + " to say the same";
        }
        return switch (required.measure()) {
            case SCHOOL_DAYS_IN_TIER -> "help runs for " + Figures.plain(required.threshold()) + " school days first"
                    + (notBefore == null ? "" : ": from " + words.date(notBefore) + " on");
            case LOOKS_WITHOUT_OBJECTS, FREE_LOOKS_AT_ANY_SKILL -> "there is no such look without cubes yet";
            case LOOKS_SINCE_REVIEW -> "nobody has looked since the last review";
            case DIFFERENT_NUMBERS -> "fewer than " + Figures.plain(required.threshold())
                    + " different numbers were asked";
            case SESSIONS_GIVEN -> "too few of the planned sessions were given";
            default -> measure(required.measure()) + " should be " + required(required) + ", and is "
                    + measured(condition);
        };
    }

    static String measure(Measure measure) {
        return switch (measure) {
            case DUE_SKILLS -> "Skills that are due";
            case LOOKS -> "Looks";
            case DAYS -> "Days with a look";
            case KINDS -> "Kinds of evidence";
            case SKILLS_WITH_SIGNAL -> "Skills seen on enough days";
            case SCHOOL_DAYS_SINCE_LOOK -> "School days since the last look";
            case BREAK_DAYS_SINCE_LOOK -> "Days of break since the last look";
            case SCHOOL_DAYS_IN_TIER -> "School days since the last change";
            case LOOKS_SINCE_REVIEW -> "Looks since the last review";
            case DIFFERENT_NUMBERS -> "Different numbers asked";
            case LOOKS_WITHOUT_OBJECTS -> "Looks without cubes at the step asked for";
            case SESSIONS_GIVEN -> "Planned sessions that were given";
            case SKILLS_MEETING -> "Skills whose last days reach the expected step";
            case SKILLS_BELOW -> "Skills whose last days fall short of it";
            case SKILLS_MEETING_BEYOND -> "Skills whose last days reach the highest step";
            case CHECK_ALL_RIGHT -> "Skills with every unit-check item right";
            case LOWEST_EXPECTED_STEP -> "Lowest step expected";
            case CHANCE_SUPPORT -> "Cases in which the looks fit more help";
            case CHANCE_ON_LEVEL -> "Cases in which the looks fit going on with the class";
            case CHANCE_EXTENSION -> "Cases in which the looks fit deeper work";
            case CHANCE_NOT_SUPPORT -> "Cases in which the looks fit going on without extra help";
            case CHANCE_NOT_EXTENSION -> "Cases in which the looks fit going on without deeper work";
            case SCHOOL_DAYS_SINCE_ANY_LOOK -> "School days since the last look at any skill";
            case LOOKS_AT_ANY_SKILL -> "Looks at any skill";
            case DAYS_AT_ANY_SKILL -> "Days with a look at any skill";
            case FREE_LOOKS_AT_ANY_SKILL -> "Looks without cubes at any skill";
            case CHANCE_EXTENSION_AS_SEEN -> "Cases in which the looks fit deeper work, silence set aside";
        };
    }

    static String required(Requirement requirement) {
        String words = switch (requirement.comparison()) {
            case AT_LEAST -> "at least ";
            case AT_MOST -> "at most ";
            case MORE_THAN -> "more than ";
        };
        String at = requirement.reviews() > 1 ? ", at " + requirement.reviews() + " reviews in a row" : "";
        return words + Figures.of(requirement.measure(), requirement.threshold(), " of 10") + at;
    }

    static String measured(Condition condition) {
        Double value = condition.measured();
        if (value == null) {
            return Measure.SKILLS_MEETING == condition.required().measure() ? "not known" : "does not apply";
        }
        Requirement required = condition.required();
        String times = condition.held() > 0 && required.reviews() > 1
                ? " (at " + condition.held() + " of " + required.reviews() + " reviews)"
                : "";
        return Figures.measured(condition, " of 10", "under ", "over ") + times;
    }
}
