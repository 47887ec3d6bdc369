package org.stepwell.core.wording;

import java.util.List;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.Note;

/** Notes and cautions in Spanish. */
final class SpanishNotes {
    private SpanishNotes() {}

    static String note(Note note, SpanishPhrases words) {
        return switch (note) {
            case Note.TooFewDue n -> n.due() == 1
                    ? "Por ahora se espera 1 sola destreza; los niveles de ayuda empiezan con dos."
                    : "Por ahora no se espera ninguna destreza; los niveles de ayuda empiezan con dos.";
            case Note.NotSeenLately n -> (n.lastSeen() == null
                            ? "Sin observaciones hasta ahora."
                            : "Sin observaciones desde el " + words.date(n.lastSeen()) + ".")
                    + (n.help() ? " La ayuda sigue." : "") + " Una observación nueva en " + n.skill() + ".";
            case Note.Provisional n -> "En la clase desde el " + words.date(n.joined()) + ", por eso provisional: "
                    + looks(n.looks()) + " en " + days(n.days())
                    + (n.notCounted() > 0
                            ? "; " + n.notCounted() + (n.notCounted() == 1 ? " más no contó" : " más no contaron")
                                    + ": la próxima vez, en un asiento aparte."
                            : ".");
            case Note.HardlySeen n -> n.looks() == 0
                    ? "Sin observaciones en " + n.schoolDays()
                            + " días de clase. Primer turno en la mesa el próximo día."
                    : "Muy poco visto: " + looks(n.looks()) + " en " + n.schoolDays()
                            + " días de clase. Primer turno en la mesa el próximo día.";
            case Note.HelpNotGiven n -> "La ayuda no se dio como estaba previsto: " + n.dose().given() + " de "
                    + n.dose().planned() + " sesiones"
                    + (n.dose().missedBySchool() > 0
                            ? "; " + n.dose().missedBySchool() + " faltaron por la escuela"
                            : "")
                    + (n.dose().missedByChild() > 0 ? "; " + n.dose().missedByChild() + " por ausencia" : "")
                    + (n.dose().missedBySchool() > n.dose().missedByChild()
                            ? ". Arregle el horario; más ayuda sigue siendo posible."
                            : ". Son muy pocas para saberlo; más ayuda sigue siendo posible.");
            case Note.RequestOpen n -> (n.kind() == ChildState.OpenRequest.Kind.EVALUATION
                            ? "La petición de evaluación del "
                            : "La preocupación anotada el ")
                    + words.date(n.on()) + " espera respuesta: contéstela. Nada de esto es motivo para esperar.";
            case Note.CubesHide n -> words.list(n.skills()) + ": al menos el paso " + n.atLeast()
                    + ". No hay observación sin cubos: esconda los cubos dos veces.";
            case Note.ObserversDiffer n -> n.skill() + ": dos personas ven cosas distintas: " + n.a() + ", paso "
                    + n.stepA() + numbers(n.tasksA().stream().toList()) + "; " + n.b() + ", paso " + n.stepB()
                    + numbers(n.tasksB().stream().toList()) + ". "
                    + (n.tasksB().isEmpty()
                            ? "Observen una vez en conjunto."
                            : "Son dos tipos de número: observen un " + n.tasksB().last() + " en conjunto.");
            case Note.CheckDisagrees n -> "La prueba y lo observado dicen cosas distintas: " + n.right() + " de "
                    + n.items() + " preguntas bien, " + n.daysMeeting() + " de " + n.days()
                    + " días en el paso esperado. La prueba sola no cambia nada.";
            case Note.NothingAbove n -> n.skill() + ": paso " + n.step() + " en " + days(n.days()) + "; el paso "
                    + (n.step() + 1) + " no se ha visto nunca. Acepte que lo muestre o lo dibuje, o pregunte en la "
                    + "lengua de casa.";
            case Note.Growing n -> n.skill() + ": va creciendo (pasos "
                    + words.list(n.steps().stream().map(String::valueOf).toList()) + "); se espera el "
                    + n.expected() + ".";
            case Note.BarRose n -> n.skill() + ": el paso esperado subió de " + n.before() + " a " + n.now() + " el "
                    + words.date(n.on()) + ". Se movió la meta, no el niño o la niña.";
            case Note.KeystoneMissed n -> "Tiempo en la mesa para " + n.skill() + ": paso " + n.step()
                    + ", se espera el " + n.expected() + "; en esta destreza se apoyan " + words.list(n.neededBy())
                    + ".";
            case Note.ButNot n -> "Puede ir más lejos en " + words.list(n.ahead()) + ". Mire " + n.behind()
                    + ": paso " + n.step() + ", se espera el " + n.expected() + "."
                    + (n.mirrorWritten() ? " La escritura en espejo no se cuenta." : "");
            case Note.ClassDip n -> words.dip(
                    new org.stepwell.core.tier.ClassDip(n.skill(), n.children(), n.of()));
        };
    }

    static String caution(Caution caution) {
        return switch (caution) {
            case WAITING_IS_NO_REASON ->
                "Esperar más observaciones no es motivo para retrasar una derivación o una evaluación.";
            case LESSON_FIRST -> "Gran parte de la clase está en el mismo punto: mire primero la lección.";
            case ONE_CHECK_MOVES_NOBODY -> "Una sola prueba de la unidad no cambia nada por sí misma.";
            case OBSERVERS_DIFFER -> "Dos personas pueden ver cosas distintas: mire quién observó.";
            case WAYS_OF_SHOWING -> "Explicar sin palabras puede deberse a la lengua, al habla o a la mano: mostrar y "
                    + "dibujar cuentan.";
            case MISSING_IS_NOT_ZERO -> "Ausencia o llegada reciente: lo que no se vio no es un cero.";
            case YOU_DECIDE -> "Una sugerencia con pocas observaciones; usted decide.";
            case SEE_THE_COUNTS -> "Mire cuántas observaciones hay, en cuántos días y de cuándo es la última.";
            case NOT_A_LABEL -> "El nivel de ayuda es para ahora, no es una etiqueta; no se muestra en clase.";
            case FEW_POINTS_NO_SLOPE -> "Un crecimiento con menos de 8 puntos es incierto.";
        };
    }

    private static String looks(int n) {
        return n + (n == 1 ? " observación" : " observaciones");
    }

    private static String days(int n) {
        return n + (n == 1 ? " día" : " días");
    }

    private static String numbers(List<String> tasks) {
        return tasks.isEmpty() ? "" : " (" + String.join(", ", tasks) + ")";
    }
}
