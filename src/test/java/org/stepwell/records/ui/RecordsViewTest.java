package org.stepwell.records.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.vaadin.flow.component.ClickEvent;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.NativeButton;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.test.annotation.DirtiesContext;
import org.stepwell.Application;
import org.stepwell.Screens;
import org.stepwell.core.wording.Language;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.FamilyRequest;
import org.stepwell.privacy.FamilyRequestService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.records.RecordsService;
import org.stepwell.records.RetentionDue;
import org.stepwell.records.RetentionKind;
import org.stepwell.records.RetentionService;
import org.stepwell.roster.EnrolmentService;
import org.stepwell.roster.RosterService;

/** Requests, children who left and erasure on one screen. Erases children, so it has an application of its own. */
@SpringBootTest(classes = Application.class,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=records-view"})
@DirtiesContext
class RecordsViewTest extends Screens {
    @Autowired
    private RosterService roster;
    @Autowired
    private EnrolmentService enrolments;
    @Autowired
    private RecordsService records;
    @Autowired
    private AccessRecordService record;
    @Autowired
    private RetentionService retention;
    @Autowired
    private FamilyRequestService requests;

    private void opens(Component view, String name) {
        below(view).filter(NativeButton.class::isInstance).map(NativeButton.class::cast)
                .filter(b -> ("Open: " + name).equals(b.getElement().getAttribute("aria-label"))).findFirst()
                .ifPresentOrElse(b -> ComponentUtil.fireEvent(b, new ClickEvent<>(b)), () -> {
                    throw new AssertionError("nothing to open for " + name + " in " + text(view));
                });
    }

    private String name(UUID child) {
        return records.kept().stream().filter(c -> c.childId().equals(child)).findFirst().orElseThrow().name();
    }

    @Test
    void aTeacherWritesARequestDownAndALeadAnswersIt() {
        signIn("teacher@sample");
        UUID child = roster.byKey("q0602").orElseThrow().childId();
        String name = name(child);
        RecordsView view = fresh(RecordsView.class);
        assertThat(text(view)).contains("No request waits.").doesNotContain("Children who left");
        opens(view, name);
        assertThat(text(view)).contains("Nothing was asked.").doesNotContain("Erase all records");
        press(view, "Write the request down");
        assertThat(text(view)).contains("The request is written down.", "to be shown within 45 days",
                "A lead of the school writes down what became of it.", name + ", Room 6: asked on")
                .doesNotContain("No request waits.");
        signIn("lead@sample");
        view = fresh(RecordsView.class);
        assertThat(text(view)).contains("Requests that wait for an answer", name + ", Room 6: asked on");
        opens(view, name);
        fill(view, "To erase, type the school's id of the child: q0602", "q0602");
        press(view, "Erase for good");
        assertThat(text(view)).contains("nothing may be erased until it is answered");
        press(view, "Write it down");
        assertThat(text(view)).contains("The family saw the records on");
        assertThat(text(fresh(RecordsView.class))).contains("No request waits.");
    }

    @Test
    void whoLeftStaysInReachOfTheLeadToSendAlongAndToErase() {
        signIn("teacher@sample");
        UUID room = roster.classes().getFirst().classId();
        UUID child = roster.byKey("q0607").orElseThrow().childId();
        String name = name(child);
        enrolments.end(room, child, today().minusDays(1));
        assertThat(records.kept()).noneMatch(c -> c.childId().equals(child));
        signIn("lead@sample");
        RecordsView view = fresh(RecordsView.class);
        assertThat(text(view)).contains("Children who left", name + ", Room 6: until");
        opens(view, name);
        assertThat(below(view).filter(Anchor.class::isInstance).map(a -> ((Anchor) a).getHref()))
                .anyMatch(href -> href.startsWith("/api/children/q0607/records.zip?for=TRANSFER"))
                .noneMatch(href -> href.startsWith("child/"));
        assertThat(records.bundle("q0607", RecordsService.Purpose.TRANSFER, Language.SPANISH)).isNotEmpty();
        assertThat(record.lines(child, 1).getFirst()).satisfies(line -> {
            assertThat(line.what()).isEqualTo("transfer");
            assertThat(line.party()).isEqualTo("school");
            assertThat(line.interest()).isEqualTo("lead");
        });
        fill(view, "To erase, type the school's id of the child: q0607", "q0608");
        press(view, "Erase for good");
        assertThat(text(view)).contains("This is not the school's id of the child.");
        fill(view, "To erase, type the school's id of the child: q0607", "q0607");
        press(view, "Erase for good");
        assertThat(text(view)).contains("All records on the child are erased").doesNotContain(name);
        signIn("teacher@sample");
        assertThat(records.kept()).noneMatch(c -> c.childId().equals(child));
    }

    @Test
    void aLeadSetsPeriodsReadsTheDryRunAndSaysWhatGoes() {
        signIn("teacher@sample");
        UUID child = roster.byKey("q0609").orElseThrow().childId();
        UUID held = roster.byKey("q0610").orElseThrow().childId();
        UUID room = roster.classes().getFirst().classId();
        String name = name(child);
        assertThat(text(fresh(RetentionView.class))).contains("set by a lead").doesNotContain("Periods");
        assertThatThrownBy(retention::dryRun).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> retention.erase(RetentionKind.LOOKS, 1)).isInstanceOf(NotVisible.class);
        UUID request = requests.ask(held, FamilyRequest.Kind.INSPECT, today(), "");
        enrolments.end(room, child, today().minusMonths(1));
        enrolments.end(room, held, today().minusMonths(1));
        signIn("lead@sample");
        RetentionView view = fresh(RetentionView.class);
        assertThat(text(view)).contains("Nothing is over.", "Nothing went for its time yet.");
        fill(view, "Months: The child itself", "2");
        press(view, "Keep so: The child itself");
        fill(view, "Months: Looks and checks", "3");
        press(view, "Keep so: Looks and checks");
        assertThat(text(view)).contains("The child itself cannot go before another kind of record");
        fill(view, "Months: Looks and checks", "0");
        press(view, "Keep so: Looks and checks");
        assertThat(text(view)).contains("A period is 1 to 1200 months.", "Nothing is over.");
        fill(view, "Months: Looks and checks", "1");
        press(view, "Keep so: Looks and checks");
        assertThat(text(view)).contains("Kept for 1 months after the last day: Looks and checks.",
                name + " (q0609), last day", "held, since a request of the family is open", "of 1 child ");
        int rows = retention.dryRun().stream().filter(due -> due.childId().equals(child)).findFirst().orElseThrow().rows();
        assertThat(rows).isGreaterThan(5);
        fill(view, "To erase, type the number of records: " + rows, "" + (rows + 1));
        press(view, "Erase for good: Looks and checks");
        assertThat(text(view)).contains("By now it is " + rows + " records.", name);
        fill(view, "To erase, type the number of records: " + rows, "" + rows);
        press(view, "Erase for good: Looks and checks");
        assertThat(text(view)).contains("Erased: Looks and checks, " + rows + " rows.",
                "Looks and checks, " + rows + " rows of 1 child, on the word of").doesNotContain(name);
        assertThat(retention.dryRun()).allMatch(due -> due.held() && due.childId().equals(held)).isNotEmpty();
        assertThat(records.kept()).as("the child itself stays").anyMatch(c -> c.childId().equals(child));
        press(view, "Keep so: The child itself");
        retention.set(RetentionKind.CHILD, 1);
        requests.happened(held, request, 0, FamilyRequest.Happened.WITHDRAWN, today(), "");
        int all = retention.dryRun().stream().filter(due -> due.kind() == RetentionKind.CHILD)
                .mapToInt(RetentionDue::rows).sum();
        assertThat(retention.erase(RetentionKind.CHILD, all)).isGreaterThanOrEqualTo(all);
        assertThat(records.kept()).noneMatch(c -> c.childId().equals(child) || c.childId().equals(held));
        assertThat(retention.dryRun()).isEmpty();
        retention.set(RetentionKind.CHILD, null);
        assertThat(retention.periods()).containsOnlyKeys(RetentionKind.LOOKS);
    }
}
