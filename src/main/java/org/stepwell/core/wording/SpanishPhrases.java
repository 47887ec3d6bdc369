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

    private static String count(int n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }

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
                ? "En la mayoría de las habilidades, los últimos días no llegan al paso esperado" + at + "."
                : "En la mayoría de las habilidades, los últimos días llegan al paso que se pide" + at + ".";
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
        Requirement required = condition.required();
        if (condition.held() > 0) {
            int more = required.reviews() - condition.held();
            return more == 1
                    ? "falta 1 revisión más que diga lo mismo"
                    : "faltan " + more + " revisiones más que digan lo mismo";
        }
        return switch (required.measure()) {
            case SCHOOL_DAYS_IN_TIER -> "la ayuda dura al menos " + Figures.plain(required.threshold())
                    + " días de clase" + (notBefore == null ? "" : ": a partir del " + date(notBefore));
            case LOOKS_WITHOUT_OBJECTS -> "no hay ninguna observación así sin cubos";
            case LOOKS_SINCE_REVIEW -> "no hay observaciones desde la última revisión";
            case DIFFERENT_NUMBERS -> "se preguntaron menos de " + Figures.plain(required.threshold())
                    + " números distintos";
            case SESSIONS_GIVEN -> "se dieron muy pocas de las sesiones previstas";
            default -> measure(required.measure()) + ": se pide " + required(required) + " y hay "
                    + measured(condition);
        };
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
        return "En los últimos días, " + meeting + " de " + skills + " habilidades llegan al paso esperado y " + below
                + (below == 1 ? " no llega." : " no llegan.");
    }

    @Override
    public String notEnough(int looks, List<Suggestion.Missing> missing) {
        List<String> parts = new ArrayList<>();
        for (Suggestion.Missing one : missing) {
            parts.add(
                    switch (one.measure()) {
                        case LOOKS, LOOKS_SINCE_REVIEW -> count(one.more(), "observación más", "observaciones más");
                        case DAYS -> count(one.more(), "día más", "días más");
                        case KINDS -> "otro tipo de observación";
                        case SKILLS_WITH_SIGNAL -> count(one.more(), "día más", "días más") + " en una habilidad";
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
        return switch (measure) {
            case DUE_SKILLS -> "Habilidades que ya se esperan";
            case LOOKS -> "Observaciones";
            case DAYS -> "Días con observaciones";
            case KINDS -> "Tipos de observación";
            case SKILLS_WITH_SIGNAL -> "Habilidades vistas en suficientes días";
            case SCHOOL_DAYS_SINCE_LOOK -> "Días de clase desde la última observación";
            case BREAK_DAYS_SINCE_LOOK -> "Días sin escuela desde la última observación";
            case SCHOOL_DAYS_IN_TIER -> "Días de clase desde el último cambio";
            case LOOKS_SINCE_REVIEW -> "Observaciones desde la última revisión";
            case DIFFERENT_NUMBERS -> "Números distintos preguntados";
            case LOOKS_WITHOUT_OBJECTS -> "Observaciones sin cubos en el paso que se pide";
            case SESSIONS_GIVEN -> "Sesiones previstas que se dieron";
            case SKILLS_MEETING -> "Habilidades cuyos últimos días llegan al paso esperado";
            case SKILLS_BELOW -> "Habilidades cuyos últimos días no llegan";
            case SKILLS_MEETING_BEYOND -> "Habilidades cuyos últimos días llegan al paso más alto";
            case CHECK_ALL_RIGHT -> "Habilidades con todas las preguntas de la prueba bien";
            case LOWEST_EXPECTED_STEP -> "Paso esperado más bajo";
            case CHANCE_SUPPORT -> "Casos en que lo observado concuerda con más ayuda";
            case CHANCE_ON_LEVEL -> "Casos en que lo observado concuerda con seguir con la clase";
            case CHANCE_EXTENSION -> "Casos en que lo observado concuerda con un trabajo más profundo";
            case CHANCE_NOT_SUPPORT -> "Casos en que lo observado concuerda con seguir sin ayuda adicional";
            case CHANCE_NOT_EXTENSION -> "Casos en que lo observado concuerda con seguir sin trabajo más profundo";
        };
    }

    @Override
    public String required(Requirement requirement) {
        String words = switch (requirement.comparison()) {
            case AT_LEAST -> "al menos ";
            case AT_MOST -> "como mucho ";
            case MORE_THAN -> "más de ";
        };
        String at = requirement.reviews() > 1 ? ", en " + requirement.reviews() + " revisiones seguidas" : "";
        return words + Figures.of(requirement.measure(), requirement.threshold(), " de 10") + at;
    }

    @Override
    public String measured(Condition condition) {
        Double value = condition.measured();
        if (value == null) {
            return Measure.SKILLS_MEETING == condition.required().measure() ? "no se sabe" : "no corresponde";
        }
        Requirement required = condition.required();
        String times = condition.held() > 0 && required.reviews() > 1
                ? " (en " + condition.held() + " de " + required.reviews() + " revisiones)"
                : "";
        return Figures.of(required.measure(), value, " de 10") + times;
    }

    @Override
    public String answer(Tier current, Details.Answer answer) {
        return switch (answer.verdict()) {
            case MOVE -> "se sugiere " + move(current, answer.suggested());
            case STAY -> (current == Tier.SUPPORT ? "la ayuda sigue" : "sin cambio")
                    + (answer.fits() == current ? "" : " al principio, pero concuerda con " + gives(answer.fits()));
            case NOT_ENOUGH -> "falta información";
        };
    }

    @Override
    public String settle(Details.Settle settle, boolean already, String reached, String missed) {
        int n = settle.looks().size();
        int days = (int) settle.looks().stream().map(Details.Wanted::day).distinct().count();
        List<String> skills = settle.looks().stream().map(Details.Wanted::skill).distinct().toList();
        String looks = count(n, "observación más", "observaciones más") + " sin cubos en " + list(skills)
                + (n > 1 ? " (" + count(days, "día", "días") + ")" : "");
        Kind kind = settle.looks().getFirst().kind();
        String other = kind == Kind.TABLE ? "" : " (una de ellas: " + kind(kind) + ")";
        String start = already
                ? "Por ahora está claro. " + looks + other
                        + (n == 1 ? " podría cambiarlo en " : " podrían cambiarlo en ")
                        + cases(settle.likely()) + "."
                : looks + other + (n == 1 ? " lo aclararía en " : " lo aclararían en ") + cases(settle.likely())
                        + ".";
        List<Integer> steps = settle.looks().stream().map(Details.Wanted::step).distinct().toList();
        String each = n == 1 ? "" : n == 2 ? " las dos veces" : " cada vez";
        String there = steps.size() == 1 ? "Paso " + steps.getFirst() + each : "El paso que se pide" + each;
        String short1 = steps.size() == 1 ? "Paso " + Math.max(1, steps.getFirst() - 1) + each : "Un paso menos" + each;
        return reached.equals(missed)
                ? start + " En los dos casos: " + reached + "."
                : start + " " + there + ": " + reached + ". " + short1 + ": " + missed + ".";
    }

    @Override
    public String notSettled(boolean already) {
        return already
                ? "Por ahora está claro; unas pocas observaciones más apenas lo cambiarían."
                : "Unas pocas observaciones más probablemente no lo aclararán; siga observando.";
    }

    @Override
    public String weighty(CountedLook look, Tier suggested, double chanceWithout, @Nullable String changed) {
        String start = date(look.day()) + ", " + look.skill() + ", paso " + look.step()
                + (look.look().help() == Help.NONE ? "" : " (" + help(look.look().help()) + ")") + ": sin esta, ";
        return changed == null
                ? start + "lo observado concuerda con " + gives(suggested) + " en " + cases(chanceWithout) + "."
                : start + changed + ".";
    }

    @Override
    public String ask(Details.Ask ask, @Nullable String lookFor) {
        String start = "Ahora en la mesa: " + ask.skill() + (ask.number() == null ? "" : " con " + ask.number())
                + (ask.hideCubes() ? ", con los cubos escondidos." : ", sin cubos.");
        return lookFor == null
                ? start + " Busque el paso " + ask.expected() + "."
                : start + " Busque: " + lookFor + ".";
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
