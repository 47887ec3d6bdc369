package org.stepwell.conference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.core.problem.Refused;
import org.stepwell.privacy.NotVisible;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=talks"})
class FamilyTalkServiceTest extends OnTheSample {
    @Autowired
    private FamilyTalkService talks;

    @Test
    void whatWasAgreedComesUpOnItsDayUntilItIsMovedOrDone() {
        UUID linh = child("Linh").childId();
        UUID first = UUID.randomUUID();
        talks.add(linh, first, today.minusDays(8), "Counts buttons with her brother.", "Send home ten beans.",
                today.minusDays(1));
        talks.add(linh, first, today.minusDays(8), "again", "again", null);
        talks.add(linh, UUID.randomUUID(), today, "", "Nothing is due here.", today.plusDays(1));
        assertThat(talks.talks(linh)).hasSize(2);
        FamilyTalk due = talks.due(Set.of(linh)).getFirst();
        assertThat(talks.due(Set.of(linh))).containsExactly(due);
        assertThat(due.said()).isEqualTo("Counts buttons with her brother.");
        talks.settle(linh, due.talkId(), due.steps(), today.plusWeeks(1));
        talks.settle(linh, due.talkId(), due.steps(), null);
        assertThat(talks.due(Set.of(linh))).isEmpty();
        FamilyTalk moved = talks.talks(linh).stream().filter(t -> t.talkId().equals(first)).findFirst().orElseThrow();
        assertThat(moved.againOn()).as("who saw it before it was moved changes nothing").isEqualTo(today.plusWeeks(1));
        talks.settle(linh, moved.talkId(), moved.steps(), null);
        assertThat(talks.talks(linh).getLast().againOn()).isNull();
    }

    @Test
    void whatMakesNoSenseIsRefusedAndNothingIsStored() {
        UUID mei = child("Mei").childId();
        for (Runnable wrong : List.<Runnable>of(
                () -> talks.add(mei, UUID.randomUUID(), today, " ", "", null),
                () -> talks.add(mei, UUID.randomUUID(), today.plusDays(1), "x", "", null),
                () -> talks.add(mei, UUID.randomUUID(), today, "x", "", today),
                () -> talks.add(mei, UUID.randomUUID(), today, "x".repeat(4001), "", null))) {
            assertThatThrownBy(wrong::run).isInstanceOf(Refused.class);
        }
        assertThat(talks.talks(mei)).isEmpty();
    }

    @Test
    void aSpecialistReadsWhatIsSharedAndWritesNothing() {
        UUID amadou = child("Amadou").childId();
        UUID devika = child("Devika").childId();
        talks.add(amadou, UUID.randomUUID(), today.minusDays(3), "Likes dominoes.", "", today.minusDays(1));
        talks.add(devika, UUID.randomUUID(), today.minusDays(3), "Reads clocks.", "", today.minusDays(1));
        as("specialist@sample");
        assertThat(talks.talks(amadou)).hasSize(1);
        assertThat(talks.due(Set.of(amadou, devika))).extracting(FamilyTalk::childId).containsExactly(amadou);
        assertThatThrownBy(() -> talks.talks(devika)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> talks.add(amadou, UUID.randomUUID(), today, "x", "", null)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> talks.settle(amadou, talks.talks(amadou).getFirst().talkId(), 0, null)).isInstanceOf(NotVisible.class);
    }
}
