package org.stepwell.core.wording.home;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.stepwell.core.wording.Language;

/** The sentences of a page for home that do not depend on a skill. Spanish wants a native reader. */
final class HomePhrases {
    private final boolean spanish;
    private final Set<String> otherNames;

    HomePhrases(Language language, Set<String> otherNames) {
        this.spanish = language == Language.SPANISH;
        this.otherNames = otherNames;
    }

    private String say(String english, String inSpanish) {
        return spanish ? inSpanish : english;
    }

    /** A day in words; in figures where a child of the class is called like the month. */
    String date(LocalDate day) {
        DateTimeFormatter words = spanish ? DateTimeFormatter.ofPattern("d 'de' MMMM", Locale.forLanguageTag("es"))
                : DateTimeFormatter.ofPattern("MMMM d", Locale.US);
        String month = DateTimeFormatter.ofPattern("MMMM", Locale.US).format(day);
        return otherNames.contains(month) && !spanish
                ? day.getMonthValue() + "/" + day.getDayOfMonth() : words.format(day);
    }

    String onADay(LocalDate day, String name, String did, boolean cubes) {
        String with = cubes && !did.contains(say("cube", "cubo")) && !did.contains(say("stick", "barra"))
                && !did.contains(say("chart", "tabla")) ? say(", with things to hold", ", con objetos a la mano") : "";
        return say("On ", "El ") + date(day) + ", " + name + " " + did + with + ".";
    }

    String few(LocalDate nextNote) {
        return say("We have few notes this month. We will write to you again by " + date(nextNote) + ".",
                "Este mes tenemos pocas notas. Le escribiremos otra vez antes del " + date(nextNote) + ".");
    }

    String goodWays() {
        return say("Fingers, beans and drawings are good ways to think.",
                "Los dedos, los frijoles y los dibujos son buenas formas de pensar.");
    }

    List<String> questions(String name) {
        return List.of(say("What do you see at home when " + name + " counts?",
                "¿Qué ve usted en casa cuando " + name + " cuenta?"),
                say("What does " + name + " like to count or share out?",
                        "¿Qué le gusta contar o repartir a " + name + "?"));
    }

    String aNumber() {
        return say("a number", "un número");
    }
}
