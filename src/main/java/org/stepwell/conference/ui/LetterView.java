package org.stepwell.conference.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouteParameters;
import com.vaadin.flow.router.RouterLink;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.stepwell.conference.HelpLetterService;
import org.stepwell.conference.KeptLetter;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HelpLetter;
import org.stepwell.core.wording.home.WordGuard.Found;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.Seen;
import org.stepwell.privacy.ui.ChildPage;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** The letter to a family whose child gets extra help: its sentences, the school's own words, and the PDF. */
@Route("letter/:child/:language")
@PermitAll
class LetterView extends Div implements BeforeEnterObserver, HasDynamicTitle {
    private final AccessRecordService record;
    private final RosterService roster;
    private final HelpLetterService letters;
    private final Words words = Words.of("conference");
    private final WordCheck check = new WordCheck(words);
    private final Div message = new Div();
    private UUID childId = new UUID(0, 0);
    private HelpLetter letter = new HelpLetter(Language.ENGLISH, List.of(), "");
    private int version;

    LetterView(RosterService roster, HelpLetterService letters, AccessRecordService record) {
        this.record = record;
        this.roster = roster;
        this.letters = letters;
    }

    /** No name: titles stay behind in tabs and histories that others see. */
    @Override
    public String getPageTitle() {
        return Parts.pageTitle(words.say("letter.title"));
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        ChildPage.enter(event, record, Seen.LETTER_PAGE, id -> {
            childId = id;
            draw(roster.child(id), Language.of(event.getRouteParameters().get("language").orElse("")));
        });
    }

    private void draw(ChildRow child, Language language) {
        removeAll();
        message.removeAll();
        add(new H1(words.say("letter.title") + ": " + child.label()));
        if (letters.planOf(childId).isEmpty()) {
            add(new Paragraph(words.say("letter.no-plan")), Parts.link("plan/" + childId, words.say("letter.to-plan")));
            return;
        }
        List<KeptLetter> versions = letters.versions(childId, language);
        Optional<KeptLetter> kept = versions.stream().findFirst();
        version = kept.map(KeptLetter::version).orElse(0);
        letter = kept.map(KeptLetter::letter).orElseGet(() -> letters.draft(childId, language));
        check.begin(kept.map(KeptLetter::confirmed).orElse(List.of()));
        add(languages(language), Parts.soft(words.say("letter.intro")), state(versions));
        PartField lines = new PartField(words.say("letter.lines"), language,
                told -> changed(new HelpLetter(language, told, letter.school())));
        PartField school = new PartField(words.say("letter.school"), language,
                told -> changed(new HelpLetter(language, letter.lines(), String.join("\n", told))));
        lines.show(letter.lines());
        school.show(letter.school().lines().toList());
        add(Parts.sheet(lines, school, Parts.soft(words.say("letter.school.help"))), check, message, actions(child, language));
        changed(letter);
    }

    private Paragraph state(List<KeptLetter> versions) {
        return versions.stream().filter(KeptLetter::approved).findFirst()
                .map(last -> new Paragraph(words.say("letter.approved-on", words.day(last.on()), last.by())))
                .orElseGet(() -> new Paragraph(words.say("letter.none-approved")));
    }

    private Div actions(ChildRow child, Language language) {
        Div actions = new Div();
        actions.addClassName("actions");
        if (letters.mayKeep(childId)) {
            NativeButton approve = Parts.button(words.say("approve"), () -> keep(child, true));
            approve.addClassName("strong");
            actions.add(approve, Parts.button(words.say("keep"), () -> keep(child, false)));
        } else {
            actions.add(Parts.soft(words.say("not-yours")));
        }
        String path = "letter.pdf?lang=" + language.code();
        actions.add(Parts.sheetOut(Parts.ofChild(child.schoolKey(), path), words.say("pdf")),
                Parts.sheetOut(Parts.ofChild(child.schoolKey(), path + "&print=large"), words.say("pdf-large")));
        return actions;
    }

    private Div languages(Language now) {
        Div row = new Div();
        row.addClassName("actions");
        row.getElement().setAttribute("role", "group").setAttribute("aria-label", words.say("language"));
        for (Language each : Language.values()) {
            row.add(NoteView.language(LetterView.class, childId, each, each == now));
        }
        return row;
    }

    private void changed(HelpLetter now) {
        letter = now;
        message.removeAll();
        check.look(now.text(), now.language(), () -> letters.check(childId, letter));
    }

    private void keep(ChildRow child, boolean approve) {
        try {
            List<Found> left = letters.keep(childId, letter, version, approve, check.confirmed());
            if (left.isEmpty()) {
                draw(child, letter.language());
                Parts.say(message, words.say(approve ? "approved" : "kept"));
            } else {
                Parts.say(message, check.text(left.getFirst()));
            }
        } catch (Refused refused) {
            Parts.say(message, Words.told(refused));
        }
    }
}
