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

/** Spanish. No gender is known, so sentences avoid it. Wants a native reader. */
final class SpanishPhrases implements Phrasebook {
    private static final List<String> MONTHS = List.of(
            "enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre",
            "noviembre", "diciembre");

    @Override
    public String date(LocalDate day) {
        return day.getDayOfMonth() + " de " + MONTHS.get(day.getMonthValue() - 1);
    }

    @Override
    public String tier(Tier tier) {
        return switch (tier) {
            case SUPPORT -> "apoyo";
            case ON_LEVEL -> "con la clase";
            case EXTENSION -> "ampliación";
        };
    }

    @Override
    public String gives(Tier tier) {
        return switch (tier) {
            case SUPPORT -> "más ayuda";
            case ON_LEVEL -> "seguir con la clase";
            case EXTENSION -> "un trabajo más profundo";
        };
    }

    @Override
    public String move(Tier from, Tier to) {
        if (to == Tier.SUPPORT) {
            return "más ayuda";
        }
        if (to == Tier.EXTENSION) {
            return "un trabajo más profundo";
        }
        return from == Tier.SUPPORT ? "menos ayuda" : "seguir con la clase";
    }

    @Override
    public String verdict(Verdict verdict) {
        return switch (verdict) {
            case MOVE -> "se sugiere un cambio";
            case STAY -> "sin cambio";
            case NOT_ENOUGH -> "falta información";
        };
    }

    @Override
    public String cases(double chance) {
        int ten = Figures.ofTen(chance);
        return ten == 0 ? "casi ningún caso" : ten == 10 ? "casi todos los casos" : "unos " + ten + " de 10 casos";
    }

    @Override
    public String fits(Tier tier, double chance) {
        return "Lo observado concuerda con " + gives(tier) + " en " + cases(chance) + ".";
    }

    @Override
    public String daysSpeak(Tier from, Tier to, int reviews) {
        boolean help = to.ordinal() < from.ordinal();
        String at = reviews > 1 ? ", en " + reviews + " revisiones seguidas" : "";
        return help
                ? "En la mayoría de las destrezas, los últimos días no llegan al paso esperado" + at + "."
                : "En la mayoría de las destrezas, los últimos días llegan al paso que se pide" + at + ".";
    }

    @Override
    public String checkSpeaks() {
        return "Todas las preguntas de la prueba de la unidad están bien, y los días en la mesa dicen lo mismo.";
    }

    @Override
    public String heldBack(Tier from, Tier to, String open) {
        String move = move(from, to);
        return "Concuerda con " + move + ", pero " + open + ".";
    }

    @Override
    public String open(Condition condition, @Nullable LocalDate notBefore) {
        return SpanishMeasures.open(condition, notBefore, this);
    }

    @Override
    public String goesOn(Tier tier) {
        return switch (tier) {
            case SUPPORT -> "La ayuda sigue.";
            case ON_LEVEL -> "Sin cambio.";
            case EXTENSION -> "El trabajo más profundo sigue.";
        };
    }

    @Override
    public String daysTell(int meeting, int below, int skills) {
        return "En los últimos días, " + meeting + " de " + skills + " destrezas llegan al paso esperado y " + below
                + (below == 1 ? " no llega." : " no llegan.");
    }

    @Override
    public String notEnough(int looks, List<Suggestion.Missing> missing) {
        List<String> parts = new ArrayList<>();
        for (Suggestion.Missing one : missing) {
            parts.add(
                    switch (one.measure()) {
                        case LOOKS, LOOKS_AT_ANY_SKILL, LOOKS_SINCE_REVIEW ->
                                Figures.count(one.more(), "observación más", "observaciones más");
                        case DAYS, DAYS_AT_ANY_SKILL -> Figures.count(one.more(), "día más", "días más");
                        case KINDS -> "otro tipo de observación";
                        case SKILLS_WITH_SIGNAL ->
                                Figures.count(one.more(), "día más", "días más") + " en una destreza";
                        default -> measure(one.measure()) + " + " + one.more();
                    });
        }
        String start = looks == 0 ? "Falta información: 0 observaciones válidas" : "Falta información";
        return parts.isEmpty() ? start + "." : start + (looks == 0 ? "; " : ": ") + list(parts) + ".";
    }

    @Override
    public String note(Note note) {
        return SpanishNotes.note(note, this);
    }

    @Override
    public String caution(Caution caution) {
        return SpanishNotes.caution(caution);
    }

    @Override
    public String dip(ClassDip dip) {
        return dip.skill() == null
                ? "Se sugiere más ayuda para " + dip.children() + " de " + dip.of() + ": mire primero la lección."
                : "En " + dip.skill() + ", " + dip.children() + " de " + dip.of()
                        + " no llegan a lo esperado: mire primero la lección.";
    }

    @Override
    public String measure(Measure measure) {
        return SpanishMeasures.measure(measure);
    }

    @Override
    public String required(Requirement requirement) {
        return SpanishMeasures.required(requirement);
    }

    @Override
    public String measured(Condition condition) {
        return SpanishMeasures.measured(condition);
    }

    @Override
    public String answer(Tier current, Details.Answer answer) {
        return SpanishDetails.answer(current, answer, this);
    }

    @Override
    public String settle(Details.Settle settle, boolean already, String reached, String missed) {
        return SpanishDetails.settle(settle, already, reached, missed, this);
    }

    @Override
    public String notSettled(boolean already) {
        return SpanishDetails.notSettled(already);
    }

    @Override
    public String weighty(CountedLook look, Tier suggested, double chanceWithout, @Nullable String changed) {
        return SpanishDetails.weighty(look, suggested, chanceWithout, changed, this);
    }

    @Override
    public String noneDecides(List<CountedLook> heaviest, Tier suggested, double chance) {
        return SpanishDetails.noneDecides(heaviest, suggested, chance, this);
    }

    @Override
    public String ask(Details.Ask ask, @Nullable String lookFor) {
        return SpanishDetails.ask(ask, lookFor);
    }

    @Override
    public String help(Help help) {
        return switch (help) {
            case NONE -> "sin ayuda";
            case CUBES -> "con cubos";
            case PROMPT -> "con una pista";
            case MODELLED -> "después de verlo hacer";
        };
    }

    @Override
    public String kind(Kind kind) {
        return switch (kind) {
            case TABLE -> "en la mesa";
            case EXIT_TASK -> "una tarea de salida";
            case UNIT_CHECK -> "una prueba de la unidad";
            case SPECIALIST -> "con la persona especialista";
            case OTHER -> "en otro lugar";
        };
    }

    @Override
    public String list(Collection<String> words) {
        List<String> all = List.copyOf(words);
        return all.size() < 2
                ? String.join("", all)
                : String.join(", ", all.subList(0, all.size() - 1)) + " y " + all.getLast();
    }
}
