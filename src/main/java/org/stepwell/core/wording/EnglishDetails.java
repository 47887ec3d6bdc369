package org.stepwell.core.wording;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Tier;

/** What costs more to find out about a suggestion, in English. */
final class EnglishDetails {
    private EnglishDetails() {}

    static String answer(Tier current, Details.Answer answer, EnglishPhrases words) {
        return switch (answer.verdict()) {
            case MOVE -> words.move(current, answer.suggested()) + " is suggested";
            case STAY -> (current == Tier.SUPPORT ? "help goes on" : "no change")
                    + (answer.fits() == current ? "" : " at first, but the looks fit " + words.gives(answer.fits()));
            case NOT_ENOUGH -> "not enough yet";
        };
    }

    static String settle(Details.Settle settle, boolean already, String reached, String missed, EnglishPhrases words) {
        int n = settle.looks().size();
        int days = (int) settle.looks().stream().map(Details.Wanted::day).distinct().count();
        List<String> skills = settle.looks().stream().map(Details.Wanted::skill).distinct().toList();
        String looks = Figures.count(n, "more look", "more looks") + " without cubes on " + words.list(skills)
                + (n > 1 ? " (" + Figures.count(days, "day", "days") + ")" : "");
        Kind kind = settle.looks().getFirst().kind();
        String other = kind == Kind.TABLE ? "" : (n == 1 ? " (" : " (one of them: ") + words.kind(kind) + ")";
        String start = already
                ? "Settled for now. " + looks + other + " could change it in " + words.cases(settle.likely()) + "."
                : looks + other + " would settle it in " + words.cases(settle.likely()) + ".";
        List<Integer> steps = settle.looks().stream().map(Details.Wanted::step).distinct().toList();
        String each = n == 1 ? "" : n == 2 ? " both times" : " each time";
        String there = steps.size() == 1 ? "Step " + steps.getFirst() + each : "The step asked for" + each;
        String short1 = steps.size() == 1 ? "Step " + Math.max(1, steps.getFirst() - 1) + each : "One step less" + each;
        return reached.equals(missed)
                ? start + " Either way: " + reached + "."
                : start + " " + there + ": " + reached + ". " + short1 + ": " + missed + ".";
    }

    static String notSettled(boolean already) {
        return already
                ? "Settled for now; a few more looks would hardly change it."
                : "A few more looks are not likely to settle it; go on looking.";
    }

    static String weighty(CountedLook look, Tier suggested, double chanceWithout, @Nullable String changed,
            EnglishPhrases words) {
        String start = named(look, words) + ": without it ";
        return changed == null
                ? start + "the looks fit " + words.gives(suggested) + " in " + words.cases(chanceWithout) + "."
                : start + changed + ".";
    }

    private static String named(CountedLook look, EnglishPhrases words) {
        return words.date(look.day()) + ", " + look.skill()
                + (look.look().task() == null ? "" : " with " + look.look().task()) + ", step " + look.step()
                + (look.look().help() == Help.NONE ? "" : " (" + words.help(look.look().help()) + ")");
    }

    static String noneDecides(List<CountedLook> heaviest, Tier suggested, double chance, EnglishPhrases words) {
        return "No single look decides: without any one of them, the looks fit " + words.gives(suggested) + " in "
                + words.cases(chance) + " as now. Those that weigh most: "
                + String.join("; ", heaviest.stream().map(l -> named(l, words)).toList()) + ".";
    }

    static String ask(Details.Ask ask, @Nullable String lookFor) {
        String start = "Next at the table: " + ask.skill() + (ask.number() == null ? "" : " with " + ask.number())
                + (ask.hideCubes() ? ", cubes hidden." : ", no cubes.");
        return lookFor == null
                ? start + " Look for step " + ask.expected() + "."
                : start + " Look for: " + lookFor + ".";
    }
}
