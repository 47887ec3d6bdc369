package org.stepwell.platform.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.router.RouterLink;
import com.vaadin.flow.server.menu.MenuConfiguration;
import com.vaadin.flow.server.menu.MenuEntry;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.stepwell.Screens;

class BarTest extends Screens {
    private Component shell() {
        return UI.getCurrent().getChildren().findFirst().orElseThrow();
    }

    private static Stream<RouterLink> links(Component root) {
        return below(root).filter(RouterLink.class::isInstance).map(RouterLink.class::cast);
    }

    /** What a reader hears as the open group and the open screen. */
    private List<String> current() {
        return links(shell()).filter(l -> l.getElement().hasAttribute("aria-current")).map(RouterLink::getText).toList();
    }

    private List<String> rowsShown() {
        return below(shell()).filter(c -> c.getElement().getClassList().contains("bar-screens")
                && !c.getElement().hasAttribute("hidden")).map(Screens::text).toList();
    }

    @Test
    void everyScreenOnTheBarStandsInOneGroupAndIsLedToOnce() {
        signIn("teacher@sample");
        UI.getCurrent().navigate("class-map");
        List<String> orders = MenuConfiguration.getMenuEntries().stream()
                .filter(e -> BarGroup.of(e.order()) == BarGroup.TODAY).map(MenuEntry::path).toList();
        assertThat(orders).as("orders below 100 are Today's alone").hasSize(1);
        MenuConfiguration.getMenuEntries().forEach(entry -> assertThat(links(shell())
                .map(RouterLink::getHref)).contains(entry.path().replaceFirst("^/", "")));
    }

    @Test
    void onlyTheScreensOfTheOpenGroupAreShownAndTheOpenOneIsNamed() {
        signIn("teacher@sample");
        UI.getCurrent().navigate("suggestions");
        assertThat(current()).containsExactly("Week", "Suggestions");
        assertThat(rowsShown()).hasSize(1).first().asString().contains("Class map", "Suggestions", "Weekly review")
                .doesNotContain("Notes");
        UI.getCurrent().navigate("");
        assertThat(current()).containsExactly("Today");
        assertThat(rowsShown()).isEmpty();
    }

    @Test
    void aScreenBelowAnotherKeepsItsGroupAndAChildThatFromWhichItWasReached() {
        signIn("teacher@sample");
        UI.getCurrent().navigate("groups/tomorrow");
        assertThat(current()).first().isEqualTo("Block");
        UI.getCurrent().navigate("class-map");
        UI.getCurrent().navigate("what-if");
        assertThat(rowsShown()).first().asString().contains("Class map");
        assertThat(current()).doesNotContain("Class map").doesNotContain("Block");
    }

    @Test
    void theGroupsSpeakSpanish() {
        signIn("teacher@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        assertThat(text(new Bar(Words.of("shell")))).contains("Hoy", "Mesa", "Bloque", "Semana", "Unidad", "Familias",
                "Clase");
    }

    @Test
    void anOrderOutsideTheGroupsIsRefused() {
        assertThat(BarGroup.of(299.5)).isEqualTo(BarGroup.WEEK);
        assertThatThrownBy(() -> BarGroup.of(600)).hasMessageContaining("0 to 599");
        assertThatThrownBy(() -> BarGroup.of(-1)).isInstanceOf(IllegalArgumentException.class);
    }
}
