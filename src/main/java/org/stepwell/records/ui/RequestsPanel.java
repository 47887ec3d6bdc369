package org.stepwell.records.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.FamilyRequest;
import org.stepwell.privacy.FamilyRequest.Happened;
import org.stepwell.privacy.FamilyRequest.Kind;
import org.stepwell.privacy.FamilyRequestService;

/** Requests of the family with what became of them; a new one is written down here, and answered by a lead. */
class RequestsPanel extends Div {
    private final transient Words texts = Words.of("records");
    private final transient FamilyRequestService requests;
    private final UUID childId;
    private final LocalDate today;
    private final transient Runnable changed;
    private final Div message = new Div();
    private final Div content = new Div();

    /** @param changed run when something was written down */
    RequestsPanel(FamilyRequestService requests, UUID childId, LocalDate today, Runnable changed) {
        this.requests = requests;
        this.childId = childId;
        this.today = today;
        this.changed = changed;
        addClassName("sheet");
        add(new H2(texts.say("requests")), message, content);
        draw();
    }

    private void draw() {
        content.removeAll();
        List<FamilyRequest> all = requests.requests(childId);
        if (all.isEmpty()) {
            content.add(Parts.soft(texts.say("requests.none")));
        }
        all.forEach(request -> content.add(shown(request)));
        content.add(new NativeDetails(texts.say("ask"), asking()));
    }

    private Div shown(FamilyRequest request) {
        Div shown = new Div(new Paragraph(texts.say("request." + request.kind().code(), texts.day(request.askedOn()),
                request.by(), request.words())));
        UnorderedList steps = new UnorderedList();
        request.steps().forEach(step -> steps.add(new ListItem(texts.say("step." + step.kind().code(),
                texts.day(step.on()), step.words()))));
        shown.add(steps);
        if (request.open()) {
            shown.add(new Paragraph(request.kind() == Kind.INSPECT ? texts.say("request.days",
                    ChronoUnit.DAYS.between(request.askedOn(), today)) : texts.say("request.open")));
        }
        if (!request.next().isEmpty()) {
            shown.add(requests.decides(childId) ? new NativeDetails(texts.say("happened"), answering(request))
                    : Parts.soft(texts.say("happened.lead")));
        }
        return shown;
    }

    private Div answering(FamilyRequest request) {
        Map<String, String> next = new LinkedHashMap<>();
        request.next().forEach(what -> next.put(what.name(), texts.say("happened." + what.code())));
        String[] what = {next.keySet().iterator().next()};
        String[] on = {today.toString()};
        String[] words = {""};
        return new Div(row(Parts.choice(texts.say("happened"), next, what[0], key -> what[0] = key),
                Parts.input(texts.say("happened.on"), "date", on[0], value -> on[0] = value)),
                Parts.text(texts.say("happened.words"), 3, "", value -> words[0] = value),
                Parts.button(texts.say("happened.do"), () -> tried(() -> requests.happened(childId, request.requestId(),
                        request.steps().size(), Happened.valueOf(what[0]), LocalDate.parse(on[0]), words[0]),
                        "happened.done")));
    }

    private Div asking() {
        Map<String, String> kinds = new LinkedHashMap<>();
        for (Kind kind : Kind.values()) {
            kinds.put(kind.name(), texts.say("ask." + kind.code()));
        }
        String[] kind = {Kind.INSPECT.name()};
        String[] on = {today.toString()};
        String[] words = {""};
        return new Div(Parts.soft(texts.say("requests.about")),
                row(Parts.choice(texts.say("ask.kind"), kinds, kind[0], key -> kind[0] = key),
                        Parts.input(texts.say("ask.on"), "date", on[0], value -> on[0] = value)),
                Parts.text(texts.say("ask.words"), 3, "", value -> words[0] = value),
                Parts.button(texts.say("ask.do"), () -> tried(() -> requests.ask(childId, Kind.valueOf(kind[0]),
                        LocalDate.parse(on[0]), words[0]), "ask.done")));
    }

    private static Div row(Div... fields) {
        Div row = new Div(fields);
        row.addClassName("row");
        return row;
    }

    private void tried(Runnable work, String done) {
        try {
            work.run();
            draw();
            changed.run();
            Parts.say(message, texts.say(done));
        } catch (Refused refused) {
            Parts.say(message, Words.told(refused));
        } catch (DateTimeParseException wrong) {
            Parts.say(message, texts.say("day.wrong"));
        }
    }
}
