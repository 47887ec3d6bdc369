package org.stepwell.records.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.records.RetentionDue;
import org.stepwell.records.RetentionKind;
import org.stepwell.records.RetentionRun;
import org.stepwell.records.RetentionService;

/** How long the school keeps what, what is over now, and what went. */
@Route("records/retention")
@PermitAll
class RetentionView extends Div implements HasDynamicTitle {
    private final transient Words texts = Words.of("retention");
    private final transient RetentionService retention;
    private final Div message = new Div();
    private final Div parts = new Div();

    RetentionView(RetentionService retention) {
        this.retention = retention;
        add(new H1(texts.say("title")), Parts.link("records", texts.say("back")));
        if (retention.decides()) {
            add(Parts.soft(texts.say("about")), Parts.soft(texts.say("law")), message, parts);
            draw();
        } else {
            add(new Paragraph(texts.say("lead")));
        }
    }

    private void draw() {
        parts.removeAll();
        parts.add(over(), periods(), runs());
    }

    private Component periods() {
        Div sheet = Parts.sheet(new H2(texts.say("periods")), Parts.soft(texts.say("periods.about")));
        Map<RetentionKind, Integer> periods = retention.periods();
        for (RetentionKind kind : RetentionKind.values()) {
            Integer months = periods.get(kind);
            String[] typed = {months == null ? "" : months.toString()};
            Div row = new Div(Parts.input(texts.say("months", name(kind)), "number", typed[0], value -> typed[0] = value),
                    Parts.button(texts.say("set", name(kind)), () -> set(kind, typed[0].strip())));
            row.addClassName("row");
            sheet.add(new H3(name(kind)), Parts.soft(texts.say("what." + kind.code())), row);
        }
        return sheet;
    }

    private void set(RetentionKind kind, String typed) {
        try {
            Integer months = typed.isEmpty() ? null : Integer.valueOf(typed);
            retention.set(kind, months);
            draw();
            Parts.say(message, months == null ? texts.say("taken", name(kind)) : texts.say("kept", name(kind), months));
        } catch (NumberFormatException wrong) {
            Parts.say(message, texts.say("no-number", typed));
        } catch (Refused refused) {
            Parts.say(message, Words.told(refused));
        }
    }

    private Component over() {
        Div sheet = Parts.sheet(new H2(texts.say("over")), Parts.soft(texts.say("over.about")));
        List<RetentionDue> due = retention.dryRun();
        if (due.isEmpty()) {
            sheet.add(Parts.soft(texts.say("over.none")));
        }
        Arrays.stream(RetentionKind.values()).forEach(kind -> {
            List<RetentionDue> of = due.stream().filter(one -> one.kind() == kind).toList();
            if (!of.isEmpty()) {
                sheet.add(of(kind, of));
            }
        });
        return sheet;
    }

    private Component of(RetentionKind kind, List<RetentionDue> due) {
        List<RetentionDue> free = due.stream().filter(one -> !one.held()).toList();
        int rows = free.stream().mapToInt(RetentionDue::rows).sum();
        UnorderedList lines = new UnorderedList();
        due.forEach(one -> lines.add(new ListItem(texts.say(one.held() ? "line.held" : "line", one.name(), one.schoolKey(),
                texts.day(one.lastDay()) + " " + one.lastDay().getYear(), one.rows()))));
        Div all = new Div(new H3(texts.say("over.kind", name(kind), rows, free.size())),
                new NativeDetails(texts.say("which", due.size()), lines));
        if (rows > 0) {
            String[] typed = {""};
            Div row = new Div(Parts.input(texts.say("type", rows), "number", "", value -> typed[0] = value),
                    Parts.button(texts.say("erase", name(kind)), () -> erase(kind, typed[0].strip())));
            row.addClassName("row");
            all.add(row);
        }
        return all;
    }

    private void erase(RetentionKind kind, String typed) {
        try {
            int rows = retention.erase(kind, Integer.parseInt(typed));
            draw();
            Parts.say(message, texts.say("erased", name(kind), rows));
        } catch (NumberFormatException wrong) {
            Parts.say(message, texts.say("no-number", typed));
        } catch (Refused refused) {
            draw();
            Parts.say(message, Words.told(refused));
        }
    }

    private Component runs() {
        List<RetentionRun> runs = retention.runs();
        Div sheet = Parts.sheet(new H2(texts.say("runs")));
        if (runs.isEmpty()) {
            sheet.add(Parts.soft(texts.say("runs.none")));
            return sheet;
        }
        UnorderedList lines = new UnorderedList();
        runs.forEach(run -> lines.add(new ListItem(texts.say("run", texts.day(run.at().toLocalDate()) + " "
                + run.at().getYear(), name(run.kind()), run.rows(), run.children(), run.by()))));
        sheet.add(lines);
        return sheet;
    }

    private String name(RetentionKind kind) {
        return texts.say("kind." + kind.code());
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }
}
