package org.stepwell.observation.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.stepwell.core.evidence.Look;
import org.stepwell.observation.ObservationLine;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.TabletPass;
import org.stepwell.platform.security.TabletPassService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;

/** Which tablets may add looks under this adult's name, and looks that wait for a word of the class. */
@Route("tablets")
@Menu(order = 520, title = "tablets.title")
@PermitAll
class TabletsView extends Div implements HasDynamicTitle {
    private final Words texts = Words.of("tablets");
    private final TabletPassService passes;
    private final ObservationService observations;
    private final RosterService roster;
    private final ZoneId zone;
    private final Instant now;
    private final Div held = new Div();
    private final Div waiting = new Div();
    private final Div said = new Div();

    TabletsView(TabletPassService passes, ObservationService observations, RosterService roster,
            CurrentAdult current) {
        this.passes = passes;
        this.observations = observations;
        this.roster = roster;
        this.zone = current.get().zone();
        this.now = observations.clock().instant();
        add(new H1(texts.say("title")), said, held, waiting);
        draw();
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }

    private void draw() {
        held.removeAll();
        List<TabletPass> live = passes.mine().stream().filter(pass -> pass.holds(now)).toList();
        held.add(new H2(texts.say("held")), Parts.soft(texts.say(live.isEmpty() ? "none" : "what")));
        Map<UUID, String> rooms = roster.classes().stream()
                .collect(Collectors.toMap(Classroom::classId, Classroom::name));
        live.forEach(pass -> held.add(tablet(pass, rooms.getOrDefault(pass.classId(), ""))));
        waiting.removeAll();
        List<ObservationLine> lines = observations.undecided();
        if (!lines.isEmpty()) {
            waiting.add(new H2(texts.say("waiting")), Parts.soft(texts.say("waiting.what")));
            Map<UUID, String> names = roster.children().stream()
                    .collect(Collectors.toMap(ChildRow::childId, ChildRow::label, (a, b) -> a));
            lines.forEach(line -> waiting.add(look(line, names.getOrDefault(line.childId(), ""))));
        }
    }

    private Component tablet(TabletPass pass, String room) {
        String label = pass.label().isEmpty() ? texts.say("unnamed") : pass.label();
        return Parts.sheet(new Paragraph(texts.say("tablet", label, room, day(pass.createdAt()),
                day(pass.expiresAt()))), Parts.button(texts.say("end"), () -> {
                    passes.revoke(pass.passId());
                    draw();
                    Parts.say(said, texts.say("ended", label));
                }));
    }

    private Component look(ObservationLine line, String name) {
        Look look = line.look();
        return Parts.sheet(new Paragraph(texts.say("look", name, look.observer(), day(look.observedAt().toInstant()),
                        look.skill() == null ? "" : look.skill(), look.step() == null ? 0 : look.step())),
                look.note() == null ? new Div() : new Paragraph(look.note()),
                Parts.button(texts.say("take"), () -> decide(line, true, name)),
                Parts.button(texts.say("leave"), () -> decide(line, false, name)));
    }

    private void decide(ObservationLine line, boolean take, String name) {
        observations.decideWaiting(line.look().id(), take);
        draw();
        Parts.say(said, texts.say(take ? "taken" : "left", name));
    }

    private String day(Instant at) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withLocale(texts.locale())
                .format(at.atZone(zone));
    }
}
