package org.stepwell.core.wording;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Tier;

/** What costs more to find out about a suggestion, in Spanish. */
final class SpanishDetails {
    private SpanishDetails() {}

    static String answer(Tier current, Details.Answer answer, SpanishPhrases words) {
        return switch (answer.verdict()) {
            case MOVE -> "se sugiere " + words.move(current, answer.suggested());
            case STAY -> (current == Tier.SUPPORT ? "la ayuda sigue" : "sin cambio")
                    + (answer.fits() == current ? ""
                            : " al principio, pero concuerda con " + words.gives(answer.fits()));
            case NOT_ENOUGH -> "falta información";
        };
    }

    static String settle(
            Details.Settle settle, boolean already, String reached, String missed, SpanishPhrases words) {
        int n = settle.looks().size();
        int days = (int) settle.looks().stream().map(Details.Wanted::day).distinct().count();
        List<String> skills = settle.looks().stream().map(Details.Wanted::skill).distinct().toList();
        String looks = Figures.count(n, "observación más", "observaciones más") + " sin cubos en "
                + words.list(skills)
                + (n > 1 ? " (" + Figures.count(days, "día", "días") + ")" : "");
        Kind kind = settle.looks().getFirst().kind();
        String other = kind == Kind.TABLE ? "" : (n == 1 ? " (" : " (una de ellas: ") + words.kind(kind) + ")";
        String start = already
                ? "Por ahora está claro. " + looks + other
                        + (n == 1 ? " podría cambiarlo en " : " podrían cambiarlo en ")
                        + words.cases(settle.likely()) + "."
                : looks + other + (n == 1 ? " lo aclararía en " : " lo aclararían en ") + words.cases(settle.likely())
                        + ".";
        List<Integer> steps = settle.looks().stream().map(Details.Wanted::step).distinct().toList();
        String each = n == 1 ? "" : n == 2 ? " las dos veces" : " cada vez";
        String there = steps.size() == 1 ? "Paso " + steps.getFirst() + each : "El paso que se pide" + each;
        String short1 = steps.size() == 1 ? "Paso " + Math.max(1, steps.getFirst() - 1) + each : "Un paso menos" + each;
        return reached.equals(missed)
                ? start + " En los dos casos: " + reached + "."
                : start + " " + there + ": " + reached + ". " + short1 + ": " + missed + ".";
    }

    static String notSettled(boolean already) {
        return already
                ? "Por ahora está claro; unas pocas observaciones más apenas lo cambiarían."
                : "Unas pocas observaciones más probablemente no lo aclararán; siga observando.";
    }

    static String weighty(CountedLook look, Tier suggested, double chanceWithout, @Nullable String changed,
            SpanishPhrases words) {
        String start = named(look, words) + ": sin esta, ";
        return changed == null
                ? start + "lo observado concuerda con " + words.gives(suggested) + " en " + words.cases(chanceWithout)
                        + "."
                : start + changed + ".";
    }

    private static String named(CountedLook look, SpanishPhrases words) {
        return words.date(look.day()) + ", " + look.skill()
                + (look.look().task() == null ? "" : " con " + look.look().task()) + ", paso " + look.step()
                + (look.look().help() == Help.NONE ? "" : " (" + words.help(look.look().help()) + ")");
    }

    static String noneDecides(List<CountedLook> heaviest, Tier suggested, double chance, SpanishPhrases words) {
        return "Ninguna observación decide por sí sola: sin cualquiera de ellas, lo observado concuerda con "
                + words.gives(suggested) + " en " + words.cases(chance) + ", igual que ahora. Las que más pesan: "
                + String.join("; ", heaviest.stream().map(l -> named(l, words)).toList()) + ".";
    }

    static String ask(Details.Ask ask, @Nullable String lookFor) {
        String start = "Ahora en la mesa: " + ask.skill() + (ask.number() == null ? "" : " con " + ask.number())
                + (ask.hideCubes() ? ", con los cubos escondidos." : ", sin cubos.");
        return lookFor == null
                ? start + " Busque el paso " + ask.expected() + "."
                : start + " Busque: " + lookFor + ".";
    }
}
