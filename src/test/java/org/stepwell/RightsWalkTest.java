package org.stepwell;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.ServletContext;
import java.lang.reflect.InvocationTargetException;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.ApplicationContext;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.RightsTest.Offered;
import org.stepwell.core.progression.Progression;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.security.AccountService;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Right;
import org.stepwell.privacy.Right.Reach;
import org.stepwell.privacy.Right.Who;
import org.stepwell.roster.Grown;
import org.stepwell.roster.Invitations.Role;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;

/**
 * Everybody calls every service method and every route there is, with the ids of what they may see, of what they may
 * not, and of nothing at all; the answers are compared with the table of rights. Each call is rolled back.
 */
@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE=off", "stepwell.test=rights"})
@Import(TestDatabase.InSpring.class)
@DirtiesContext
class RightsWalkTest {
    private static final String PASSWORD = "four plain words of ours";
    private static final List<Reach> BY_ID = List.of(Reach.CHILD, Reach.PART, Reach.CLASS);

    /** These act on what no world holds (a look that came too late, a child who has left); the tests of each show them work. */
    private static final Set<String> NOTHING_TO_ACT_ON = Set.of("ObservationService.decideWaiting", "EnrolmentService.back");

    /** A school's id of a child is taken or free in the whole district ({@link Right#ASK_KEY}), which must be said. */
    private static final Set<String> SAYS_TAKEN = Set.of("RosterService.addChild");

    private static final Map<Who, String> NAMES = Map.of(Who.TEACHER, "t", Who.CO_TEACHER, "c", Who.AIDE, "a",
            Who.SPECIALIST, "s", Who.LEAD, "l", Who.ADMINISTRATOR, "admin");

    @LocalServerPort
    private int port;
    @Autowired
    private ApplicationContext context;
    @Autowired
    private ServletContext servlets;
    @Autowired
    private DataSource dataSource;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    @Autowired
    private Access access;
    @Autowired
    private RosterService roster;
    @Autowired
    private AccountService accounts;
    @Autowired
    private Clock clock;
    private LocalDate today;
    private Arguments arguments;
    private Grown grown;
    /** Room 1 with a child that is shared, Room 1 with one that is not, Room 2, and a class of another district. */
    private World shared;
    private World unshared;
    private World otherRoom;
    private World otherDistrict;

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
        ids.keySet().removeAll(Set.of("observationId", "planId")); // those are of the child who is shared
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

    private void as(Who who) {
        TestAdult.signOut();
        if (who != Who.STRANGER) {
            grown.as(NAMES.get(who));
        }
    }

    /**
     * What a call came to.
     *
     * @param said the answer or the refusal, without ids
     * @param nothing whether it was refused or held nothing
     * @param refused whether it was refused as not visible
     * @param writes rows it wrote
     */
    private record Outcome(String said, boolean nothing, boolean refused, long writes) {}

    private Outcome call(Offered offered, World first, World rest) {
        Object[] given = arguments.of(offered.method().getParameters(), first, rest);
        return transaction.execute(status -> {
            long before = written();
            Outcome outcome;
            try {
                Object answer = offered.method().invoke(offered.bean(), given);
                outcome = new Outcome(plain(String.valueOf(answer)), empty(answer)
                        && offered.method().getReturnType() != void.class, false, 0);
            } catch (InvocationTargetException thrown) {
                Throwable why = thrown.getCause();
                outcome = new Outcome(plain(String.valueOf(why)), why instanceof NotVisible
                        || why.getClass().getName().startsWith("org.stepwell.")
                        || why instanceof IllegalArgumentException
                        || why instanceof IllegalStateException, why instanceof NotVisible, 0);
            } catch (IllegalAccessException closed) {
                throw new AssertionError(closed);
            }
            long writes = status.isRollbackOnly() ? 0 : written() - before;
            status.setRollbackOnly();
            return new Outcome(outcome.said(), outcome.nothing(), outcome.refused(), writes);
        });
    }

    private long written() {
        return jdbc.sql("select coalesce(sum(n_tup_ins + n_tup_upd + n_tup_del), 0) from pg_stat_xact_user_tables")
                .query(Long.class).single();
    }

    private static String plain(String text) {
        return text.replaceAll("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f-]{22}", "id").replaceAll("@[0-9a-f]{4,}", "")
                .replaceAll("code=[^,]*", "code");
    }

    private static boolean empty(Object answer) {
        return switch (answer) {
            case null -> true;
            case Optional<?> maybe -> maybe.isEmpty();
            case Collection<?> many -> many.isEmpty();
            case Map<?, ?> many -> many.isEmpty();
            case Boolean yes -> !yes;
            case Progression progression -> progression.skills().isEmpty();
            case ClassPicture picture -> picture.children().isEmpty() && picture.looks().isEmpty();
            default -> false;
        };
    }

    /** What an adult of this part may not see, of the reach. */
    private List<World> hidden(Who who, Reach reach) {
        return switch (who) {
            case LEAD -> List.of(otherDistrict);
            case SPECIALIST -> reach == Reach.CLASS ? List.of(shared, unshared, otherRoom, otherDistrict)
                    : reach == Reach.CHILD ? List.of(unshared, otherRoom, otherDistrict)
                            : List.of(otherRoom, otherDistrict);
            case ADMINISTRATOR, STRANGER -> List.of(shared, unshared, otherRoom, otherDistrict);
            default -> List.of(otherRoom, otherDistrict);
        };
    }

    private void compare(Who who, Right right, Offered offered, List<String> wrong) {
        String what = who + " " + offered.claim() + ": ";
        as(who);
        boolean named = Arrays.stream(offered.method().getParameters()).anyMatch(p -> p.getType() == UUID.class
                || p.getName().equals("schoolKey") || p.getName().equals("child") || p.getName().equals("children"));
        if (!named) {
            return;
        }
        Outcome absent = call(offered, World.nowhere(), World.nowhere());
        for (World world : hidden(who, right.reach())) {
            Outcome hidden = call(offered, world, world);
            if (!hidden.nothing() || hidden.writes() > 0) {
                wrong.add(what + "reaches what is hidden: " + hidden);
            } else if (!hidden.equals(absent)) {
                wrong.add(what + "hidden and absent differ: " + hidden + " / " + absent);
            }
        }
        if (!right.who().contains(who)) {
            Outcome own = call(offered, shared, shared);
            if (!own.nothing() || own.writes() > 0) {
                wrong.add(what + "is not theirs, and it is done: " + own);
            }
            return;
        }
        if (!NOTHING_TO_ACT_ON.contains(offered.claim()) && call(offered, shared, shared).refused()) {
            wrong.add(what + "is theirs, and it is refused");
        }
        if (offered.method().getParameterCount() > 1 && !SAYS_TAKEN.contains(offered.claim())) {
            Outcome mixed = call(offered, shared, World.nowhere());
            for (World world : hidden(who, Reach.PART)) {
                Outcome crossed = call(offered, shared, world);
                if (!crossed.equals(mixed)) {
                    wrong.add(what + "an own id opens the way to a hidden one: " + crossed + " / " + mixed);
                }
            }
        }
    }

    private List<String> walk(List<Offered> services) {
        List<String> wrong = new ArrayList<>();
        for (Offered offered : services) {
            Right right = Right.of(offered.claim()).orElse(Right.KEEP_CLASS);
            if (BY_ID.contains(right.reach())) {
                for (Who who : Who.values()) {
                    compare(who, right, offered, wrong);
                }
            }
        }
        return wrong;
    }

    @Test
    void everyServiceAnswersEverybodyAsTheTableSays() {
        List<Offered> services = RightsTest.services(context);
        assertThat(services.stream().filter(o -> BY_ID.contains(Right.of(o.claim()).orElseThrow().reach())).count())
                .isGreaterThan(70);
        assertThat(walk(services)).isEmpty();
    }

    /** A service whose author forgot to ask who is calling is found, for everybody it lets through. */
    @Test
    void aMissingCheckIsFound() throws NoSuchMethodException {
        Forgetful planted = new Forgetful(jdbc);
        List<String> wrong = walk(List.of(new Offered(planted, Forgetful.class.getMethod("names", UUID.class))));
        assertThat(wrong).anyMatch(w -> w.startsWith("TEACHER Forgetful.names: reaches what is hidden"))
                .anyMatch(w -> w.startsWith("SPECIALIST Forgetful.names")).anyMatch(w -> w.startsWith("ADMINISTRATOR"));
    }

    /** Planted: the district wall holds, and nothing else does. */
    public static final class Forgetful {
        private final JdbcClient jdbc;

        Forgetful(JdbcClient jdbc) {
            this.jdbc = jdbc;
        }

        /** Names of the children of whatever class. */
        public List<String> names(UUID classId) {
            return jdbc.sql("select given_name from child join enrolment using (district_id, child_id)"
                    + " where class_id = :class").param("class", classId).query(String.class).list();
        }
    }

    private ApiClient client(Who who) {
        ApiClient client = new ApiClient(port);
        if (who != Who.STRANGER) {
            SignedIn adult = grown.as(NAMES.get(who));
            accounts.setPassword(adult.districtId(), adult.adultId(), PASSWORD);
            client.signIn(grown.in(NAMES.get(who)), PASSWORD);
            TestAdult.signOut();
        }
        client.get("/login");
        return client;
    }

    private static String path(String claim, World world) {
        String path = claim.substring(claim.indexOf(' ') + 1).replace("{child}", world.schoolKey())
                .replace("{id}", world.id(claim.contains("/reviews/") ? "reviewId" : "checkId").toString())
                .replace("{pass}", UUID.randomUUID().toString());
        return switch (path) {
            case "/api/observations" -> path + "?child=" + world.schoolKey();
            case "/api/table" -> path + "?class=" + world.id("classId");
            default -> path;
        };
    }

    private static String asked(ApiClient client, String claim, World world) {
        String body = claim.endsWith("/marks") ? "[{\"child\":\"" + world.schoolKey()
                + "\",\"item\":\"i1\",\"entry\":1,\"seen\":0,\"mark\":\"right\"}]"
                : claim.endsWith("/pass") ? "{\"class\":\"" + world.id("classId") + "\",\"device\":\"" + UUID.randomUUID()
                        + "\"}" : claim.equals("POST /api/observations") ? "[]"
                                : "{\"child\":\"" + world.schoolKey() + "\",\"entry\":1,\"absent\":true}";
        String path = path(claim, world);
        HttpResponse<String> answer = claim.startsWith("GET") ? client.get(path)
                : claim.startsWith("DELETE") ? client.delete(path) : client.post(path, body);
        return answer.statusCode() + " " + answer.body().replaceAll("\"(timestamp|path)\":\"[^\"]*\"", "");
    }

    @Test
    void everyRouteAnswersEverybodyAsTheTableSays() {
        List<String> routes = RightsTest.routes(context, servlets).stream().filter(r -> r.contains(" /api/")).toList();
        assertThat(routes).hasSizeGreaterThan(12);
        List<String> wrong = new ArrayList<>();
        for (Who who : Who.values()) {
            ApiClient client = client(who);
            for (String route : routes) {
                Right right = Right.of(route).orElseThrow();
                if (who == Who.STRANGER) {
                    if (!asked(client, route, shared).startsWith("401")) {
                        wrong.add("a stranger is let in at " + route);
                    }
                    continue;
                }
                boolean listing = right.reach() == Reach.OWN || route.equals("POST /api/observations");
                String absent = asked(client, route, World.nowhere());
                for (World world : hidden(who, right.reach() == Reach.HELD ? Reach.PART : right.reach())) {
                    String hidden = asked(client, route, world);
                    if (!hidden.equals(absent) || !listing && !hidden.startsWith("404")) {
                        wrong.add(who + " " + route + ": " + hidden + " / " + absent);
                    }
                }
                if (right.who().contains(who) && route.startsWith("GET") && !asked(client, route, shared)
                        .startsWith("200")) {
                    wrong.add(who + " may, and cannot: " + route + " " + asked(client, route, shared));
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** Screens lead a stranger to the sign-in page and say nothing. */
    @Test
    void everyScreenIsClosedToStrangers() {
        for (String screen : RightsTest.routes(context, servlets).stream().filter(r -> r.startsWith("screen")).toList()) {
            String path = "/" + screen.substring(6).strip().replaceAll(":[a-z]+\\??", "x");
            HttpResponse<String> answer = new ApiClient(port).get(path);
            assertThat(answer.statusCode()).as(path).isIn(302, 401, 403);
        }
    }
}
