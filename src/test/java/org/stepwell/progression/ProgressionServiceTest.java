package org.stepwell.progression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestAdult;
import org.stepwell.TestDatabase;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Skill;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.Grown;
import org.stepwell.roster.RosterService;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class ProgressionServiceTest {
    @Autowired
    private ProgressionService progressions;
    @Autowired
    private RosterService roster;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    @Autowired
    private javax.sql.DataSource dataSource;

    private void as(String signIn) {
        TestAdult.signIn(jdbc, transaction, signIn);
    }

    @AfterEach
    void signsOut() {
        TestAdult.signOut();
    }

    private static Progression own(String title) {
        return new Progression("own", List.of(new Skill("X1", title, List.of(), List.of())), List.of());
    }

    @Test
    void theSameContentIsNoNewVersion() {
        as("teacher@sample");
        int first = progressions.importProgression(own("More and less"));
        assertThat(progressions.importProgression(own("More and less"))).isEqualTo(first);
        assertThat(progressions.importProgression(own("More, less, same"))).isEqualTo(first + 1);
    }

    @Test
    void theOneThatComesWithTheProgramIsTakenInAtItsFirstUseAndOnlyThen() {
        as("teacher@sample");
        assertThat(progressions.choices()).contains("tens-and-ones");
        assertThat(progressions.provide("no-such")).isFalse();
        assertThat(progressions.known("no-such")).isFalse();
        Grown grown = new Grown(dataSource, java.time.Clock.systemUTC()).terminal("t",
                org.stepwell.roster.Invitations.Role.TEACHER, "Room 1");
        grown.as("t");
        assertThat(progressions.known("tens-and-ones")).isFalse();
        assertThat(progressions.provide("tens-and-ones")).isTrue();
        assertThat(progressions.known("tens-and-ones")).isTrue();
        assertThat(progressions.provide("tens-and-ones")).isTrue();
        assertThat(progressions.choices()).containsExactly("tens-and-ones");
    }

    @Test
    void anAdultWithoutAClassChangesNoProgression() {
        as("specialist@sample");
        assertThatThrownBy(() -> progressions.importProgression(own("Mine"))).isInstanceOf(NotVisible.class);
        UUID room = roster.classes().getFirst().classId();
        assertThat(progressions.ofClass(room).code()).isEqualTo("tens-and-ones");
    }
}
