package org.stepwell.conference.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouteParameters;
import com.vaadin.flow.router.RouterLink;
import jakarta.annotation.security.PermitAll;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Optional;
import org.stepwell.conference.HomeNoteService;
import org.stepwell.conference.KeptNote;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;

/** All children of the class with the state of their page in either language. */
@Route("notes")
@Menu(order = 410, title = "conference.title")
@PermitAll
class NotesView extends Div implements BeforeEnterObserver, HasDynamicTitle {
    private final RosterService roster;
    private final HomeNoteService notes;
    private final Words words = Words.of("conference");

    NotesView(RosterService roster, HomeNoteService notes) {
        this.roster = roster;
        this.notes = notes;
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(words.say("title"));
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        removeAll();
        add(new H1(words.say("title")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        add(ClassChoice.line(classes), Parts.soft(words.say("intro")));
        List<ChildRow> children = roster.children(ClassChoice.of(classes).classId()).stream()
                .filter(child -> notes.mayRead(child.childId())).toList();
        if (children.isEmpty()) {
            add(ClassChoice.noChildren());
            return;
        }
        NativeTableRow head = new NativeTableRow(header(words.say("child")), header("English"), header("Español"));
        NativeTableBody body = new NativeTableBody();
        children.forEach(child -> body.add(new NativeTableRow(new NativeTableHeaderCell(child.label()),
                cell(child, Language.ENGLISH), cell(child, Language.SPANISH))));
        NativeTable table = new NativeTable(new com.vaadin.flow.component.html.NativeTableHeader(head), body);
        table.addClassName("plain-table");
        add(Parts.sheet(table));
    }

    private static NativeTableHeaderCell header(String text) {
        return new NativeTableHeaderCell(text);
    }

    private NativeTableCell cell(ChildRow child, Language language) {
        Optional<KeptNote> newest = notes.newest(child.childId(), language);
        DateTimeFormatter day = DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withLocale(words.locale());
        String state = newest.map(note -> words.say(note.approved() ? "version-approved" : "version-draft",
                note.version(), day.format(note.on()))).orElseGet(() -> words.say("no-version"));
        RouterLink link = new RouterLink(state, NoteView.class,
                new RouteParameters(java.util.Map.of("child", child.childId().toString(), "language",
                        language.code())));
        link.addClassName("cell-link");
        link.getElement().setAttribute("aria-label", child.label() + ", "
                + (language == Language.SPANISH ? "Español" : "English") + ": " + state);
        return new NativeTableCell(link);
    }
}
