package org.stepwell.core.wording;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.ClassDip;
import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.Note;
import org.stepwell.core.tier.Requirement;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;

/** English. */
final class EnglishPhrases implements Phrasebook {
    private static final List<String> MONTHS = List.of(
            "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
            "November", "December");

    private static String count(int n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }

    @Override
    public String date(LocalDate day) {
        return MONTHS.get(day.getMonthValue() - 1) + " " + day.getDayOfMonth();
    }

    @Override
    public String tier(Tier tier) {
        return switch (tier) {
            case SUPPORT -> "support";
            case ON_LEVEL -> "on level";
            case EXTENSION -> "extension";
        };
    }

    @Override
    public String gives(Tier tier) {
        return switch (tier) {
            case SUPPORT -> "more help";
            case ON_LEVEL -> "going on with the class";
            case EXTENSION -> "deeper work";
        };
    }

    @Override
    public String move(Tier from, Tier to) {
        if (to == Tier.SUPPORT) {
            return "more help";
        }
        if (to == Tier.EXTENSION) {
            return "deeper work";
        }
        return from == Tier.SUPPORT ? "less help" : "going on with the class";
    }

    @Override
    public String verdict(Verdict verdict) {
        return switch (verdict) {
            case MOVE -> "a change is suggested";
            case STAY -> "no change";
            case NOT_ENOUGH -> "not enough yet";
        };
    }

    @Override
    public String cases(double chance) {
        int ten = Figures.ofTen(chance);
        return ten == 0 ? "hardly any case" : ten == 10 ? "nearly all cases" : "about " + ten + " of 10 cases";
    }

    @Override
    public String fits(Tier tier, double chance) {
        return "The looks fit " + gives(tier) + " in " + cases(chance) + ".";
    }

    @Override
    public String daysSpeak(Tier from, Tier to, int reviews) {
        boolean help = to.ordinal() < from.ordinal();
        String at = reviews > 1 ? ", at " + reviews + " reviews in a row" : "";
        return help
                ? "On most skills the last days fall short of the expected step" + at + "."
                : "On most skills the last days reach the step asked for" + at + ".";
    }

    @Override
    public String checkSpeaks() {
        return "Every item of the unit check was right, and the days at the table agree.";
    }

    @Override
    public String heldBack(Tier from, Tier to, String open) {
        String move = move(from, to);
        return Character.toUpperCase(move.charAt(0)) + move.substring(1) + " fits, but " + open + ".";
    }

    @Override
    public String open(Condition condition, @Nullable LocalDate notBefore) {
        Requirement required = condition.required();
        if (condition.held() > 0) {
            int more = required.reviews() - condition.held();
            return count(more, "more review has", "more reviews have") + " to say the same";
        }
        return switch (required.measure()) {
            case SCHOOL_DAYS_IN_TIER -> "help runs for " + Figures.plain(required.threshold()) + " school days first"
                    + (notBefore == null ? "" : ": from " + date(notBefore) + " on");
            case LOOKS_WITHOUT_OBJECTS -> "there is no such look without cubes yet";
            case LOOKS_SINCE_REVIEW -> "nobody has looked since the last review";
            case DIFFERENT_NUMBERS -> "fewer than " + Figures.plain(required.threshold())
                    + " different numbers were asked";
            case SESSIONS_GIVEN -> "too few of the planned sessions were given";
            default -> measure(required.measure()) + " should be " + required(required) + ", and is "
                    + measured(condition);
        };
    }

    @Override
    public String goesOn(Tier tier) {
        return switch (tier) {
            case SUPPORT -> "Help goes on.";
            case ON_LEVEL -> "No change.";
            case EXTENSION -> "Deeper work goes on.";
        };
    }

    @Override
    public String daysTell(int meeting, int below, int skills) {
        return "On the last days " + meeting + " of " + skills + " skills reach the expected step, " + below
                + (below == 1 ? " falls" : " fall") + " short.";
    }

    @Override
    public String notEnough(int looks, List<Suggestion.Missing> missing) {
        List<String> parts = new ArrayList<>();
        for (Suggestion.Missing one : missing) {
            parts.add(
                    switch (one.measure()) {
                        case LOOKS, LOOKS_SINCE_REVIEW -> count(one.more(), "more look", "more looks");
                        case DAYS -> count(one.more(), "more day", "more days");
                        case KINDS -> "another kind of evidence";
                        case SKILLS_WITH_SIGNAL -> count(one.more(), "more day", "more days") + " on one skill";
                        default -> measure(one.measure()) + " + " + one.more();
                    });
        }
        String start = looks == 0 ? "Not enough yet: 0 valid looks" : "Not enough yet";
        return parts.isEmpty() ? start + "." : start + (looks == 0 ? "; " : ": ") + list(parts) + ".";
    }

    @Override
    public String note(Note note) {
        return EnglishNotes.note(note, this);
    }

    @Override
    public String caution(Caution caution) {
        return EnglishNotes.caution(caution);
    }

    @Override
    public String dip(ClassDip dip) {
        return dip.skill() == null
                ? dip.children() + " of " + dip.of() + " are suggested for more help: look at the lesson first."
                : dip.children() + " of the " + dip.of() + " seen on " + dip.skill()
                        + " fall short there: look at the lesson first.";
    }

    @Override
    public String measure(Measure measure) {
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
        };
    }

    @Override
    public String required(Requirement requirement) {
        String words = switch (requirement.comparison()) {
            case AT_LEAST -> "at least ";
            case AT_MOST -> "at most ";
            case MORE_THAN -> "more than ";
        };
        String at = requirement.reviews() > 1 ? ", at " + requirement.reviews() + " reviews in a row" : "";
        return words + Figures.of(requirement.measure(), requirement.threshold(), " of 10") + at;
    }

    @Override
    public String measured(Condition condition) {
        Double value = condition.measured();
        if (value == null) {
            return Measure.SKILLS_MEETING == condition.required().measure() ? "not known" : "does not apply";
        }
        Requirement required = condition.required();
        String times = condition.held() > 0 && required.reviews() > 1
                ? " (at " + condition.held() + " of " + required.reviews() + " reviews)"
                : "";
        return Figures.of(required.measure(), value, " of 10") + times;
    }

    @Override
    public String answer(Tier current, Details.Answer answer) {
        return switch (answer.verdict()) {
            case MOVE -> move(current, answer.suggested()) + " is suggested";
            case STAY -> (current == Tier.SUPPORT ? "help goes on" : "no change")
                    + (answer.fits() == current ? "" : " at first, but the looks fit " + gives(answer.fits()));
            case NOT_ENOUGH -> "not enough yet";
        };
    }

    @Override
    public String settle(Details.Settle settle, boolean already, String reached, String missed) {
        int n = settle.looks().size();
        int days = (int) settle.looks().stream().map(Details.Wanted::day).distinct().count();
        List<String> skills = settle.looks().stream().map(Details.Wanted::skill).distinct().toList();
        String looks = count(n, "more look", "more looks") + " without cubes on " + list(skills)
                + (n > 1 ? " (" + count(days, "day", "days") + ")" : "");
        Kind kind = settle.looks().getFirst().kind();
        String other = kind == Kind.TABLE ? "" : " (one of them: " + kind(kind) + ")";
        String start = already
                ? "Settled for now. " + looks + other + " could change it in " + cases(settle.likely()) + "."
                : looks + other + " would settle it in " + cases(settle.likely()) + ".";
        List<Integer> steps = settle.looks().stream().map(Details.Wanted::step).distinct().toList();
        String each = n == 1 ? "" : n == 2 ? " both times" : " each time";
        String there = steps.size() == 1 ? "Step " + steps.getFirst() + each : "The step asked for" + each;
        String short1 = steps.size() == 1 ? "Step " + Math.max(1, steps.getFirst() - 1) + each : "One step less" + each;
        return reached.equals(missed)
                ? start + " Either way: " + reached + "."
                : start + " " + there + ": " + reached + ". " + short1 + ": " + missed + ".";
    }

    @Override
    public String notSettled(boolean already) {
        return already
                ? "Settled for now; a few more looks would hardly change it."
                : "A few more looks are not likely to settle it; go on looking.";
    }

    @Override
    public String weighty(CountedLook look, Tier suggested, double chanceWithout, @Nullable String changed) {
        String start = date(look.day()) + ", " + look.skill() + ", step " + look.step()
                + (look.look().help() == Help.NONE ? "" : " (" + help(look.look().help()) + ")") + ": without it ";
        return changed == null
                ? start + "the looks fit " + gives(suggested) + " in " + cases(chanceWithout) + "."
                : start + changed + ".";
    }

    @Override
    public String ask(Details.Ask ask, @Nullable String lookFor) {
        String start = "Next at the table: " + ask.skill() + (ask.number() == null ? "" : " with " + ask.number())
                + (ask.hideCubes() ? ", cubes hidden." : ", no cubes.");
        return lookFor == null
                ? start + " Look for step " + ask.expected() + "."
                : start + " Look for: " + lookFor + ".";
    }

    @Override
    public String help(Help help) {
        return switch (help) {
            case NONE -> "no help";
            case CUBES -> "with cubes";
            case PROMPT -> "after a hint";
            case MODELLED -> "after it was shown";
        };
    }

    @Override
    public String kind(Kind kind) {
        return switch (kind) {
            case TABLE -> "at the table";
            case EXIT_TASK -> "an exit task";
            case UNIT_CHECK -> "a unit check";
            case SPECIALIST -> "with the specialist";
            case OTHER -> "elsewhere";
        };
    }

    @Override
    public String list(Collection<String> words) {
        List<String> all = List.copyOf(words);
        return all.size() < 2
                ? String.join("", all)
                : String.join(", ", all.subList(0, all.size() - 1)) + " and " + all.getLast();
    }
}
