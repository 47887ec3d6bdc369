package org.stepwell.pacing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Skill;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;

/** When each skill of the unit is due, and at which step: one line per skill, for a class without a pacing file. */
@StyleSheet("look/pacing.css")
public final class PacingPanel extends Div {
    private static final String USUAL_STEP = "3";

    private final PacingService pacing;
    private final UUID classId;
    private final UnitInHand unit;
    private final Words words = Words.of("pacing");
    private final Div message = new Div();
    private final Map<String, String[]> entries = new LinkedHashMap<>();

    /**
     * @param progression of the unit
     * @param saved is told when the pacing was stored
     */
    public PacingPanel(PacingService pacing, UUID classId, UnitInHand unit, Progression progression, Runnable saved) {
        this.pacing = pacing;
        this.classId = classId;
        this.unit = unit;
        List<PacingRow> rows = unit.pacing().rows();
        if (!simple(rows, progression)) {
            add(Parts.soft(words.say("several")));
            return;
        }
        Map<String, PacingRow> bySkill = rows.stream().collect(Collectors.toMap(PacingRow::skill, row -> row));
        add(Parts.soft(words.say("how")));
        progression.skills().forEach(skill -> add(line(skill, bySkill.get(skill.code()))));
        add(message, Parts.button(words.say("save"), () -> save(saved)));
    }

    /** Whether one line per skill says all that the pacing says. */
    private static boolean simple(List<PacingRow> rows, Progression progression) {
        List<String> skills = progression.skills().stream().map(Skill::code).toList();
        return rows.stream().map(PacingRow::skill).distinct().count() == rows.size()
                && rows.stream().allMatch(row -> skills.contains(row.skill()) && row.expectedStep() != null
                        && row.taughtFrom() == null);
    }

    private Component line(Skill skill, @Nullable PacingRow row) {
        String[] entry = {row == null ? "" : row.due().toString(),
            row == null ? USUAL_STEP : Objects.toString(row.expectedStep())};
        entries.put(skill.code(), entry);
        Map<String, String> steps = new LinkedHashMap<>();
        for (int step = 1; step <= 5; step++) {
            steps.put(Integer.toString(step), Integer.toString(step));
        }
        Span name = new Span(skill.code() + " " + skill.title());
        name.getElement().setAttribute("id", "skill-" + skill.code());
        Div line = new Div(name, Parts.input(words.say("due"), "date", entry[0], day -> entry[0] = day),
                Parts.choice(words.say("step"), steps, entry[1], step -> entry[1] = step));
        line.addClassNames("row", "pacing-line");
        line.getElement().setAttribute("role", "group").setAttribute("aria-labelledby", "skill-" + skill.code());
        return line;
    }

    private void save(Runnable saved) {
        List<PacingRow> rows = new ArrayList<>();
        for (Map.Entry<String, String[]> one : entries.entrySet()) {
            String day = one.getValue()[0];
            if (day.isBlank()) {
                continue;
            }
            try {
                rows.add(new PacingRow(one.getKey(), null, LocalDate.parse(day),
                        Integer.valueOf(one.getValue()[1])));
            } catch (DateTimeException wrong) {
                Parts.say(message, words.say("no-date", one.getKey()));
                return;
            }
        }
        if (rows.isEmpty()) {
            Parts.say(message, words.say("empty"));
            return;
        }
        try {
            pacing.importPacing(classId, unit.unitId(), rows);
            saved.run();
        } catch (NotVisible closed) {
            Parts.say(message, words.say("closed"));
        }
    }
}
