package org.stepwell;

import jakarta.servlet.ServletContext;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.ApplicationContext;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.platform.security.AccountService;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.Right.Reach;
import org.stepwell.privacy.Right.Who;
import org.stepwell.roster.Grown;
import org.stepwell.roster.Invitations.Role;
import org.stepwell.roster.RosterService;

/**
 * Two districts with a class or two, each with one of each thing that has an id, and adults of every part: for the tests
 * that walk the table of rights.
 */
@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE=off", "STEPWELL_PROXY=127.0.0.1", "stepwell.test=rights"})
@Import(TestDatabase.InSpring.class)
@DirtiesContext
abstract class InTwoDistricts {
    static final Map<Who, String> NAMES = Map.of(Who.TEACHER, "t", Who.CO_TEACHER, "c", Who.AIDE, "a",
            Who.SPECIALIST, "s", Who.LEAD, "l", Who.ADMINISTRATOR, "admin");

    @LocalServerPort
    int port;
    @Autowired
    ApplicationContext context;
    @Autowired
    ServletContext servlets;
    @Autowired
    DataSource dataSource;
    @Autowired
    JdbcClient jdbc;
    @Autowired
    TransactionTemplate transaction;
    @Autowired
    Access access;
    @Autowired
    RosterService roster;
    @Autowired
    AccountService accounts;
    @Autowired
    Clock clock;
    LocalDate today;
    Arguments arguments;
    Grown grown;
    /** Room 1 with a child that is shared, Room 1 with one that is not, Room 2, and a class of another district. */
    World shared;
    World unshared;
    World otherRoom;
    World otherDistrict;

    @BeforeEach
    void foundsTwoDistricts() {
        today = LocalDate.now(clock.withZone(ZoneId.of("America/Chicago")));
        arguments = new Arguments(today);
        grown = new Grown(dataSource, clock).terminal("t", Role.TEACHER, "Room 1").terminal("u", Role.TEACHER, "Room 2")
                .terminal("c", Role.CO_TEACHER, "Room 1").terminal("a", Role.AIDE, "Room 1")
                .terminal("s", Role.SPECIALIST, "Room 1").terminal("l", Role.LEAD, null);
        SignedIn teacher = grown.as("t");
        administrator(teacher);
        UUID room = roster.classes().getFirst().classId();
        UUID child = World.child(context, room, "Ilse");
        UUID second = World.child(context, room, "Tane");
        shared = World.make(context, room, child, today);
        Map<String, UUID> ids = new HashMap<>(shared.ids());
        ids.put("childId", second);
        ids.keySet().removeAll(Set.of("observationId", "planId", "requestId")); // those are of the child who is shared
        unshared = new World(ids, roster.child(second).schoolKey());
        UUID specialist = grown.as("s").adultId();
        grown.as("t");
        access.grant(teacher.districtId(), specialist, child, "small group", today, today.plusDays(30));
        grown.as("u");
        otherRoom = ownWorld("Nils");
        new Grown(dataSource, clock).terminal("x", Role.TEACHER, "Room 1").as("x");
        otherDistrict = ownWorld("Mira");
    }

    private World ownWorld(String childName) {
        UUID room = roster.classes().getFirst().classId();
        return World.make(context, room, World.child(context, room, childName), today);
    }

    /** An adult of the school with no class and no child. */
    private void administrator(SignedIn teacher) {
        UUID id = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("insert into adult (district_id, adult_id, school_id, sign_in, name) values (:d, :id, :s, :n, 'A')")
                    .param("d", teacher.districtId()).param("id", id).param("s", teacher.schoolId())
                    .param("n", grown.in("admin")).update();
            jdbc.sql("insert into sign_in (name, district_id, adult_id) values (:n, :d, :id)")
                    .param("n", grown.in("admin")).param("d", teacher.districtId()).param("id", id).update();
        });
    }

    @AfterEach
    void signsOut() {
        TestAdult.signOut();
    }

    final void as(Who who) {
        TestAdult.signOut();
        if (who != Who.STRANGER) {
            grown.as(NAMES.get(who));
        }
    }

    /** What an adult of this part may not see, of the reach. */
    final List<World> hidden(Who who, Reach reach) {
        return switch (who) {
            case LEAD -> List.of(otherDistrict);
            case SPECIALIST -> reach == Reach.CLASS ? List.of(shared, unshared, otherRoom, otherDistrict)
                    : reach == Reach.CHILD ? List.of(unshared, otherRoom, otherDistrict)
                            : List.of(otherRoom, otherDistrict);
            case ADMINISTRATOR, STRANGER -> List.of(shared, unshared, otherRoom, otherDistrict);
            default -> List.of(otherRoom, otherDistrict);
        };
    }
}
