package org.stepwell.tier.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.ListItem;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;
import org.stepwell.observation.ObservationLine;
import org.stepwell.observation.ObservationService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

class ChildViewTest extends Screens {
    @Autowired
    private RosterService roster;
    @Autowired
    private ObservationService observations;

    private ChildRow child(String name) {
        return roster.children().stream().filter(c -> c.label().equals(name)).findFirst().orElseThrow();
    }

    private Component open(UUID child) {
        UI.getCurrent().navigate("child/" + child);
        return (Component) getCurrentView();
    }

    private static List<ListItem> looks(Component view) {
        return below(view).filter(c -> c instanceof LooksPanel).flatMap(Screens::below)
                .filter(ListItem.class::isInstance).map(ListItem.class::cast).toList();
    }

    @Test
    void everyChildOfTheSampleHasAPage() {
        signIn("teacher@sample");
        for (ChildRow row : roster.children()) {
            Component view = open(row.childId());
            assertThat(text(view)).as(row.label()).startsWith(row.label()).contains("Support in this unit", "Looks");
        }
    }

    /** Opening the page is written down before it is drawn, so it stands on it. */
    @Test
    void thePageShowsWhoCanSeeTheChildAndWhoDid() {
        signIn("lead@sample");
        String led = text(open(roster.children().getFirst().childId()));
        assertThat(led).contains("Who can see this child", "School lead", "Who did", "(School lead): this page");
        signIn("specialist@sample");
        ChildRow shared = roster.children().getFirst();
        assertThat(text(open(shared.childId()))).contains("Who can see this child", "Specialist, until")
                .doesNotContain("Who did");
        signIn("teacher@sample");
        assertThat(text(open(shared.childId()))).contains("(Specialist): this page", "(Teacher): this page");
    }

    @Test
    void aPageThatIsDeniedIsWrittenDownForThoseOfTheClass() {
        signIn("specialist@sample");
        List<UUID> reached = roster.children().stream().map(ChildRow::childId).toList();
        signIn("teacher@sample");
        ChildRow hidden = roster.children().stream().filter(c -> !reached.contains(c.childId())).findFirst()
                .orElseThrow();
        signIn("specialist@sample");
        UI.getCurrent().navigate("child/" + hidden.childId());
        assertThat(getCurrentView()).isNotInstanceOf(ChildView.class);
        signIn("teacher@sample");
        assertThat(text(open(hidden.childId()))).contains("Not given to");
    }

    @Test
    void allRecordsAreOfferedToThoseOfTheClassAndNotToWhomAChildIsShared() {
        signIn("teacher@sample");
        UUID amadou = child("Amadou").childId();
        Component page = open(amadou);
        assertThat(text(page)).contains("All records on this child", "34 CFR 99.10", "Read it through");
        assertThat(below(page).filter(Anchor.class::isInstance).map(a -> ((Anchor) a).getHref()))
                .contains("/api/children/q0602/records.zip?lang=en");
        signIn("specialist@sample");
        assertThat(text(open(amadou))).startsWith("Amadou").doesNotContain("All records");
    }

    @Test
    void aCorrectionStandsBesideTheLookItReplaces() {
        signIn("teacher@sample");
        ChildRow freya = child("Freya");
        int before = observations.looks(freya.childId()).size();
        Component view = open(freya.childId());
        ListItem newest = looks(view).getFirst();
        fill(newest, "Step", "2");
        fill(newest, "Help", "cubes");
        press(newest, "Save correction");
        List<ObservationLine> after = observations.looks(freya.childId());
        assertThat(after).hasSize(before + 1);
        assertThat(after.getLast().look().step()).isEqualTo(2);
        assertThat(after.stream().filter(l -> l.look().id().equals(after.getLast().look().replaces())).findFirst()
                .orElseThrow().replacedBy()).isEqualTo(after.getLast().look().id());
        assertThat(text(view)).contains("corrected, kept to be read", "cubes out");
    }

    @Test
    void aLookTakenBackStaysToBeRead() {
        signIn("teacher@sample");
        ChildRow hassan = child("Hassan");
        Component view = open(hassan.childId());
        press(looks(view).getFirst(), "Take back");
        assertThat(text(view)).contains("taken back, kept to be read");
        assertThat(observations.looks(hassan.childId()).getLast().look().withdrawn()).isTrue();
    }

    @Test
    void aLookWrittenLaterSaysSo() {
        signIn("teacher@sample");
        ChildRow mei = child("Mei");
        Component view = open(mei.childId());
        fill(view, "Task", "  16 ");
        fill(view, "Note", "said it while lining up");
        press(view, "Save look");
        ObservationLine newest = observations.looks(mei.childId()).getLast();
        assertThat(newest.look().tags()).contains("written_later");
        assertThat(newest.look().task()).isEqualTo("16");
        assertThat(newest.look().observer()).isEqualTo("teacher@sample");
        assertThat(text(looks(view).getFirst())).contains("written later", "“said it while lining up”");
    }

    @Test
    void whatDoesNotExistAndWhatMayNotBeSeenLookTheSame() {
        signIn("teacher@sample");
        UUID devika = child("Devika").childId();
        signIn("specialist@sample");
        for (String path : List.of("child/" + devika, "child/" + UUID.randomUUID(), "child/nonsense")) {
            UI.getCurrent().navigate(path);
            assertThat(getCurrentView()).as(path).isNotInstanceOf(ChildView.class);
        }
        assertThat(text(open(child("Amadou").childId()))).startsWith("Amadou");
    }

    @Test
    void aChildNobodyHasSeenIsToldSo() {
        signInToAnEmptyClass();
        UUID ilse = roster.addChild(roster.classes().getFirst().classId(), "", "Ilse", "");
        assertThat(text(open(ilse))).contains("Not seen yet. Take the child to the table first.",
                "Bring a progression in first", "None yet in this unit.");
    }

    @Test
    void speaksSpanish() {
        signIn("teacher@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        assertThat(text(open(child("Itzel").childId()))).contains("Apoyo en esta unidad", "Observaciones", "con cubos")
                .doesNotContain("Looks", "no help", "Decisions");
    }
}
