package org.stepwell.core.tier;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;

/** Takes every {@link Measure} of a child on a day. */
final class Measuring {
    private static final Set<Kind> KINDS_THAT_COUNT =
            EnumSet.of(Kind.TABLE, Kind.EXIT_TASK, Kind.UNIT_CHECK, Kind.SPECIALIST);

    private Measuring() {}

    /** Measures that rest on what was decided and written beside the looks; all others are the sight's own. */
    private static final Set<Measure> OF_THE_STATE =
            EnumSet.of(Measure.SCHOOL_DAYS_IN_TIER, Measure.LOOKS_SINCE_REVIEW, Measure.SESSIONS_GIVEN);

    /** The value; {@code null} where the measure does not apply or cannot be known. */
    static @Nullable Double measure(Measure measure, Sight sight, ChildState state) {
        return OF_THE_STATE.contains(measure)
                ? taken(measure, sight, state)
                : sight.measured(measure, () -> taken(measure, sight, state));
    }

    private static @Nullable Double taken(Measure measure, Sight sight, ChildState state) {
        DayContext context = sight.context();
        return switch (measure) {
            case DUE_SKILLS -> (double) context.due().size();
            case LOOKS -> (double) sight.inWindow().size();
            case DAYS -> (double) Sight.days(sight.inWindow());
            case LOOKS_AT_ANY_SKILL -> (double) sight.anySkillInWindow().size();
            case DAYS_AT_ANY_SKILL -> (double) Sight.days(sight.seenInWindow());
            case KINDS -> (double) kinds(sight).size();
            case SKILLS_WITH_SIGNAL -> (double) signals(sight, null).size();
            case SCHOOL_DAYS_SINCE_LOOK -> sight.lastSeen() == null
                    ? null
                    : (double) context.calendar().schoolDaysBetween(sight.lastSeen(), sight.day());
            case SCHOOL_DAYS_SINCE_ANY_LOOK -> sight.lastSeenAtAnySkill() == null
                    ? null
                    : (double) context.calendar().schoolDaysBetween(sight.lastSeenAtAnySkill(), sight.day());
            case BREAK_DAYS_SINCE_LOOK -> sight.lastSeen() == null
                    ? null
                    : (double) context.calendar().breakDaysBetween(sight.lastSeen(), sight.day());
            case SCHOOL_DAYS_IN_TIER -> state.since() == null
                    ? null
                    : (double) context.calendar().schoolDaysBetween(state.since(), sight.day());
            case LOOKS_SINCE_REVIEW -> (double) sinceReview(sight, state);
            case DIFFERENT_NUMBERS -> numbers(sight.askedInUnit());
            case LOOKS_WITHOUT_OBJECTS -> (double) withoutObjects(sight, sight.inWindow());
            case FREE_LOOKS_AT_ANY_SKILL -> (double) withoutObjects(sight, sight.anySkillInWindow());
            case SESSIONS_GIVEN -> state.dose() == null ? null : state.dose().share();
            case SKILLS_MEETING -> share(signals(sight, null), DaySignal.MEETS);
            case SKILLS_BELOW -> share(signals(sight, null), DaySignal.BELOW);
            case SKILLS_MEETING_BEYOND -> share(
                    signals(sight, context.settings().extensionStep()), DaySignal.MEETS);
            case CHECK_ALL_RIGHT -> checkAllRight(sight);
            case LOWEST_EXPECTED_STEP -> context.due().values().stream()
                    .min(Integer::compare)
                    .map(Integer::doubleValue)
                    .orElse(null);
            case CHANCE_SUPPORT -> sight.chances().support();
            case CHANCE_ON_LEVEL -> sight.chances().onLevel();
            case CHANCE_EXTENSION -> sight.chances().extension();
            case CHANCE_NOT_SUPPORT -> 1 - sight.chances().support();
            case CHANCE_NOT_EXTENSION -> 1 - sight.chances().extension();
            case CHANCE_EXTENSION_AS_SEEN -> Math.min(
                    sight.chances().extension(), sight.chancesWhenSeen().extension());
        };
    }

    /** Whether a requirement counts as met where the measure does not apply. */
    static boolean passesWhenUnknown(Measure measure) {
        return switch (measure) {
            case SESSIONS_GIVEN,
                    DIFFERENT_NUMBERS,
                    SCHOOL_DAYS_IN_TIER,
                    SCHOOL_DAYS_SINCE_LOOK,
                    SCHOOL_DAYS_SINCE_ANY_LOOK,
                    BREAK_DAYS_SINCE_LOOK -> true;
            default -> false;
        };
    }

    static Set<Kind> kinds(Sight sight) {
        return sight.inUnit().stream()
                .map(l -> l.look().kind())
                .filter(KINDS_THAT_COUNT::contains)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Kind.class)));
    }

    /** Signals of the due skills seen on enough days, against the given step or each skill's expected one. */
    private static Map<String, DaySignal> signals(Sight sight, @Nullable Integer step) {
        Map<String, DaySignal> all = new TreeMap<>();
        sight.context().due().forEach((skill, expected) -> {
            DaySignal signal = sight.signal(skill, step == null ? expected : step);
            if (signal != DaySignal.TOO_FEW) {
                all.put(skill, signal);
            }
        });
        return all;
    }

    private static @Nullable Double share(Map<String, DaySignal> signals, DaySignal wanted) {
        if (signals.isEmpty()) {
            return null;
        }
        long hits = signals.values().stream().filter(s -> s == wanted).count();
        return (double) hits / signals.size();
    }

    private static long sinceReview(Sight sight, ChildState state) {
        return sight.valid().stream()
                .filter(l -> state.reviews().stream()
                        .filter(r -> r.isBefore(sight.day()))
                        .allMatch(r -> l.day().isAfter(r)))
                .count();
    }

    /**
     * Different tasks; a look without a written task counts as one of its own. Where nobody writes numbers down, how
     * many there were cannot be known.
     */
    private static @Nullable Double numbers(List<CountedLook> looks) {
        long written = looks.stream()
                .map(l -> l.look().task())
                .filter(t -> t != null && !t.isBlank())
                .distinct()
                .count();
        long unwritten = looks.stream()
                .filter(l -> l.look().task() == null || l.look().task().isBlank())
                .count();
        return written == 0 ? null : (double) (written + unwritten);
    }

    private static long withoutObjects(Sight sight, List<CountedLook> looks) {
        int step = sight.context().settings().freeStep();
        return looks.stream()
                .filter(l -> !l.checkItem())
                .filter(l -> l.step() >= step && (l.look().help() == Help.NONE || !l.atLeast()))
                .count();
    }

    private static @Nullable Double checkAllRight(Sight sight) {
        Map<String, Boolean> rightBySkill = new TreeMap<>();
        for (CountedLook look : sight.inUnit()) {
            Integer expected = sight.context().due().get(look.skill());
            if (look.checkItem() && expected != null) {
                rightBySkill.merge(look.skill(), look.step() >= expected, Boolean::logicalAnd);
            }
        }
        if (rightBySkill.isEmpty()) {
            return null;
        }
        long right = rightBySkill.values().stream().filter(r -> r).count();
        return (double) right / rightBySkill.size();
    }
}
