package org.stepwell.conference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HelpLetter;
import org.stepwell.plan.PlanService;
import org.stepwell.plan.PlanTerms;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.privacy.NotVisible;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=letter"})
class HelpLetterServiceTest extends OnTheSample {
    @Autowired
    private HelpLetterService letters;
    @Autowired
    private PlanService plans;

    private UUID begin(String name, boolean support) {
        UUID childId = child(name).childId();
        plans.start(childId, support, new PlanTerms(today, "T05", 2, 4, 80, today.plusWeeks(8), "Ms. Okoro", 4, 20,
                today.plusWeeks(4), ""));
        return childId;
    }

    @Test
    void familiesOfRunningHelpWithoutAnApprovedLetterAreNamedUntilOneIs() throws IOException {
        UUID amadou = begin("Amadou", true);
        UUID devika = begin("Devika", false);
        UUID freya = child("Freya").childId();
        assertThat(letters.withoutWord(Set.of(amadou, devika, freya))).containsExactly(amadou);
        HelpLetter draft = letters.draft(amadou, Language.ENGLISH);
        assertThat(draft.lines().getFirst()).contains("Amadou", "Ms. Okoro");
        assertThat(letters.keep(amadou, draft, 0, false, List.of())).isEmpty();
        assertThat(letters.withoutWord(Set.of(amadou))).as("a draft tells nobody").containsExactly(amadou);
        HelpLetter own = new HelpLetter(Language.ENGLISH, draft.lines(), "Our district follows its own law. Call the office.");
        assertThat(letters.keep(amadou, own, 1, true, List.of())).isEmpty();
        assertThat(letters.withoutWord(Set.of(amadou))).isEmpty();
        try (PDDocument pdf = Loader.loadPDF(letters.page(amadou, Language.ENGLISH).pdf(Paper.A4, false))) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            assertThat(new PDFTextStripper().getText(pdf)).contains("Extra help with numbers", "Amadou",
                    "You may ask the school for an evaluation at any time.", "Call the office.").doesNotContain("Draft");
            assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(pdf.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
        }
        UUID tane = begin("Tane", true);
        assertThat(letters.draft(tane, Language.ENGLISH).school()).as("offered again").isEqualTo(own.school());
        assertThat(letters.draft(tane, Language.SPANISH).school()).as("not in the other language").isEmpty();
    }

    @Test
    void wordsAndNamesThatStayAtSchoolKeepItFromBeingApproved() {
        UUID linh = begin("Linh", true);
        HelpLetter bad = new HelpLetter(Language.ENGLISH, List.of("Linh is behind, like Oleksandr."), "");
        assertThat(letters.keep(linh, bad, 0, true, List.of())).extracting(f -> f.text()).contains("behind", "Oleksandr");
        assertThat(letters.versions(linh, Language.ENGLISH)).isEmpty();
        assertThat(letters.keep(linh, bad, 0, true, List.of("behind", "Oleksandr"))).isEmpty();
        assertThat(letters.versions(linh, Language.ENGLISH)).singleElement()
                .extracting(KeptLetter::confirmed).isEqualTo(List.of("behind", "Oleksandr"));
        assertThatThrownBy(() -> letters.keep(linh, bad, 0, false, List.of())).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> letters.keep(linh, new HelpLetter(Language.ENGLISH, List.of(), "x"), 1, false, List.of()))
                .isInstanceOf(Refused.class);
    }

    @Test
    void withoutAPlanThereIsNoLetterAndASpecialistReadsButDoesNotKeep() {
        UUID mei = child("Mei").childId();
        assertThat(letters.planOf(mei)).isEmpty();
        assertThatThrownBy(() -> letters.draft(mei, Language.ENGLISH)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> letters.page(mei, Language.ENGLISH)).isInstanceOf(NotVisible.class);
        UUID oleksandr = begin("Oleksandr", true);
        HelpLetter letter = letters.draft(oleksandr, Language.SPANISH);
        as("specialist@sample");
        assertThat(letters.draft(oleksandr, Language.SPANISH).lines()).isEqualTo(letter.lines());
        assertThat(letters.mayKeep(oleksandr)).isFalse();
        assertThatThrownBy(() -> letters.keep(oleksandr, letter, 0, true, List.of())).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> letters.check(mei, letter)).isInstanceOf(NotVisible.class);
    }
}
