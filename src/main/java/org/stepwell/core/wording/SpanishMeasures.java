package org.stepwell.core.wording;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.Requirement;

/** What is measured and what is required, in Spanish. */
final class SpanishMeasures {
    private SpanishMeasures() {}

    static String open(Condition condition, @Nullable LocalDate notBefore, SpanishPhrases words) {
        Requirement required = condition.required();
        if (condition.held() > 0) {
            int more = required.reviews() - condition.held();
            return more == 1
                    ? "falta 1 revisión más que diga lo mismo"
                    : "faltan " + more + " revisiones más que digan lo mismo";
        }
        return switch (required.measure()) {
            case SCHOOL_DAYS_IN_TIER -> "la ayuda dura al menos " + Figures.plain(required.threshold())
                    + " días de clase" + (notBefore == null ? "" : ": a partir del " + words.date(notBefore));
            case LOOKS_WITHOUT_OBJECTS, FREE_LOOKS_AT_ANY_SKILL -> "no hay ninguna observación así sin cubos";
            case LOOKS_SINCE_REVIEW -> "no hay observaciones desde la última revisión";
            case DIFFERENT_NUMBERS -> "se preguntaron menos de " + Figures.plain(required.threshold())
                    + " números distintos";
            case SESSIONS_GIVEN -> "se dieron muy pocas de las sesiones previstas";
            default -> measure(required.measure()) + ": se pide " + required(required) + " y hay "
                    + measured(condition);
        };
    }

    static String measure(Measure measure) {
        return switch (measure) {
            case DUE_SKILLS -> "Destrezas que ya se esperan";
            case LOOKS -> "Observaciones";
            case DAYS -> "Días con observaciones";
            case KINDS -> "Tipos de observación";
            case SKILLS_WITH_SIGNAL -> "Destrezas vistas en suficientes días";
            case SCHOOL_DAYS_SINCE_LOOK -> "Días de clase desde la última observación";
            case BREAK_DAYS_SINCE_LOOK -> "Días sin escuela desde la última observación";
            case SCHOOL_DAYS_IN_TIER -> "Días de clase desde el último cambio";
            case LOOKS_SINCE_REVIEW -> "Observaciones desde la última revisión";
            case DIFFERENT_NUMBERS -> "Números distintos preguntados";
            case LOOKS_WITHOUT_OBJECTS -> "Observaciones sin cubos en el paso que se pide";
            case SESSIONS_GIVEN -> "Sesiones previstas que se dieron";
            case SKILLS_MEETING -> "Destrezas cuyos últimos días llegan al paso esperado";
            case SKILLS_BELOW -> "Destrezas cuyos últimos días no llegan";
            case SKILLS_MEETING_BEYOND -> "Destrezas cuyos últimos días llegan al paso más alto";
            case CHECK_ALL_RIGHT -> "Destrezas con todas las preguntas de la prueba bien";
            case LOWEST_EXPECTED_STEP -> "Paso esperado más bajo";
            case CHANCE_SUPPORT -> "Casos en que lo observado concuerda con más ayuda";
            case CHANCE_ON_LEVEL -> "Casos en que lo observado concuerda con seguir con la clase";
            case CHANCE_EXTENSION -> "Casos en que lo observado concuerda con un trabajo más profundo";
            case CHANCE_NOT_SUPPORT -> "Casos en que lo observado concuerda con seguir sin ayuda adicional";
            case CHANCE_NOT_EXTENSION -> "Casos en que lo observado concuerda con seguir sin trabajo más profundo";
            case SCHOOL_DAYS_SINCE_ANY_LOOK -> "Días de clase desde la última observación de cualquier destreza";
            case LOOKS_AT_ANY_SKILL -> "Observaciones de cualquier destreza";
            case DAYS_AT_ANY_SKILL -> "Días con observaciones de cualquier destreza";
            case FREE_LOOKS_AT_ANY_SKILL -> "Observaciones sin cubos de cualquier destreza";
            case CHANCE_EXTENSION_AS_SEEN -> "Casos en que lo observado concuerda con un trabajo más profundo, sin contar el silencio";
        };
    }

    static String required(Requirement requirement) {
        String words = switch (requirement.comparison()) {
            case AT_LEAST -> "al menos ";
            case AT_MOST -> "como mucho ";
            case MORE_THAN -> "más de ";
        };
        String at = requirement.reviews() > 1 ? ", en " + requirement.reviews() + " revisiones seguidas" : "";
        return words + Figures.of(requirement.measure(), requirement.threshold(), " de 10") + at;
    }

    static String measured(Condition condition) {
        Double value = condition.measured();
        if (value == null) {
            return Measure.SKILLS_MEETING == condition.required().measure() ? "no se sabe" : "no corresponde";
        }
        Requirement required = condition.required();
        String times = condition.held() > 0 && required.reviews() > 1
                ? " (en " + condition.held() + " de " + required.reviews() + " revisiones)"
                : "";
        return Figures.measured(condition, " de 10", "menos de ", "más de ") + times;
    }
}
