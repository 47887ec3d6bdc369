package org.stepwell.conference.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
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
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.stepwell.conference.HomeNoteService;
import org.stepwell.conference.KeptNote;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HomeNote;
import org.stepwell.core.wording.home.HomeNote.Part;
import org.stepwell.core.wording.home.WordGuard.Found;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.Seen;
import org.stepwell.privacy.ui.ChildPage;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** One page for home: its parts as text, what to look at again, and the PDF. */
@Route("notes/:child/:language")
@PermitAll
class NoteView extends Div implements BeforeEnterObserver, HasDynamicTitle {
    private final AccessRecordService record;
    private final RosterService roster;
    private final HomeNoteService notes;
    private final Words words = Words.of("conference");
    private final Map<Part, PartField> fields = new EnumMap<>(Part.class);
    private final WordCheck check = new WordCheck(words);
    private final Div message = new Div();
    private UUID childId = new UUID(0, 0);
    private HomeNote note = new HomeNote(Language.ENGLISH, Map.of(), List.of());
    private int version;

    NoteView(RosterService roster, HomeNoteService notes, AccessRecordService record) {
        this.record = record;
        this.roster = roster;
        this.notes = notes;
    }

    /** No name: titles stay behind in tabs and histories that others see. */
    @Override
    public String getPageTitle() {
        return Parts.pageTitle(words.say("title"));
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        ChildPage.enter(event, record, Seen.NOTE_PAGE, id -> {
            childId = id;
            draw(roster.child(id), Language.of(event.getRouteParameters().get("language").orElse("")));
        });
    }

    private void draw(ChildRow child, Language language) {
        removeAll();
        fields.clear();
        Optional<KeptNote> kept = notes.newest(childId, language);
        version = kept.map(KeptNote::version).orElse(0);
        check.begin(kept.map(KeptNote::confirmed).orElse(List.of()));
        add(new H1(child.label()), languages(language));
        if (notes.outOfDate(childId, language)) {
            Paragraph old = new Paragraph(words.say("out-of-date"));
            old.addClassName("problem");
            add(old);
        }
        Div sheet = Parts.sheet(Parts.soft(words.say("paragraphs")));
        for (Part part : Part.values()) {
            PartField field = new PartField(Words.of("conference", language).say("part." + part.name(),
                    child.givenName()), language, sentences -> changed(part, sentences));
            fields.put(part, field);
            sheet.add(field);
        }
        boolean mine = notes.mayKeep(childId);
        Div actions = new Div();
        actions.addClassName("actions");
        if (mine) {
            NativeButton approve = Parts.button(words.say("approve"), () -> keep(true));
            approve.addClassName("strong");
            actions.add(approve, Parts.button(words.say("keep"), () -> keep(false)),
                    Parts.button(words.say("fresh"), () -> show(notes.draft(childId, language))));
        }
        actions.add(pdf(child, language, "normal", words.say("pdf")), pdf(child, language, "large",
                words.say("pdf-large")), Parts.link("talk/" + childId + "/" + language.code(),
                words.say("talk.screen")));
        add(sheet, check, message, actions);
        if (!mine) {
            add(Parts.soft(words.say("not-yours")));
        }
        show(kept.map(KeptNote::note).orElseGet(() -> notes.draft(childId, language)));
    }

    private Div languages(Language now) {
        Div row = new Div();
        row.addClassName("actions");
        row.getElement().setAttribute("role", "group").setAttribute("aria-label", words.say("language"));
        for (Language each : Language.values()) {
            row.add(language(NoteView.class, childId, each, each == now));
        }
        return row;
    }

    /** The way to the same page in a language. */
    static RouterLink language(Class<? extends Component> screen, UUID childId, Language each, boolean here) {
        RouterLink link = new RouterLink(each == Language.SPANISH ? "Español" : "English", screen,
                new RouteParameters(Map.of("child", childId.toString(), "language", each.code())));
        link.addClassName("button");
        if (here) {
            link.getElement().setAttribute("aria-current", "page");
        }
        return link;
    }

    private static Anchor pdf(ChildRow child, Language language, String print, String text) {
        return Parts.sheetOut(Parts.ofChild(child.schoolKey(), "note.pdf?lang=" + language.code() + "&print=" + print), text);
    }

    private void show(HomeNote shown) {
        note = shown;
        fields.forEach((part, field) -> field.show(shown.of(part)));
        look();
    }

    private void changed(Part part, List<String> sentences) {
        note = note.with(part, sentences);
        message.removeAll();
        look();
    }

    private void look() {
        check.look(note.text(), note.language(), () -> notes.check(childId, note));
    }

    private void keep(boolean approve) {
        try {
            List<Found> left = notes.keep(childId, note, version, approve, check.confirmed());
            if (left.isEmpty()) {
                version++;
                Parts.say(message, words.say(approve ? "approved" : "kept"));
            } else {
                Parts.say(message, check.text(left.getFirst()));
            }
        } catch (IllegalArgumentException wrong) {
            Parts.say(message, words.say(wrong.getMessage() != null && wrong.getMessage().equals("too-long")
                    ? "too-long" : "kept-meanwhile"));
        }
    }
}
