package org.stepwell.review.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.UI;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;
import org.stepwell.pacing.PacingService;
import org.stepwell.platform.csv.CsvProblem;
import org.stepwell.platform.ui.Words;
import org.stepwell.review.ui.FileIntake.DryRun;
import org.stepwell.review.ui.FileIntake.Kind;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;

class FileIntakeTest extends Screens {
    private static final String HEADER = "id,observed_at,child,skill,task,step,help,kind,observer,tags,note\n";

    @Autowired
    private FileIntake intake;
    @Autowired
    private RosterService roster;
    @Autowired
    private PacingService pacing;

    private Classroom room() {
        return roster.classes().getFirst();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private Map<String, String> everything() {
        Map<String, String> files = new LinkedHashMap<>();
        intake.exports(room()).forEach((name, text) -> files.put(name, text.get()));
        return files;
    }

    private static String look(UUID id, String child, String step) {
        return id + ",2026-03-09T09:42:37-05:00," + child + ",T05,17," + step + ",none,table,teacher@sample,said,\n";
    }

    private List<String> taken(DryRun run) {
        assertThat(run.problems()).isEmpty();
        return run.take().get();
    }

    @Test
    void everyFormatComesBackToAnEqualStateInAnotherSchool() {
        signIn("teacher@sample");
        Map<String, String> out = everything();
        assertThat(out.keySet()).containsExactly("roster.csv", "skills.csv", "phrases.csv", "pacing.csv",
                "calendar.csv", "observations.csv");
        String name = room().name();
        signInToAnEmptyClass(name);
        taken(intake.read(Kind.ROSTER, room(), bytes(out.get("roster.csv"))));
        taken(intake.readProgression(bytes(out.get("skills.csv")), bytes(out.get("phrases.csv"))));
        pacing.startUnit(room().classId(), "tens-and-ones", "Teens", LocalDate.of(2026, 1, 5));
        taken(intake.read(Kind.PACING, room(), bytes(out.get("pacing.csv"))));
        taken(intake.read(Kind.CALENDAR, room(), bytes(out.get("calendar.csv"))));
        taken(intake.read(Kind.OBSERVATIONS, room(), bytes(out.get("observations.csv"))));
        assertThat(everything()).isEqualTo(out);
    }

    @Test
    void takingAFileInTwiceChangesNothing() {
        signIn("coteacher@sample");
        Map<String, String> out = everything();
        taken(intake.read(Kind.ROSTER, room(), bytes(out.get("roster.csv"))));
        taken(intake.readProgression(bytes(out.get("skills.csv")), bytes(out.get("phrases.csv"))));
        taken(intake.read(Kind.PACING, room(), bytes(out.get("pacing.csv"))));
        taken(intake.read(Kind.CALENDAR, room(), bytes(out.get("calendar.csv"))));
        DryRun again = intake.read(Kind.OBSERVATIONS, room(), bytes(out.get("observations.csv")));
        assertThat(again.remarks()).singleElement().asString().contains("are there already and stay as they are");
        assertThat(taken(again).getFirst()).startsWith("0 looks stored");
        assertThat(everything()).isEqualTo(out);
    }

    @Test
    void aDryRunOfLooksNamesByLineWhatTheStoreWouldRefuse() {
        signIn("teacher@sample");
        UUID there = UUID.randomUUID();
        taken(intake.read(Kind.OBSERVATIONS, room(), bytes(HEADER + look(there, "q0605", "3"))));
        UUID fresh = UUID.randomUUID();
        String before = everything().get("observations.csv");
        DryRun run = intake.read(Kind.OBSERVATIONS, room(), bytes(HEADER + look(there, "q0605", "4")
                + look(UUID.randomUUID(), "nobody", "3") + look(fresh, "q0606", "2") + look(UUID.randomUUID(), "q0606", "9")
                + look(there, "q0605", "3").replace(",17,", ",17 ,")));
        assertThat(run.problems()).extracting(CsvProblem::line, CsvProblem::column).containsExactly(
                org.assertj.core.groups.Tuple.tuple(2L, "id"), org.assertj.core.groups.Tuple.tuple(3L, "child"),
                org.assertj.core.groups.Tuple.tuple(5L, "step"), org.assertj.core.groups.Tuple.tuple(6L, ""));
        assertThat(run.problems().get(0).reason().toString()).contains(there.toString(), "other content");
        assertThat(run.problems().get(1).reason().toString()).contains("\"nobody\"", "roster");
        assertThat(run.good()).isEqualTo(1);
        assertThat(everything().get("observations.csv")).isEqualTo(before);
        assertThat(run.take().get().getFirst()).isEqualTo("1 look stored, 0 there already, 0 refused.");
        assertThat(everything().get("observations.csv")).contains(fresh.toString()).doesNotContain("nobody");
    }

    @Test
    void whoReadsSpanishReadsInSpanishWhatIsWrong() {
        signIn("teacher@sample");
        DryRun run = intake.read(Kind.OBSERVATIONS, room(), bytes(HEADER + look(UUID.randomUUID(), "q0605", "9")));
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        assertThat(run.problems()).singleElement().extracting(p -> Words.told(p.reason())).asString()
                .contains("\"9\"", "no es un paso");
    }

    @Test
    void aRowTooLongForTheStoreIsReportedNotThrown() {
        signIn("teacher@sample");
        DryRun looks = intake.read(Kind.OBSERVATIONS, room(), bytes(HEADER
                + look(UUID.randomUUID(), "q0605", "3").replace(",17,", "," + "7".repeat(101) + ",")
                + look(UUID.randomUUID(), "q0605", "3").replace("teacher@sample", "t".repeat(201))));
        assertThat(looks.good()).isZero();
        assertThat(looks.problems()).extracting(CsvProblem::column).containsExactly("task", "observer");
        DryRun names = intake.read(Kind.ROSTER, room(), bytes("child,given_name,family_name,grade,class,start,end\n"
                + "n1," + "a".repeat(101) + ",B,1,,,\nn2,Ada," + "b".repeat(101) + ",1,,,\n"));
        assertThat(names.good()).isZero();
        assertThat(names.problems()).extracting(CsvProblem::line).containsExactly(2L, 3L);
    }

    @Test
    void aRosterMayNotReachForAChildOfAnotherClass() {
        signIn("teacher@sample");
        UUID taken = roster.children().getFirst().childId();
        String key = roster.child(taken).schoolKey();
        signIn("specialist@sample");
        DryRun run = intake.read(Kind.ROSTER, room(), bytes("child,given_name,family_name,grade,class,start,end\n"
                + "mine,Ilse,,1,,,\n" + key + ",Other,,1,,,\n"));
        assertThat(run.problems()).singleElement().satisfies(p -> {
            assertThat(p.line()).isEqualTo(3);
            assertThat(p.column()).isEqualTo("child");
            assertThat(p.reason().toString()).contains(key, "another class");
        });
    }

    @Test
    void pacingNeedsAUnitAndSaysWhichSkillsNobodyKnows() {
        signInToAnEmptyClass();
        byte[] file = bytes("skill,taught_from,due,expected_step\nT05,,2026-03-09,3\nX99,,2026-03-09,3\n");
        DryRun early = intake.read(Kind.PACING, room(), file);
        assertThat(early.good()).isZero();
        assertThat(early.problems()).singleElement().asString().contains("no unit yet");
        pacing.startUnit(room().classId(), "tens-and-ones", "Teens", LocalDate.of(2026, 1, 5));
        DryRun run = intake.read(Kind.PACING, room(), file);
        assertThat(run.remarks()).singleElement().asString().contains("T05, X99");
        assertThat(run.take().get()).containsExactly("2 rows stand in for the pacing before.");
    }
}
