package org.stepwell.tier.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.NativeButton;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.DecisionLine;
import org.stepwell.tier.TierService;

class SuggestionsViewTest extends Screens {
    @Autowired
    private RosterService roster;
    @Autowired
    private TierService tiers;

    private static Component card(Component view, String name) {
        return below(view).filter(c -> c instanceof Div && c.hasClassName("sheet")).filter(c -> below(c)
                .anyMatch(h -> h instanceof H3 && text(h).equals(name))).findFirst().orElseThrow();
    }

    private OneChild withMove(ClassPicture picture, int which) {
        return picture.children().stream().filter(c -> said(picture, c).verdict() == Verdict.MOVE
                && !c.decided(picture.day())).toList().get(which);
    }

    private static Suggestion said(ClassPicture picture, OneChild child) {
        return picture.review().of(child.row().schoolKey()).orElseThrow();
    }

    private UUID room() {
        return roster.classes().getFirst().classId();
    }

    private DecisionLine newest(OneChild child) {
        return tiers.decisions(child.row().childId()).getLast();
    }

    @Test
    void givesEachChildOnceWithTheReasonTheCautionsAndWhatTheLooksWere() {
        signIn("teacher@sample");
        ClassPicture picture = tiers.picture(room());
        SuggestionsView view = fresh(SuggestionsView.class);
        assertThat(below(view).filter(H3.class::isInstance).map(Screens::text).toList())
                .containsAll(picture.children().stream().map(c -> c.row().label()).toList());
        assertThat(text(card(view, "Tane"))).contains("First at the table", "Waiting", "Not enough yet");
        assertThat(text(card(view, "Amadou"))).contains("Help was not given as planned");
    }

    @Test
    void anAcceptedMoveIsStoredWithWhatItRestedOn() {
        signIn("teacher@sample");
        ClassPicture picture = tiers.picture(room());
        OneChild child = withMove(picture, 0);
        SuggestionsView view = fresh(SuggestionsView.class);
        press(card(view, child.row().label()), "Accept: ");
        DecisionLine line = newest(child);
        assertThat(line.choice()).isEqualTo("accept");
        assertThat(line.to()).isEqualTo(said(picture, child).suggested());
        assertThat(line.from()).isEqualTo(child.state().tier());
        assertThat(below(card(view, child.row().label())).filter(NativeButton.class::isInstance).map(Screens::text))
                .noneMatch(words -> words.startsWith("Accept"));
    }

    @Test
    void keepingNeedsNoReason() {
        signIn("teacher@sample");
        OneChild child = withMove(tiers.picture(room()), 0);
        SuggestionsView view = fresh(SuggestionsView.class);
        press(card(view, child.row().label()), "Keep: ");
        assertThat(newest(child).choice()).isEqualTo("keep");
        assertThat(text(view)).contains("Decided: " + child.row().label() + ", ", "Decided today (");
        assertThat(text(card(view, child.row().label()))).contains(" goes on (Imogen Castellane).");
        assertThat(newest(child).to()).isEqualTo(child.state().tier());
    }

    @Test
    void anotherTierNeedsAReasonAndIsAskedForOne() {
        signIn("teacher@sample");
        ClassPicture picture = tiers.picture(room());
        OneChild child = picture.children().stream().filter(c -> c.row().label().equals("Kwabena")).findFirst()
                .orElseThrow();
        int before = tiers.decisions(child.row().childId()).size();
        Tier other = child.state().tier() == Tier.SUPPORT ? Tier.ON_LEVEL : Tier.SUPPORT;
        SuggestionsView view = fresh(SuggestionsView.class);
        fill(card(view, "Kwabena"), "Tier", other.code());
        press(card(view, "Kwabena"), "Decide");
        assertThat(text(card(view, "Kwabena"))).contains("Say in a few words why another tier fits better.");
        assertThat(tiers.decisions(child.row().childId())).hasSize(before);
        fill(card(view, "Kwabena"), "Reason", "counts all, every time");
        press(card(view, "Kwabena"), "Decide");
        assertThat(newest(child)).satisfies(line -> {
            assertThat(line.choice()).isEqualTo("other");
            assertThat(line.to()).isEqualTo(other);
            assertThat(line.reason()).isEqualTo("counts all, every time");
        });
    }

    @Test
    void aSpecialistReadsTheSharedChildrenAndDecidesForNone() {
        signIn("specialist@sample");
        SuggestionsView view = fresh(SuggestionsView.class);
        List<String> shared = roster.children().stream().map(c -> c.label()).toList();
        assertThat(text(view)).contains(shared).doesNotContain("Devika", "Tane");
        press(card(view, shared.getFirst()), "Keep: ");
        assertThat(text(view)).contains("Only an adult of the class decides.");
    }

    @Test
    void aClassWithoutUnitOrChildrenIsToldSo() {
        signInToAnEmptyClass();
        assertThat(text(fresh(SuggestionsView.class))).contains("No child is in this class yet.");
        roster.addChild(room(), "", "Ilse", "");
        assertThat(text(fresh(SuggestionsView.class))).contains("No unit is started yet.");
    }

    @Test
    void speaksSpanish() {
        signIn("coteacher@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        assertThat(text(fresh(SuggestionsView.class))).contains("Sugerencias", "Mantener: ", "Por qué")
                .doesNotContain("Keep", "Why", "looks", "Support");
    }
}
