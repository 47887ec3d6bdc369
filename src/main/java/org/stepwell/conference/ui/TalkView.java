package org.stepwell.conference.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Main;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.stepwell.conference.FamilyTalkService;
import org.stepwell.conference.HomeNoteService;
import org.stepwell.conference.KeptNote;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HomeNote.Part;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.Seen;
import org.stepwell.privacy.ui.ChildPage;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/**
 * The screen that may lie between adults and a family during a talk: one child, what was approved for home, room for what
 * is said. No bar, no other child, no notice, no search.
 */
@Route(value = "talk/:child/:language", autoLayout = false)
@PermitAll
class TalkView extends Main implements BeforeEnterObserver, HasDynamicTitle {
    private final AccessRecordService record;
    private final RosterService roster;
    private final HomeNoteService notes;
    private final FamilyTalkService talks;
    private final CurrentAdult current;
    private UUID childId = new UUID(0, 0);

    TalkView(RosterService roster, HomeNoteService notes, FamilyTalkService talks, CurrentAdult current,
            AccessRecordService record) {
        this.roster = roster;
        this.notes = notes;
        this.talks = talks;
        this.current = current;
        this.record = record;
        addClassName("talk");
    }

    /** Neither name nor screen: a family reads the tab as well. */
    @Override
    public String getPageTitle() {
        return "Stepwell";
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        ChildPage.enter(event, record, Seen.NOTE_PAGE, id -> {
            childId = id;
            draw(Language.of(event.getRouteParameters().get("language").orElse("")));
        });
    }

    private void draw(Language language) {
        removeAll();
        ChildRow child = roster.child(childId);
        Words page = Words.of("conference", language);
        getElement().setAttribute("lang", language.code());
        add(new H1(child.givenName()));
        Optional<KeptNote> approved = notes.versions(childId, language).stream().filter(KeptNote::approved).findFirst();
        if (approved.isEmpty()) {
            add(new Paragraph(page.say("talk.no-page")));
        } else {
            for (Part part : Part.values()) {
                part(page, child, part, approved.get().note().of(part));
            }
        }
        if (talks.mayWrite(childId)) {
            Div thanks = new Div();
            LocalDate today = current.today();
            TalkForm form = new TalkForm(talks, childId, today, page, () -> {
                draw(language);
                Parts.say(thanks, page.say("talk.kept"));
                addComponentAtIndex(1, thanks);
            });
            NativeDetails write = new NativeDetails(page.say("talk.write"), form);
            write.setOpen(true);
            add(Parts.sheet(write));
        }
        Component close = Parts.link("notes/" + childId + "/" + language.code(), page.say("talk.close"));
        close.addClassName("quiet");
        add(close);
    }

    private void part(Words page, ChildRow child, Part part, List<String> sentences) {
        if (sentences.isEmpty()) {
            return;
        }
        Div sheet = Parts.sheet(new H2(page.say("part." + part.name(), child.givenName())));
        if (part == Part.CAN || part == Part.ASK) {
            UnorderedList list = new UnorderedList();
            sentences.forEach(sentence -> list.add(new ListItem(sentence)));
            sheet.add(list);
        } else {
            Parts.paragraphs(sheet, sentences);
        }
        add(sheet);
    }
}
