package org.stepwell.roster.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.AdultService.Refused;
import org.stepwell.roster.AdultService.Slip;
import org.stepwell.roster.AdultService;
import org.stepwell.roster.ClassAdult;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.Invitations.Role;
import org.stepwell.roster.OpenInvitation;

/** The adults of a class: who they are, letting one in by a code, ending the access of one. */
@StyleSheet("look/people.css")
public final class AdultsPanel extends Div {
    private final AdultService adults;
    private final Classroom room;
    private final SignedIn self;
    private final Words words = Words.of("people");
    private final Div message = new Div();
    private @Nullable UUID asked;

    /**
     * @param room the class
     * @param self who looks at it
     */
    public AdultsPanel(AdultService adults, Classroom room, SignedIn self) {
        this.adults = adults;
        this.room = room;
        this.self = self;
        draw("", null);
    }

    private void draw(String said, @Nullable Slip slip) {
        removeAll();
        message.removeAll();
        Set<Role> may = adults.mayInvite(room.classId());
        List<ClassAdult> all = adults.adults(room.classId());
        Div sheet = Parts.sheet(new H2(words.say("adults")), message);
        if (!said.isEmpty()) {
            Parts.say(message, said);
        }
        if (slip != null) {
            sheet.add(paper(slip));
        }
        sheet.add(list(all, may));
        List<ClassAdult> working = all.stream().filter(adult -> adult.role() != Role.LEAD).toList();
        if (working.size() == 1 && working.getFirst().adultId().equals(self.adultId())) {
            sheet.add(Parts.soft(words.say("adults.alone")));
        }
        if (!may.isEmpty()) {
            sheet.add(inviting(may));
            open(sheet);
        }
        sheet.add(password());
        add(sheet);
    }

    /** The way to the page where an adult changes the own password. */
    public static Component password() {
        Anchor password = new Anchor("/sign-in/password.html", Words.of("people").say("password"));
        password.setRouterIgnore(true);
        password.addClassName("button");
        return password;
    }

    private String word(Role role) {
        return words.say("role." + role.name().toLowerCase(Locale.ROOT));
    }

    private Component list(List<ClassAdult> all, Set<Role> may) {
        UnorderedList list = new UnorderedList();
        list.addClassName("people");
        for (ClassAdult adult : all) {
            boolean own = adult.adultId().equals(self.adultId());
            ListItem item = new ListItem(new Span(words.say(own ? "adult.you" : "adult.line", adult.name(),
                    word(adult.role()), adult.signIn())));
            if (adult.role() != Role.LEAD && adult.adultId().equals(asked)) {
                item.add(asking(adult, own));
            } else if (adult.role() != Role.LEAD && (own || may.contains(adult.role()))) {
                item.add(ChildrenPanel.named(Parts.button(words.say(own ? "adult.leave" : "adult.end"), () -> {
                    asked = adult.adultId();
                    draw("", null);
                }), own ? words.say("adult.leave") : words.say("adult.end-of", adult.name())));
            }
            list.add(item);
        }
        return list;
    }

    private Component asking(ClassAdult adult, boolean own) {
        Div choice = new Div(
                Parts.button(words.say("adult.end-yes"), () -> act(() -> {
                    adults.end(room.classId(), adult.adultId());
                    if (own) {
                        getUI().ifPresent(ui -> ui.getPage().setLocation("/login"));
                    }
                    return words.say("adult.ended", adult.name());
                })),
                Parts.button(words.say("adult.keep"), () -> {
                    asked = null;
                    draw("", null);
                }));
        choice.addClassName("row");
        Div ask = new Div(new Paragraph(own ? words.say("adult.leave-ask") : words.say("adult.end-ask", adult.name())),
                choice);
        ask.getElement().setAttribute("role", "alert");
        ask.addClassName("change");
        return ask;
    }

    private Component inviting(Set<Role> may) {
        Map<String, String> roles = new LinkedHashMap<>();
        may.forEach(role -> roles.put(role.name(), word(role)));
        Map<String, String> known = new LinkedHashMap<>(roles);
        known.remove(Role.LEAD.name());
        String first = roles.keySet().iterator().next();
        String firstKnown = known.keySet().iterator().next();
        String[] text = {"", first, "", firstKnown};
        Div row = new Div(Parts.input(words.say("invite.for"), "text", "", name -> text[0] = name),
                Parts.choice(words.say("invite.role"), roles, first, role -> text[1] = role),
                Parts.button(words.say("invite.make"), () -> {
                    try {
                        draw("", adults.invite(room.classId(), Role.valueOf(text[1]), text[0]));
                    } catch (Refused refused) {
                        complain(refused);
                    } catch (NotVisible closed) {
                        Parts.say(message, words.say("closed"));
                    }
                }));
        Div join = new Div(Parts.input(words.say("invite.sign-in"), "text", "", name -> text[2] = name),
                Parts.choice(words.say("invite.role"), known, firstKnown, role -> text[3] = role),
                Parts.button(words.say("invite.add"), () -> act(() -> {
                    adults.addKnown(room.classId(), text[2], Role.valueOf(text[3]));
                    return words.say("invite.added", text[2].strip());
                })));
        row.addClassName("row");
        join.addClassName("row");
        return new Div(new H3(words.say("invite")), Parts.soft(words.say("invite.how") + " "
                + words.say("role.specialist-note")), row, new NativeDetails(words.say("invite.known"), join));
    }

    private Component paper(Slip slip) {
        Anchor address = new Anchor("/sign-in/invited.html", "/sign-in/invited.html");
        address.setRouterIgnore(true);
        address.getElement().executeJs("this.textContent = this.href");
        Span code = new Span(slip.code());
        code.addClassName("code");
        LocalDate last = slip.lastDay();
        Div buttons = new Div(Parts.button(words.say("slip.print"),
                () -> getUI().ifPresent(ui -> ui.getPage().executeJs("window.print()"))),
                Parts.button(words.say("slip.close"), () -> draw("", null)));
        buttons.addClassName("row");
        Paragraph once = Parts.soft(words.say("slip.once"));
        once.addClassName("screen-only");
        Paragraph here = Parts.soft(words.say("slip.here"));
        here.addClassName("screen-only");
        here.getElement().executeJs(
                "this.hidden = !['localhost', '127.0.0.1', '[::1]'].includes(window.location.hostname)");
        Div paper = new Div(new H3(words.say("slip.title")),
                new Paragraph(words.say("slip.for", slip.forName(), word(slip.role()))),
                new Paragraph(new Span(words.say("slip.go") + " "), address),
                new Paragraph(new Span(words.say("slip.code") + " "), code),
                new Paragraph(words.say("slip.until", words.day(last))), here, once, buttons);
        paper.addClassName("slip");
        paper.getElement().setAttribute("role", "status");
        return paper;
    }

    private void open(Div sheet) {
        List<OpenInvitation> given = adults.open(room.classId());
        if (given.isEmpty()) {
            return;
        }
        UnorderedList list = new UnorderedList();
        list.addClassName("people");
        given.forEach(one -> list.add(new ListItem(new Span(words.say("open.line", one.forName(), word(one.role()),
                words.day(one.expiresAt().atZone(self.zone()).toLocalDate().minusDays(1)))),
                ChildrenPanel.named(Parts.button(words.say("open.revoke"), () -> act(() -> {
                    adults.revoke(room.classId(), one.invitationId());
                    return words.say("open.revoked", one.forName());
                })), words.say("open.revoke-of", one.forName())))));
        sheet.add(new H3(words.say("open")), list);
    }

    private void act(Supplier<String> what) {
        try {
            String said = what.get();
            asked = null;
            draw(said, null);
        } catch (Refused refused) {
            complain(refused);
        } catch (NotVisible closed) {
            Parts.say(message, words.say("closed"));
        }
    }

    private void complain(Refused refused) {
        Parts.say(message, words.say("refused." + refused.refusal().name().toLowerCase(Locale.ROOT)));
    }
}
