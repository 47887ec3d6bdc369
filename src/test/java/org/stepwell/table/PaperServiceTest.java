package org.stepwell.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.PaperMarks;
import org.stepwell.observation.ApiClient;
import org.stepwell.observation.ObservationLine;
import org.stepwell.observation.ObservationService;
import org.stepwell.progression.ProgressionService;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=paper"})
class PaperServiceTest extends OnTheSample {
    @Autowired
    private PaperService papers;
    @Autowired
    private ObservationService observations;
    @Autowired
    private ProgressionService progressions;
    @LocalServerPort
    private int port;

    private List<Look> from(String name) {
        return observations.looks(child(name).childId()).stream().map(ObservationLine::look)
                .filter(look -> look.tags().contains("written_later")).toList();
    }

    private Map<UUID, String> typed(String... namesAndMarks) {
        Map<UUID, String> typed = new HashMap<>();
        for (int i = 0; i < namesAndMarks.length; i += 2) {
            typed.put(child(namesAndMarks[i]).childId(), namesAndMarks[i + 1]);
        }
        return typed;
    }

    @Test
    void aPageBecomesLooksOfThatDayMarkedAsPaperAndTheSamePageAgainDoesNothing() {
        UUID page = UUID.randomUUID();
        LocalDate day = today.minusDays(3);
        Map<UUID, String> typed = typed("Mei", "A, 47cp  52Dm", "Noor", "g");
        assertThat(papers.store(room, page, day, "T08", "34", true, typed)).isEqualTo(4);
        papers.store(room, page, day, "T08", "34", true, typed);
        assertThat(from("Mei")).hasSize(3).allSatisfy(look -> {
            assertThat(look.day()).isEqualTo(day);
            assertThat(look.skill()).isEqualTo("T08");
            assertThat(look.observer()).isEqualTo("teacher@sample");
            assertThat(look.tags()).contains("from_paper");
        });
        assertThat(from("Mei")).extracting(Look::task).containsExactly("34", "47", "52");
        assertThat(from("Mei")).extracting(Look::step).containsExactly(1, 3, 4);
        assertThat(from("Mei")).extracting(Look::help).containsExactly(Help.CUBES, Help.PROMPT, Help.MODELLED);
        assertThat(from("Noor")).singleElement().satisfies(look -> {
            assertThat(look.step()).isEqualTo(1);
            assertThat(look.tags()).contains(PaperMarks.NOT_YET);
        });
    }

    @Test
    void oneRowThatCannotBeReadIsNamedAndNothingOfThePageIsStored() {
        assertThatThrownBy(() -> papers.store(room, UUID.randomUUID(), today, "T08", "", false,
                typed("Freya", "A", "Ruby", "A Z"))).isInstanceOf(Refused.class)
                .hasMessageContaining("Ruby").hasMessageContaining("\"Z\" is no mark").hasMessageContaining("from A to G");
        assertThat(from("Freya")).isEmpty();
        assertThatThrownBy(() -> papers.store(room, UUID.randomUUID(), today, "T08", "", false, Map.of()))
                .isInstanceOf(Refused.class).hasMessageContaining("Nothing is typed");
        for (LocalDate wrong : List.of(today.plusDays(1), today.minusWeeks(9))) {
            assertThatThrownBy(() -> papers.store(room, UUID.randomUUID(), wrong, "T08", "", false,
                    typed("Freya", "A"))).isInstanceOf(Refused.class);
        }
        assertThatThrownBy(() -> papers.store(room, UUID.randomUUID(), today, "T99", "", false, typed("Freya", "A")))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> papers.store(room, UUID.randomUUID(), today, "T08", "", false,
                typed("Freya", "47"))).isInstanceOf(Refused.class);
    }

    /** A child that the adult does not see is no row of the page, whatever is sent for it. */
    @Test
    void aSpecialistTypesInTheSharedChildrenOnly() {
        Map<UUID, String> typed = typed("Amadou", "B", "Devika", "B");
        as("specialist@sample");
        assertThat(papers.store(room, UUID.randomUUID(), today, "T05", "", false, typed)).isEqualTo(1);
        as("teacher@sample");
        assertThat(from("Devika")).isEmpty();
        assertThat(from("Amadou")).hasSize(1);
    }

    /** Letters stand for the same phrases as on the Table, whatever the language. */
    @Test
    void lettersAreTheSameInBothLanguages() {
        var progression = progressions.ofClass(room);
        progression.skills().forEach(skill -> assertThat(PaperMarks.letters(progression, skill.code(), "es"))
                .extracting(PaperMarks.Lettered::code).isEqualTo(PaperMarks.letters(progression, skill.code(), "en").stream()
                        .map(PaperMarks.Lettered::code).toList()));
    }

    @Test
    void thePageIsAPdfForWhoeverSeesTheClass() {
        ApiClient teacher = new ApiClient(port);
        teacher.signIn("teacher@sample", PASSWORD);
        HttpResponse<String> page = teacher.get("/api/table/" + room + "/clipboard.pdf?skill=T08");
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body()).startsWith("%PDF");
        assertThat(teacher.get("/api/table/" + room + "/clipboard.pdf?skill=T99").statusCode()).isEqualTo(404);
    }
}
