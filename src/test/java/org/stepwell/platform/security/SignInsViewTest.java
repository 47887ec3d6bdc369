package org.stepwell.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.server.VaadinSession;
import java.time.Duration;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;

class SignInsViewTest extends Screens {
    @Autowired
    private OpenSessions sessions;
    @Autowired
    private SignInEvents events;
    @Autowired
    private AccountService accounts;
    @Autowired
    private CurrentAdult current;

    private OpenSession open(String address, String device) {
        OpenSession session = new OpenSession(sessions, current.get().adultId(),
                accounts.now(current.get()).orElseThrow(), address, device, sessions.now().minus(Duration.ofMinutes(5)));
        sessions.add(session);
        return session;
    }

    private Component drawn() {
        UI.getCurrent().navigate("sign-ins");
        UI.getCurrent().refreshCurrentRoute(false);
        return (Component) getCurrentView();
    }

    @Test
    void sessionsStandInTheListAndAreEndedOneByOneOrAllAtOnce() {
        signInToAnEmptyClass();
        assertThat(text(drawn())).contains("No session is known besides this page.", "Nothing is written down yet.")
                .doesNotContain("End all others");
        OpenSession here = open("10.0.0.7", "Firefox, Windows");
        VaadinSession.getCurrent().getSession().setAttribute(OpenSession.KEY, here);
        OpenSession second = open("10.0.0.8", "Safari, iPad");
        open("10.0.0.9", "");
        Component view = drawn();
        assertThat(text(view)).contains("This one. Firefox, Windows, from 10.0.0.7", "Safari, iPad, from 10.0.0.8",
                "Another browser or program, from 10.0.0.9");
        second.used(sessions.now().plusSeconds(60));
        view = drawn();
        press(view, "End");
        assertThat(text(view)).contains("Ended: Safari, iPad.", "this session was ended from the list: Safari, iPad");
        press(view, "End all others");
        assertThat(text(view)).contains("One other session is ended.").doesNotContain("End all others");
        assertThat(sessions.of(current.get().adultId())).containsExactly(here);
        accounts.setPassword(current.get().districtId(), current.get().adultId(), "from the terminal, say");
        assertThat(text(drawn())).as("a session that rests on a former password").contains("No session is known");
        here.restsOn(accounts.now(current.get()).orElseThrow());
        UI.getCurrent().setLocale(Locale.forLanguageTag("es"));
        assertThat(text(drawn())).contains("Esta. Firefox, Windows, desde 10.0.0.7",
                "terminada junto con todas las demás");
    }

    @Test
    void moreThanTenEventsAreFoldedAndATriedPasswordIsToldPlainly() {
        signInToAnEmptyClass();
        SignedIn adult = current.get();
        for (int i = 0; i < 11; i++) {
            events.note(adult.districtId(), adult.adultId(), SignInEvent.What.REFUSED, "10.0.0.9", "");
        }
        assertThat(text(drawn())).contains("a wrong password was tried. Another browser or program, from 10.0.0.9",
                "Earlier");
    }
}
