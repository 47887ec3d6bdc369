package org.stepwell.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.progression.Progression;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.PacingService;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.EnrolmentService;
import org.stepwell.roster.RosterService;

/** Four tasks with each child before any unit is in hand; that it is four, and three minutes: common practice, no source. */
class ShortStartsTest extends Screens {
    @Autowired
    private ShortStarts starts;
    @Autowired
    private ProgressionService progressions;
    @Autowired
    private RosterService roster;
    @Autowired
    private EnrolmentService enrolments;
    @Autowired
    private ObservationService observations;
    @Autowired
    private PacingService pacing;

    private UUID room() {
        return roster.classes().getFirst().classId();
    }

    private Map<String, List<String>> now() {
        return starts.of(room(), progressions.toBegin(room()));
    }

    private void look(String child, String skill, int daysAgo) {
        assertThat(observations.record(List.of(new Look(UUID.randomUUID(), OffsetDateTime.now(observations.clock()).minusDays(daysAgo),
                child, skill, null, 2, Help.NONE, Kind.TABLE, "", Set.of(), null, null, false, null)), true))
                .allSatisfy(told -> assertThat(told.reason()).isNull());
    }

    @Test
    void beforeAUnitTheFirstSkillsAreTriedWithEachChildAndWhatWasSeenEarlierElsewhereDoesNotCount() {
        signInToAnEmptyClass();
        enrolments.add(room(), new EnrolmentService.Entry("new-1", "Amaru", "", "1"), today().minusDays(5));
        enrolments.add(room(), new EnrolmentService.Entry("new-2", "Ines", "", "1"), today().minusDays(5));
        List<String> skills = now().get("skills");
        assertThat(skills).hasSize(4).isEqualTo(progressions.toBegin(room()).first(4).stream()
                .map(Progression.Skill::code).toList());
        skills.subList(0, 3).forEach(skill -> look("new-1", skill, 1));
        look("new-1", skills.getLast(), 30);
        assertThat(now().get("met")).as("the last one was before this class").isEmpty();
        look("new-1", skills.getLast(), 0);
        assertThat(now().get("met")).containsExactly("new-1");
        progressions.provide("tens-and-ones");
        pacing.startUnit(room(), "tens-and-ones", "Teens", today());
        assertThat(now()).isEqualTo(Map.of("skills", List.of(), "met", List.of()));
    }

    @Test
    void eachSkillComesAfterThoseItNeeds() {
        signIn("teacher@sample");
        Progression progression = progressions.ofClass(room());
        List<Progression.Skill> all = progression.first(1000);
        assertThat(all).containsExactlyInAnyOrderElementsOf(progression.skills());
        for (Progression.Skill skill : all) {
            List<String> before = all.subList(0, all.indexOf(skill)).stream().map(Progression.Skill::code).toList();
            assertThat(skill.needs()).allSatisfy(need -> assertThat(before).contains(need.skill()));
        }
        assertThat(starts.of(room(), progression).get("skills")).as("a unit is in hand").isEmpty();
    }
}
