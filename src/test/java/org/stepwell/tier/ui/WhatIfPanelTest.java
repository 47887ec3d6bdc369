package org.stepwell.tier.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.ClickEvent;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.dom.Element;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.LookMaker;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.WhatIf;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.tier.WhatIfService.Found;

/** The panel on a page without a browser: controls are set and buttons pressed as a browser tells the server. */
class WhatIfPanelTest {
    private static final String VERSION = RuleFile.shipped(RuleFile.WEIGHED).version();
    private static final LocalDate REVIEW = LocalDate.of(2026, 3, 13);
    private static final ClassSetting SETTING = new ClassSetting(
            new Progression("two", List.of(), List.of()),
            new Pacing(Stream.of("A1", "A2").map(s -> new PacingRow(s, null, LocalDate.of(2026, 2, 16), 4)).toList()),
            new SchoolCalendar(List.of()), true);

    private final List<RuleFile> asked = new ArrayList<>();
    private final List<Boolean> weekly = new ArrayList<>();

    /** One child, at step 1 on four days of the week of the review and never moved. */
    private Optional<Found> tried(RuleFile rules, boolean everyWeek) {
        asked.add(rules);
        weekly.add(everyWeek);
        List<Look> looks = new ArrayList<>();
        for (int day = 9; day <= 12; day++) {
            looks.add(LookMaker.look("c1", "A1", LocalDate.of(2026, 3, day), 1).make());
            looks.add(LookMaker.look("c1", "A2", LocalDate.of(2026, 3, day), 1).make());
        }
        TreeSet<LocalDate> days = new TreeSet<>(List.of(REVIEW));
        List<WhatIf.Decided> decided = List.of(new WhatIf.Decided(REVIEW, "c1", Tier.ON_LEVEL));
        return Optional.of(new Found(
                WhatIf.tried(SETTING, looks, decided, days, Map.of(), rules, Parameters.shipped()),
                WhatIf.tried(SETTING, looks, decided, days, Map.of(), RuleFile.shipped(RuleFile.DEFAULT),
                        Parameters.shipped()), Map.of("c1", "Ilse"), days));
    }

    @BeforeEach
    void opensAPage() {
        UI.setCurrent(new UI());
    }

    @AfterEach
    void closesThePage() {
        UI.setCurrent(null);
    }

    private WhatIfPanel panel(Language language) {
        UI.getCurrent().setLocale(Locale.forLanguageTag(language.code()));
        WhatIfPanel panel = new WhatIfPanel(new SuggestionWording(language, SETTING.progression()), this::tried);
        UI.getCurrent().add(panel);
        return panel;
    }

    private static void press(WhatIfPanel panel) {
        Component button = all(panel).filter(b -> b instanceof NativeButton n && !n.getText().contains("file"))
                .findFirst().orElseThrow();
        ComponentUtil.fireEvent(button, new ClickEvent<>(button));
    }

    private static Stream<Component> all(Component root) {
        return Stream.concat(Stream.of(root), root.getChildren().flatMap(WhatIfPanelTest::all));
    }

    private static Stream<Element> elements(Element root) {
        return Stream.concat(Stream.of(root), root.getChildren().flatMap(WhatIfPanelTest::elements));
    }

    /** Sets the n-th control of a kind and tells the server so, as a browser does. */
    private static void set(WhatIfPanel panel, String tag, int n, String value) {
        Element control = elements(panel.getElement()).filter(e -> !e.isTextNode() && e.getTag().equals(tag))
                .skip(n).findFirst().orElseThrow();
        control.setProperty("value", value);
    }

    private static String text(Component component) {
        return component.getElement().getTextRecursively();
    }

    @Test
    void saysWhoWouldHaveMovedBesideWhatWasDecided() {
        WhatIfPanel panel = panel(Language.ENGLISH);
        set(panel, "select", 0, RuleFile.WEIGHED);
        press(panel);
        assertThat(text(panel.result())).contains("Rules weighed " + VERSION + ": 1 move of 1 child, over 1 review of 1 child.",
                "Today 0 of 1 children would stand where it was decided", "March 13", "Ilse", "On level to Support",
                "On level goes on", "Agreeing is not being right.");
    }

    @Test
    void speaksSpanishToWhomReadsSpanish() {
        WhatIfPanel panel = panel(Language.SPANISH);
        set(panel, "select", 0, RuleFile.WEIGHED);
        press(panel);
        assertThat(text(panel.result())).contains("1 cambio de 1 niño o niña", "13 de marzo",
                "Lo observado concuerda con más ayuda");
    }

    @Test
    void triesAnotherThresholdInTheWordsOfTheReader() {
        WhatIfPanel panel = panel(Language.ENGLISH);
        set(panel, "select", 0, RuleFile.WEIGHED);
        assertThat(text(panel)).contains("more help: Cases in which the looks fit more help: at least 5 of 10");
        set(panel, "select", 2, "more_help.chance_support");
        set(panel, "input", 0, "10");
        set(panel, "select", 1, "weekly");
        press(panel);
        assertThat(asked.getLast().rules().getFirst().needs()).anyMatch(
                r -> r.measure() == Measure.CHANCE_SUPPORT && r.threshold() == 1);
        assertThat(weekly).containsExactly(true);
        assertThat(text(panel.result())).contains("no move of 0 children");
        set(panel, "input", 0, "many");
        press(panel);
        assertThat(text(panel.result())).contains("is not a number like 6");
    }

    @Test
    void namesEveryBadLineOfATextOfOnesOwnAndTakesTheMendedOne() {
        WhatIfPanel panel = panel(Language.ENGLISH);
        set(panel, "select", 0, WhatIfRules.OWN);
        String good = RuleFile.shippedText(RuleFile.WEIGHED).replace("name = weighed", "name = mine");
        set(panel, "textarea", 0, good.replace("enough looks_at_any_skill", "enough lookz").replace("free.step = 1", "free.step = 9"));
        press(panel);
        assertThat(asked).isEmpty();
        assertThat(text(panel.result())).contains("cannot be tried", "rules of my own:", "lookz is not a known measure",
                "free.step 9 is not in 1 to 5").containsPattern("line \\d+: lookz");
        set(panel, "textarea", 0, good);
        press(panel);
        assertThat(asked).singleElement().extracting(RuleFile::name).isEqualTo("mine");
        assertThat(text(panel.result())).contains("Rules mine " + VERSION + ": 1 move").doesNotContain("cannot be tried");
    }
}
