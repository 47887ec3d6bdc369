package org.stepwell.conference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.conference.Schedule.Arrival;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;

@SpringBootTest(classes = Application.class,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=schedule"})
class ScheduleServiceTest extends OnTheSample {
    @Autowired
    private ScheduleService schedules;
    private List<ChildRow> children;
    private List<Slot> free;

    @BeforeEach
    void offersAnEvening() {
        children = roster.children(room);
        free = new Evening(today.plusDays(7), LocalTime.of(15, 0), LocalTime.of(18, 0), 15, 4, 10).slots();
    }

    private void save(List<Slot> slots) {
        schedules.save(room, schedules.schedule(room).version(), slots);
    }

    private UUID id(int at) {
        return children.get(at).childId();
    }

    @Test
    void eachChangeIsAVersionAndTwoAdultsDoNotOverwriteEachOther() {
        int before = schedules.schedule(room).version();
        save(free);
        as("coteacher@sample");
        assertThatThrownBy(() -> schedules.save(room, before, free)).isInstanceOf(Refused.class);
        List<Slot> filled = Evening.filled(free, children.stream().map(ChildRow::childId).toList());
        save(filled);
        assertThat(schedules.schedule(room).version()).isEqualTo(before + 2);
        assertThat(schedules.schedule(room).slots()).containsExactlyElementsOf(filled);
        assertThat(filled).filteredOn(Slot::pause).hasSize(2).allMatch(slot -> slot.childId() == null);
    }

    @Test
    void aHouseholdHasOneTimeAndTwoHouseholdsHaveTwo() {
        List<Slot> slots = new ArrayList<>(free);
        slots.set(0, slots.get(0).of(id(0), 1, Language.ENGLISH));
        slots.set(1, slots.get(1).of(id(0), 1, Language.ENGLISH));
        assertThatThrownBy(() -> save(slots)).isInstanceOf(Refused.class).hasMessageContaining(children.get(0).label());
        slots.set(1, slots.get(1).of(id(0), 2, Language.SPANISH));
        save(slots);
        assertThat(schedules.pages(room, Language.ENGLISH)).as("two copies, and one of each other child")
                .hasSize(children.size() + 1).extracting(page -> page.note().language())
                .startsWith(Language.ENGLISH, Language.SPANISH);
    }

    @Test
    void whoDidNotComeMayGetAnotherTime() {
        List<Slot> slots = new ArrayList<>(free);
        slots.set(0, slots.get(0).of(id(1), 1, Language.ENGLISH));
        save(slots);
        assertThat(schedules.schedule(room).holds(id(1))).isTrue();
        schedules.arrived(id(1), slots.get(0).day(), 1, Arrival.NO_SHOW);
        assertThat(schedules.schedule(room).holds(id(1))).isFalse();
        List<Slot> again = new ArrayList<>(slots);
        Slot another = Slot.free(today.plusDays(9), LocalTime.of(8, 0), 15).of(id(1), 1, Language.ENGLISH);
        again.add(another);
        save(again);
        assertThat(schedules.schedule(room).holds(id(1))).isTrue();
        schedules.arrived(id(1), slots.get(0).day(), 1, Arrival.OPEN);
        assertThat(schedules.schedule(room).of(slots.get(0))).as("a wrong tap is taken back").isEqualTo(Arrival.OPEN);
    }

    @Test
    void timesThatOverlapAndChildrenOfOthersAreRefused() {
        List<Slot> slots = new ArrayList<>(free);
        slots.add(Slot.free(free.getFirst().day(), LocalTime.of(15, 5), 15));
        assertThatThrownBy(() -> save(slots)).isInstanceOf(Refused.class);
        List<Slot> strange = new ArrayList<>(free);
        strange.set(0, strange.get(0).of(UUID.randomUUID(), 1, Language.ENGLISH));
        assertThatThrownBy(() -> save(strange)).isInstanceOf(NotVisible.class);
        as("specialist@sample");
        assertThatThrownBy(() -> schedules.schedule(room)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> schedules.arrived(id(0), today, 1, Arrival.CAME)).isInstanceOf(NotVisible.class);
    }

    /** The class PDF in the order of the evening: a sheet each, tagged, no sheet with another child's name on it. */
    @Test
    void thePrintsFollowTheOrderOfTheEvening() throws IOException {
        List<Slot> slots = new ArrayList<>(free);
        slots.set(0, slots.get(0).of(child("Tane").childId(), 1, Language.SPANISH));
        slots.set(1, slots.get(1).of(child("Amadou").childId(), 1, Language.ENGLISH));
        slots.set(2, slots.get(2).of(child("Amadou").childId(), 2, Language.ENGLISH));
        save(slots);
        Files.createDirectories(Path.of("target/screens"));
        byte[] list = schedules.list(room).pdf(Language.ENGLISH, Paper.LETTER);
        Files.write(Path.of("target/screens/talks-list-en.pdf"), list);
        byte[] spanish = schedules.list(room).pdf(Language.SPANISH, Paper.A4);
        Files.write(Path.of("target/screens/talks-list-es.pdf"), spanish);
        try (PDDocument document = Loader.loadPDF(list)) {
            String text = new PDFTextStripper().getText(document);
            assertThat(text).containsSubsequence("3:00–3:15", "Tane", "Amadou, household 1", "Amadou, household 2", "break",
                    "Without a time", "Devika");
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
        }
        try (PDDocument document = Loader.loadPDF(spanish)) {
            assertThat(new PDFTextStripper().getText(document)).contains("Sin hora", "descanso");
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("es");
        }
        byte[] notes = SchedulePaper.notes(schedules.pages(room, Language.ENGLISH), Language.ENGLISH, Paper.LETTER, false);
        Files.write(Path.of("target/screens/talks-notes.pdf"), notes);
        try (PDDocument document = Loader.loadPDF(notes)) {
            assertThat(document.getNumberOfPages()).isEqualTo(children.size() + 1);
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(languages(document.getDocumentCatalog().getStructureTreeRoot())).contains("en", "es");
            assertThat(sheet(document, 1)).contains("Tane", "Una nota para casa").doesNotContain("Amadou");
            assertThat(sheet(document, 2)).contains("Amadou").doesNotContain("Tane").isEqualTo(sheet(document, 3));
            for (int at = 4; at <= document.getNumberOfPages(); at++) {
                assertThat(sheet(document, at)).doesNotContain("Tane", "Amadou");
            }
        }
    }

    private static Set<String> languages(PDStructureNode node) {
        Set<String> found = new HashSet<>();
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                if (element.getLanguage() != null) {
                    found.add(element.getLanguage());
                }
                found.addAll(languages(element));
            }
        }
        return found;
    }

    private static String sheet(PDDocument document, int at) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(at);
        stripper.setEndPage(at);
        return stripper.getText(document);
    }
}
