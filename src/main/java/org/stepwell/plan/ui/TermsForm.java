package org.stepwell.plan.ui;

import com.vaadin.flow.component.html.Div;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import org.stepwell.plan.PlanTerms;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** The fields of a plan's terms, filled in with what an adult would most likely write. */
class TermsForm extends Div {
    private final Words texts = Words.of("plan");
    private final Map<String, String> values = new TreeMap<>();

    TermsForm(PlanTerms first, Map<String, String> skills, boolean support) {
        addClassNames("row", "terms");
        Map<String, String> steps = new LinkedHashMap<>();
        for (int step = 1; step <= 5; step++) {
            steps.put(String.valueOf(step), String.valueOf(step));
        }
        choice("skill", skills, first.skill());
        choice("start", steps, String.valueOf(first.start()));
        choice("step", steps, String.valueOf(first.step()));
        input("share", "number", String.valueOf(first.share()));
        input("by", "date", first.by().toString());
        input("given-by", "text", first.givenBy());
        input("per-week", "number", String.valueOf(first.perWeek()));
        input("minutes", "number", String.valueOf(first.minutes()));
        input("from", "date", first.from().toString());
        input("review", "date", first.reviewOn().toString());
        if (support) {
            input("activity", "text", first.activity());
        }
    }

    private void choice(String name, Map<String, String> options, String value) {
        values.put(name, value);
        add(Parts.choice(texts.say(name), options, value, chosen -> values.put(name, chosen)));
    }

    private void input(String name, String type, String value) {
        values.put(name, value);
        add(Parts.input(texts.say(name), type, value, written -> values.put(name, written)));
    }

    /** What is written now; what is no number or no day reads as one that is refused by name. */
    PlanTerms terms() {
        LocalDate from = day("from", LocalDate.MAX.minusDays(1));
        return new PlanTerms(from, values.getOrDefault("skill", ""), number("start"), number("step"), number("share"),
                day("by", LocalDate.MIN), values.getOrDefault("given-by", ""), number("per-week"), number("minutes"),
                day("review", LocalDate.MIN), values.getOrDefault("activity", ""));
    }

    private int number(String name) {
        try {
            return Integer.parseInt(values.getOrDefault(name, "").strip());
        } catch (NumberFormatException noNumber) {
            return -1;
        }
    }

    private LocalDate day(String name, LocalDate otherwise) {
        try {
            return LocalDate.parse(values.getOrDefault(name, ""));
        } catch (DateTimeParseException noDay) {
            return otherwise;
        }
    }
}
