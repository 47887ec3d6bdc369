package org.stepwell.platform.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.VaadinSession;
import jakarta.annotation.security.PermitAll;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.UUID;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.OpenSession;
import org.stepwell.platform.security.SessionService;
import org.stepwell.platform.security.SignInEvent;

/** Where the adult is signed in, each place to be ended, and what happened at the sign-in. */
@Route("sign-ins")
@StyleSheet("context://look/people.css")
@Menu(order = 540, title = "sign-ins.title")
@PermitAll
class SignInsView extends Div implements HasDynamicTitle {
    private static final int EVENTS_SEEN = 10;

    private final transient Words texts = Words.of("sign-ins");
    private final transient SessionService sessions;
    private final ZoneId zone;
    private final UUID here;
    private final Div said = new Div();
    private final Div lists = new Div();

    SignInsView(SessionService sessions, CurrentAdult current) {
        this.sessions = sessions;
        this.zone = current.get().zone();
        this.here = VaadinSession.getCurrent().getSession().getAttribute(OpenSession.KEY) instanceof OpenSession open
                ? open.id() : new UUID(0, 0);
        add(new H1(texts.say("title")), Parts.soft(texts.say("about")),
                Parts.outside("/sign-in/password.html", texts.say("password")), said, lists);
        draw();
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }

    private void draw() {
        lists.removeAll();
        List<OpenSession> open = sessions.mine();
        UnorderedList lines = new UnorderedList();
        lines.addClassName("people");
        open.forEach(session -> lines.add(line(session)));
        Div places = Parts.sheet(new H2(texts.say("open")), open.isEmpty() ? Parts.soft(texts.say("open.none")) : lines);
        if (open.stream().anyMatch(session -> !session.id().equals(here))) {
            places.add(Parts.button(texts.say("end.others"), () -> {
                int many = sessions.endOthers(here);
                draw();
                Parts.say(said, texts.say("ended.others", many));
            }));
        }
        lists.add(places, events());
    }

    private ListItem line(OpenSession session) {
        boolean mine = session.id().equals(here);
        ListItem line = new ListItem(new Span(texts.say(mine ? "session.here" : "session", device(session.device()),
                session.address())), new Span(texts.say("session.times", at(session.since()), at(session.lastUsed()))));
        if (!mine) {
            NativeButton end = Parts.button(texts.say("end"), () -> {
                sessions.end(session.id());
                draw();
                Parts.say(said, texts.say("ended", device(session.device())));
            });
            end.getElement().setAttribute("aria-label", texts.say("end.which", device(session.device()),
                    at(session.since())));
            line.add(end);
        }
        return line;
    }

    private Component events() {
        List<SignInEvent> all = sessions.events();
        Div sheet = Parts.sheet(new H2(texts.say("events")));
        if (all.isEmpty()) {
            sheet.add(Parts.soft(texts.say("events.none")));
            return sheet;
        }
        sheet.add(list(all.subList(0, Math.min(EVENTS_SEEN, all.size()))));
        if (all.size() > EVENTS_SEEN) {
            sheet.add(new NativeDetails(texts.say("events.more"), list(all.subList(EVENTS_SEEN, all.size()))));
        }
        return sheet;
    }

    private Component list(List<SignInEvent> events) {
        UnorderedList lines = new UnorderedList();
        events.forEach(event -> lines.add(new ListItem(texts.say("event." + event.what().code(), at(event.at()),
                device(event.device()), event.address()))));
        return lines;
    }

    private String device(String named) {
        return named.isEmpty() ? texts.say("device.unknown") : named;
    }

    private String at(Instant instant) {
        return DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT).withLocale(texts.locale())
                .format(instant.atZone(zone));
    }
}
