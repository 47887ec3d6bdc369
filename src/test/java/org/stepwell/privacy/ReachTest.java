package org.stepwell.privacy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.TestDatabase;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.platform.store.TransactionProof;

/**
 * The second wall with every check of the application left out: bare statements of the run-time user. Two classes, a
 * child in each with a concern; the traps are those the manual of PostgreSQL tells of (Row Security Policies, CREATE VIEW).
 */
class ReachTest {
    /** Tables with a child that are not walled by reach: by district only. */
    private static final Set<String> BY_DISTRICT_ONLY = Set.of("enrolment", "caseload_grant", "child", "access_key",
            "seating_place", "grouping_wish", "table_task", "block_absence", "family_request", "caseload_comment",
            "conference_slot", "conference_arrival");
    private static final String WITHOUT_REACH = """
            select c.relname from pg_class c join pg_attribute a on a.attrelid = c.oid
            where c.relkind = 'r' and c.relnamespace = 'public'::regnamespace and a.attname = 'child_id'
              and not exists (select from pg_policy p where p.polrelid = c.oid and p.polname = 'of_reach'
                and not p.polpermissive and p.polcmd = '*'
                and pg_get_expr(p.polqual, p.polrelid) like '%reach()%'
                and pg_get_expr(p.polwithcheck, p.polrelid) like '%reach()%')""";
    private static final UUID SCHOOL = id(1);
    private static final UUID TEACHER = id(2);
    private static final UUID SPECIALIST = id(3);
    private static final UUID LEAD = id(4);
    private static final UUID STRANGER = id(5);
    private static final UUID MINE = id(20);
    private static final UUID NEXT_DOOR = id(21);
    private static final TestDatabase DATABASE = TestDatabase.fresh();

    private final JdbcClient jdbc = JdbcClient.create(DATABASE.runTime());
    private final TransactionTemplate transaction = DistrictScope.transactions(DATABASE.runTime());

    private static UUID id(int n) {
        return new UUID(7, n);
    }

    @BeforeAll
    static void grows() throws SQLException {
        superuser("""
                insert into district (district_id, name) values (5, 'Oak'), (6, 'Elm');
                insert into school (district_id, school_id, name, time_zone) values (5, '%1$s', 'Hill', 'UTC');
                insert into adult (district_id, adult_id, school_id, sign_in, name, lead)
                select 5, v.id::uuid, '%1$s', v.name, v.name, v.name = 'lead' from (values ('%2$s', 'teacher'),
                  ('%3$s', 'specialist'), ('%4$s', 'lead'), ('%5$s', 'stranger')) v(id, name);
                insert into classroom (district_id, class_id, school_id, name) values (5, '%6$s', '%1$s', 'Room 1'),
                  (5, '%7$s', '%1$s', 'Room 2');
                insert into class_adult (district_id, class_id, adult_id, role, starts_on)
                values (5, '%6$s', '%2$s', 'teacher', '2026-01-01'), (5, '%7$s', '%3$s', 'specialist', '2026-01-01');
                insert into child (district_id, child_id, school_key, given_name)
                values (5, '%8$s', 'k1', 'Ana'), (5, '%9$s', 'k2', 'Bo');
                insert into enrolment (district_id, class_id, child_id, starts_on)
                values (5, '%6$s', '%8$s', '2026-01-01'), (5, '%7$s', '%9$s', '2026-01-01');
                insert into caseload_grant (district_id, adult_id, child_id, reason, starts_on, ends_on)
                values (5, '%3$s', '%8$s', 'counting', '2026-01-01', '2026-06-01');
                insert into concern (district_id, concern_id, child_id, kind, raised_on, words, recorded_by)
                select 5, child_id, child_id, 'concern', '2026-03-01', given_name, '%4$s' from child;
                insert into observation (district_id, observation_id, child_id, help, kind, observer, recorded_by,
                  observed_at, observed_on)
                select 5, child_id, child_id, 'none', 'table', 'lead', '%4$s', now(), '2026-03-01' from child"""
                .formatted(SCHOOL, TEACHER, SPECIALIST, LEAD, STRANGER, id(10), id(11), MINE, NEXT_DOOR));
    }

    @AfterAll
    static void closes() {
        DATABASE.close();
    }

    private static void superuser(String sql) throws SQLException {
        try (Connection all = DATABASE.superuser(); Statement statement = all.createStatement()) {
            statement.execute(sql);
        }
    }

    /** Before anything else: a superuser or owner would see everything and prove nothing. */
    @BeforeEach
    void runsAsTheRunTimeUser() {
        assertThat(one("select current_user || session_user")).isEqualTo("stepwell_appstepwell_app");
        assertThat(one("select (rolsuper or rolbypassrls)::text from pg_roles where rolname = current_user"))
                .isEqualTo("false");
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    private void as(UUID adult, int district) {
        SecurityContextHolder.getContext().setAuthentication(UsernamePasswordAuthenticationToken.authenticated(
                new SignedIn(district, adult, SCHOOL, "x", "x", ZoneOffset.UTC, false), null, List.of()));
    }

    private String one(String sql) {
        return transaction.execute(s -> jdbc.sql(sql).query(String.class).single());
    }

    private List<UUID> seen(String table) {
        return transaction.execute(s -> jdbc.sql("select child_id from " + table + " order by child_id")
                .query(UUID.class).list());
    }

    @Test
    void eachSeesTheChildrenInReachAndNoOther() {
        for (String table : List.of("concern", "observation")) {
            as(TEACHER, 5);
            assertThat(seen(table)).containsExactly(MINE);
            as(SPECIALIST, 5);
            assertThat(seen(table)).containsExactly(MINE);
            as(LEAD, 5);
            assertThat(seen(table)).containsExactly(MINE, NEXT_DOOR);
            as(STRANGER, 5);
            assertThat(seen(table)).isEmpty();
            as(LEAD, 6);
            assertThat(seen(table)).isEmpty();
            signsOut();
            assertThat(seen(table)).isEmpty();
        }
    }

    @Test
    void nothingIsWrittenOnAChildOutOfReachNorDoesAConflictTell() {
        as(TEACHER, 5);
        for (UUID taken : List.of(NEXT_DOOR, id(99))) {
            assertThatThrownBy(() -> transaction.execute(s -> jdbc.sql("insert into concern (district_id, concern_id,"
                    + " child_id, kind, raised_on, recorded_by) values (5, :id, :child, 'concern', '2026-03-02', :by)"
                    + " on conflict do nothing").param("id", taken).param("child", NEXT_DOOR).param("by", TEACHER)
                    .update())).hasStackTraceContaining("row-level security policy");
        }
    }

    /** The run-time user sets what it likes: without the proof nothing is seen, and it cannot make one. */
    @Test
    void anotherCannotBeNamedNorProved() {
        as(TEACHER, 5);
        for (String name : List.of("5/" + LEAD, "5/", "5", "", "/")) {
            transaction.executeWithoutResult(s -> {
                jdbc.sql("select set_config('stepwell.for', :name, true)").param("name", name).query().singleRow();
                assertThat(jdbc.sql("select count(*) from concern").query(Integer.class).single()).isZero();
            });
        }
        for (String sql : List.of("select * from stepwell_proof.key", "delete from stepwell_proof.key",
                "create function proved() returns text language sql return '5/'", "set role stepwell_owner",
                "create temp table key (outer_key bytea, inner_key bytea)")) {
            assertThatThrownBy(() -> transaction.execute(s -> jdbc.sql(sql).update())).as(sql)
                    .hasStackTraceContaining("permission denied");
        }
    }

    /** A proof is for one transaction: the next on the same connection sees nothing, though '' is left of the setting. */
    @Test
    void nothingStaysOnAPooledConnection() throws SQLException {
        try (Connection one = DATABASE.runTime().getConnection(); Statement statement = one.createStatement()) {
            one.setAutoCommit(false);
            String subject = "5/" + LEAD;
            statement.execute("select set_config('stepwell.for', '" + subject + "', true), set_config('stepwell.proof', '"
                    + TransactionProof.of(one, subject) + "', true)");
            assertThat(count(statement)).isEqualTo(2);
            one.commit();
            assertThat(count(statement)).isZero();
            one.rollback();
        }
    }

    private static int count(Statement statement) throws SQLException {
        try (var row = statement.executeQuery("select count(*) from concern")) {
            row.next();
            return row.getInt(1);
        }
    }

    @Test
    void theOwnerIsHeldTooAndABackupFailsRatherThanLeavingOut() throws SQLException {
        try (Connection owner = DATABASE.ownerConnections().owner(); Statement statement = owner.createStatement()) {
            assertThat(count(statement)).isZero();
        }
        try (Connection one = DATABASE.runTime().getConnection(); Statement statement = one.createStatement()) {
            statement.execute("set row_security = off");
            assertThatThrownBy(() -> count(statement)).hasMessageContaining("row-level security");
            statement.execute("set row_security = on");
        }
    }

    /** Views of their owner, partitions, leakproof functions, rights to truncate or to point at a table step around. */
    @Test
    void nothingInTheSchemaStepsAround() {
        for (String around : List.of(
                "pg_class c where relkind in ('v', 'm') and coalesce(array_to_string(reloptions, ','), '') not like"
                        + " '%security_invoker=true%' and relnamespace = 'public'::regnamespace",
                "pg_class c where relispartition and relnamespace = 'public'::regnamespace",
                "pg_proc where proleakproof and pronamespace = 'public'::regnamespace",
                "pg_proc where prosecdef and proname <> 'proved' and pronamespace = 'public'::regnamespace",
                "pg_class c where relkind = 'r' and relnamespace = 'public'::regnamespace"
                        + " and has_table_privilege(oid, 'truncate, references, trigger')")) {
            assertThat(one("select count(*) from " + around)).as(around).isEqualTo("0");
        }
    }

    @Test
    void everyTableWithAChildIsWalledAndOneWithoutIsFound() throws SQLException {
        assertThat(Set.copyOf(jdbc.sql(WITHOUT_REACH).query(String.class).list())).isEqualTo(BY_DISTRICT_ONLY);
        superuser("alter policy of_reach on dose with check (true)");
        superuser("drop policy of_reach on plan");
        try {
            assertThat(jdbc.sql(WITHOUT_REACH).query(String.class).list()).contains("dose", "plan");
        } finally {
            superuser("drop policy of_reach on dose");
            superuser("call guard_reach('dose')");
            superuser("call guard_reach('plan')");
        }
    }
}
