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
        return EnglishMeasures.open(condition, notBefore, this);
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
                        case LOOKS, LOOKS_AT_ANY_SKILL, LOOKS_SINCE_REVIEW -> Figures.count(one.more(), "more look", "more looks");
                        case DAYS, DAYS_AT_ANY_SKILL -> Figures.count(one.more(), "more day", "more days");
                        case KINDS -> "another kind of evidence";
                        case SKILLS_WITH_SIGNAL -> Figures.count(one.more(), "more day", "more days") + " on one skill";
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
        return EnglishMeasures.measure(measure);
    }

    @Override
    public String required(Requirement requirement) {
        return EnglishMeasures.required(requirement);
    }

    @Override
    public String measured(Condition condition) {
        return EnglishMeasures.measured(condition);
    }

    @Override
    public String answer(Tier current, Details.Answer answer) {
        return EnglishDetails.answer(current, answer, this);
    }

    @Override
    public String settle(Details.Settle settle, boolean already, String reached, String missed) {
        return EnglishDetails.settle(settle, already, reached, missed, this);
    }

    @Override
    public String notSettled(boolean already) {
        return EnglishDetails.notSettled(already);
    }

    @Override
    public String weighty(CountedLook look, Tier suggested, double chanceWithout, @Nullable String changed) {
        return EnglishDetails.weighty(look, suggested, chanceWithout, changed, this);
    }

    @Override
    public String noneDecides(List<CountedLook> heaviest, Tier suggested, double chance) {
        return EnglishDetails.noneDecides(heaviest, suggested, chance, this);
    }

    @Override
    public String ask(Details.Ask ask, @Nullable String lookFor) {
        return EnglishDetails.ask(ask, lookFor);
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
