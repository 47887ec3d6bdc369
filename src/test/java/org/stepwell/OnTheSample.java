package org.stepwell;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Services over a real store with the sample class, which such a test changes: each has an application of its own. */
@Import(TestDatabase.InSpring.class)
@DirtiesContext
public abstract class OnTheSample {
    /** Password of every sample adult. */
    protected static final String PASSWORD = "a-password-of-the-tests";
    /** The sample's school. */
    protected static final ZoneId ZONE = ZoneId.of("America/Chicago");

    @Autowired
    protected RosterService roster;
    @Autowired
    protected JdbcClient jdbc;
    @Autowired
    protected TransactionTemplate transaction;
    @Autowired
    private Clock clock;
    /** The sample class. */
    protected UUID room;
    /** Today at the school. */
    protected LocalDate today;

    @BeforeEach
    final void theTeacherSignsIn() {
        as("teacher@sample");
        room = roster.classes().getFirst().classId();
        today = LocalDate.now(clock.withZone(ZONE));
    }

    @AfterEach
    final void signsOut() {
        TestAdult.signOut();
    }

    /** Signs an adult in on this thread. */
    protected final SignedIn as(String name) {
        return TestAdult.signIn(jdbc, transaction, name);
    }

    /** A child of the class by the name the class uses. */
    protected final ChildRow child(String name) {
        return roster.children(room).stream().filter(c -> c.label().equals(name)).findFirst().orElseThrow();
    }
}
