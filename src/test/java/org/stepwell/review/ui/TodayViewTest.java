package org.stepwell.review.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.H1;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.tier.Verdict;
import org.stepwell.pacing.Lesson;
import org.stepwell.pacing.LessonService;
import org.stepwell.pacing.PacingService;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.TierService;

class TodayViewTest extends Screens {
    @Autowired
    private RosterService roster;
    @Autowired
    private TierService tiers;
    @Autowired
    private PacingService pacing;
    @Autowired
    private LessonService lessons;

    private List<String> links(TodayView view) {
        return below(view).filter(Anchor.class::isInstance).map(a -> ((Anchor) a).getHref()).toList();
    }

    @Test
    void namesTheDayTheLessonInHandAndTheWayToTheTable() {
        signIn("teacher@sample");
        TodayView view = fresh(TodayView.class);
        assertThat(text(first(view, H1.class, ""))).contains(Integer.toString(today().getDayOfMonth()));
        assertThat(text(view)).contains("Room 6", "Lesson in hand", "Teens and tens", "Begun ", "Also under way T08 Two-digit")
                .doesNotContain("Begin here");
        assertThat(links(view)).contains("/table/", "class-map", "suggestions");
    }

    @Test
    void bringsTheChildrenSeenLeastToTheTableFirst() {
        signIn("teacher@sample");
        String text = text(fresh(TodayView.class));
        assertThat(text).contains("Fewest looks in 3 weeks: Oleksandr · no look", "Tane · 1 look");
        assertThat(text.indexOf("Oleksandr")).isLessThan(text.indexOf("Tane"));
        assertThat(text.indexOf("Fewest looks")).isLessThan(text.indexOf("this week"));
    }

    @Test
    void countsOnlyMovesNobodyHasDecidedOnToday() {
        signIn("teacher@sample");
        UUID room = roster.classes().getFirst().classId();
        ClassPicture before = tiers.picture(room);
        List<ClassPicture.OneChild> moves = before.children().stream()
                .filter(c -> before.review().of(c.row().schoolKey()).orElseThrow().verdict() == Verdict.MOVE).toList();
        assertThat(moves).hasSizeGreaterThan(1);
        assertThat(text(fresh(TodayView.class))).contains(moves.size() + " moves are suggested.")
                .doesNotContain("Decided today");
        ClassPicture.OneChild kept = moves.getFirst();
        tiers.decide(room, kept.row().childId(), kept.state().tier(), "");
        assertThat(text(fresh(TodayView.class)))
                .contains(moves.size() == 2 ? "1 move is suggested." : moves.size() - 1 + " moves are suggested.")
                .contains("Decided today: 1.");
    }

    @Test
    void showsASpecialistTheSharedChildrenOnly() {
        signIn("specialist@sample");
        TodayView view = fresh(TodayView.class);
        Set<String> shared = Set.copyOf(roster.children().stream().map(c -> c.label()).toList());
        assertThat(shared).isNotEmpty().contains("Amadou");
        assertThat(text(view)).doesNotContain("Tane", "Devika");
    }

    @Test
    void saysHowToBeginInANewClassAndWhatIsDoneAlready() {
        signInToAnEmptyClass();
        assertThat(text(fresh(TodayView.class))).contains("Begin here", "Add the children", "tens-and-ones comes with Stepwell")
                .doesNotContain("Lesson in hand", "To the Table", "Waiting for you");
        UUID room = roster.classes().getFirst().classId();
        roster.addChild(room, "", "Ilse", "");
        assertThat(text(fresh(TodayView.class))).contains("Done: 1 child is in the class.", "Start a unit",
                "To the Table", "Nobody was seen yet this week: 1 child.");
        pacing.startUnit(room, "tens-and-ones", "Teens", LocalDate.of(2026, 1, 5));
        assertThat(text(fresh(TodayView.class))).contains("Done: a unit is started.", "Say which skill is due",
                "The unit has no skill in hand today.", "No move waits.");
    }

    @Test
    void showsTheLessonTheTeacherWrote() {
        signInToAnEmptyClass();
        UUID room = roster.classes().getFirst().classId();
        roster.addChild(room, "", "Ilse", "");
        UUID unit = pacing.startUnit(room, "tens-and-ones", "Teens", LocalDate.of(2026, 1, 5));
        pacing.importPacing(room, unit, List.of(new PacingRow("T05", LocalDate.of(2026, 1, 5), LocalDate.of(2026, 1, 12), 3)));
        lessons.save(room, List.of(new Lesson(UUID.randomUUID(), 0, 1, "Boats of ten", List.of("T06"), null, "cubes", "",
                2)));
        assertThat(text(fresh(TodayView.class))).contains("Boats of ten", "T06",
                "Has to lie ready: cubes", "Also under way T05", "To the unit");
    }

    @Test
    void speaksSpanishToWhoeverReadsSpanish() {
        signIn("coteacher@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        TodayView view = fresh(TodayView.class);
        assertThat(text(view)).contains("La lección de ahora", "Primero en la mesa", " de ")
                .doesNotContain("Lesson", "November", "looks", "expected");
        assertThat(view.getPageTitle()).isEqualTo("Hoy · Stepwell");
    }
}
