package org.stepwell.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.platform.store.OwnerConnections;
import org.stepwell.platform.store.TableOrder;

/** Takes a child out of every table, as the only role that may delete. */
class ErasureStore {
    /** Hold no words that adults write about children. */
    private static final Set<String> WITHOUT_WORDS = Set.of("district", "school", "adult", "sign_in", "credential",
            "classroom", "class_adult", "access_entry", "access_key", "access_head", "erasure", "tablet_pass",
            "tablet_key", "child", "sign_in_event", "retention_period",
            "retention_run");
    /** The rest of a seal when one child is taken out of it: {@code children} is a list of objects. */
    private static final String SEAL_WITHOUT = """
            jsonb_set(s.content::jsonb, '{children}', coalesce((select jsonb_agg(one.line order by one.place)
              from jsonb_array_elements(s.content::jsonb -> 'children') with ordinality one(line, place)
              where one.line ->> 'child_id' <> :text), '[]'))::text""";

    private static final String TARGETS = """
            select c.district_id, c.child_id, c.school_key, c.given_name, c.family_name,
              (select string_agg(distinct s.name, ', ') from enrolment e
                 join classroom r on r.district_id = e.district_id and r.class_id = e.class_id
                 join school s on s.district_id = r.district_id and s.school_id = r.school_id
               where e.district_id = c.district_id and e.child_id = c.child_id)
            from child c""";

    private final OwnerConnections connections;

    ErasureStore(OwnerConnections connections) {
        this.connections = connections;
    }

    /** @param work gets the tables, too, each before those it points to */
    private <T> T asked(BiFunction<JdbcClient, List<String>, T> work) {
        return connections.asEraser("The child cannot be erased", connection -> {
            try (Statement statement = connection.createStatement()) {
                return work.apply(JdbcClient.create(new SingleConnectionDataSource(connection, true)),
                        TableOrder.childrenFirst(statement));
            }
        });
    }

    boolean made() {
        return asked((jdbc, tables) -> jdbc.sql("select to_regclass('erasure') is not null").query(Boolean.class)
                .single());
    }

    /** Every child with this id of a school's own, in whatever district. */
    List<ErasureTarget> withKey(String schoolKey) {
        return asked((jdbc, tables) -> jdbc.sql(TARGETS + " where c.school_key = :key order by c.district_id")
                .param("key", schoolKey).query(ErasureStore::target).list());
    }

    /** One child of a district. */
    Optional<ErasureTarget> target(int districtId, UUID childId) {
        return asked((jdbc, tables) -> jdbc.sql(TARGETS + " where c.district_id = :district and c.child_id = :child")
                .param("district", districtId).param("child", childId).query(ErasureStore::target).optional());
    }

    private static ErasureTarget target(ResultSet row, int n) throws SQLException {
        String school = row.getString(6);
        return new ErasureTarget(row.getInt(1), row.getObject(2, UUID.class), row.getString(3), row.getString(4),
                row.getString(5), school == null ? "" : school);
    }

    /** Rows by table that erasure would remove or rewrite. */
    Map<String, Integer> rows(ErasureTarget target) {
        return asked((jdbc, tables) -> {
            Map<String, Integer> rows = new LinkedHashMap<>();
            for (RecordKind kind : RecordKind.values()) {
                count(rows, kind.table(), of(jdbc.sql(kind.count()), target));
            }
            count(rows, "access_key", of(jdbc.sql("select count(*) from access_key where district_id = :district"
                    + " and child_id = :child"), target));
            count(rows, "review_seal", jdbc.sql("select count(*) from review_seal where district_id = :district"
                    + " and position(:text in content) > 0").param("district", target.districtId())
                    .param("text", target.childId().toString()));
            return rows;
        });
    }

    private static void count(Map<String, Integer> rows, String table, JdbcClient.StatementSpec sql) {
        int n = sql.query(Integer.class).single();
        if (n > 0) {
            rows.put(table, n);
        }
    }

    private static JdbcClient.StatementSpec of(JdbcClient.StatementSpec sql, ErasureTarget target) {
        return sql.param("district", target.districtId()).param("child", target.childId());
    }

    /**
     * Rows by table in which the given name of the child stands as a word and that are not on the child: words about
     * others, or about another child of that name. No program can tell which.
     */
    Map<String, Integer> mentions(ErasureTarget target) {
        return asked((jdbc, tables) -> {
            Map<String, Integer> rows = new LinkedHashMap<>();
            Map<String, RecordKind> kinds = Stream.of(RecordKind.values())
                    .collect(Collectors.toMap(RecordKind::table, Function.identity()));
            for (String table : tables) {
                if (WITHOUT_WORDS.contains(table)) {
                    continue;
                }
                RecordKind kind = kinds.get(table);
                count(rows, table, of(jdbc.sql("select count(*) from " + table + " t"
                        + " where t.district_id = :district and t::text ~* :name"
                        + (kind == null ? "" : " and not (" + kind.where() + ")")), target)
                        .param("name", "\\m" + quoted(target.givenName()) + "\\M"));
            }
            return rows;
        });
    }

    private static String quoted(String words) {
        return Pattern.compile("[^\\p{L}\\p{N} ]").matcher(words).replaceAll(".");
    }

    /**
     * Removes every row on the child, takes it out of rows on several, and notes that it happened; all or nothing.
     *
     * @return rows removed, 0 when the child is not there any more
     * @throws Refused when a request of the family is open
     */
    int erase(ErasureTarget target, String keyDigest, String why, @Nullable UUID by) {
        return asked((jdbc, tables) -> {
            // Nobody adds a row that names the child while it goes.
            jdbc.sql("lock table " + String.join(", ", tables) + " in share row exclusive mode").update();
            if (of(jdbc.sql("select count(*) from child where district_id = :district and child_id = :child"),
                    target).query(Integer.class).single() == 0) {
                return 0;
            }
            if (held(jdbc, target)) {
                throw new Refused("erasure.hold");
            }
            takeOutOfSeals(jdbc, target);
            takeOutOfLessonChoices(jdbc, target);
            Map<String, String> removals = Stream.of(RecordKind.values()).filter(RecordKind::removed)
                    .collect(Collectors.toMap(RecordKind::table, RecordKind::removal));
            removals.put("access_key", "delete from access_key where district_id = :district and child_id = :child");
            int rows = 0;
            for (String table : tables) {
                if (removals.containsKey(table)) {
                    rows += of(jdbc.sql(removals.get(table)), target).update();
                }
            }
            jdbc.sql("""
                    insert into erasure (district_id, key_digest, why, ordered_by, row_count)
                    values (:district, :digest, :why, :by, :rows)""").param("district", target.districtId())
                    .param("digest", keyDigest).param("why", why).param("by", by).param("rows", rows).update();
            return rows;
        });
    }

    /**
     * Removes some kinds of rows on the child, which itself stays; all or nothing.
     *
     * @return rows removed or rewritten
     * @throws Refused when a request of the family is open
     */
    int eraseKinds(ErasureTarget target, Set<RecordKind> kinds) {
        return asked((jdbc, tables) -> {
            jdbc.sql("lock table " + String.join(", ", tables) + " in share row exclusive mode").update();
            if (held(jdbc, target)) {
                throw new Refused("erasure.hold");
            }
            int rows = 0;
            if (kinds.contains(RecordKind.DECISIONS)) {
                takeOutOfSeals(jdbc, target);
            }
            if (kinds.contains(RecordKind.LESSON_CHOICES)) {
                rows += takeOutOfLessonChoices(jdbc, target);
            }
            Map<String, RecordKind> byTable = kinds.stream().filter(RecordKind::removed)
                    .collect(Collectors.toMap(RecordKind::table, Function.identity()));
            for (String table : tables) {
                if (byTable.containsKey(table)) {
                    rows += of(jdbc.sql(byTable.get(table).removal()), target).update();
                }
            }
            return rows;
        });
    }

    /** Notes that records went because their time was over. */
    void ran(SignedIn lead, RetentionKind kind, int children, int rows) {
        asked((jdbc, tables) -> jdbc.sql("""
                insert into retention_run (district_id, school_id, kind, many, row_count, ordered_by)
                values (:district, :school, :kind, :children, :rows, :by)""").param("district", lead.districtId())
                .param("school", lead.schoolId()).param("kind", kind.code()).param("children", children)
                .param("rows", rows).param("by", lead.adultId()).update());
    }

    /** A request of the family waits for an answer (34 CFR 99.10 (e)); as {@code FamilyRequest.open} says. */
    private static boolean held(JdbcClient jdbc, ErasureTarget target) {
        return of(jdbc.sql("""
                select exists (select from family_request r where r.district_id = :district and r.child_id = :child
                  and coalesce((select s.kind from family_request_step s where s.district_id = r.district_id
                    and s.request_id = r.request_id order by s.step desc limit 1), 'hearing_asked') = 'hearing_asked')"""),
                target).query(Boolean.class).single();
    }

    private static void takeOutOfSeals(JdbcClient jdbc, ErasureTarget target) {
        jdbc.sql("""
                with gone as (
                  delete from review_seal s where s.district_id = :district and position(:text in s.content) > 0
                  returning *),
                rest as (select s.*, %s as without from gone s)
                insert into review_seal (district_id, review_id, sealed_on, content, digest, first_digest, sealed_by,
                  sealed_at)
                select district_id, review_id, sealed_on, without, encode(sha256(convert_to(without, 'UTF8')), 'hex'),
                  coalesce(first_digest, digest), sealed_by, sealed_at
                from rest""".formatted(SEAL_WITHOUT)).param("district", target.districtId())
                .param("text", target.childId().toString()).update();
    }

    private static int takeOutOfLessonChoices(JdbcClient jdbc, ErasureTarget target) {
        return of(jdbc.sql("""
                with gone as (
                  delete from lesson_choice t where t.district_id = :district and :child = any(t.children) returning *)
                insert into lesson_choice (district_id, unit_id, on_day, number, lesson_id, choice, children, has,
                  not_yet, not_seen, moved, decided_by, decided_at)
                select district_id, unit_id, on_day, number, lesson_id, choice, array_remove(children, :child), has,
                  not_yet, not_seen, moved, decided_by, decided_at from gone"""), target).update();
    }
}
