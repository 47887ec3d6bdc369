package org.stepwell.records;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Every row on a child, of whatever table, as it stands there; adults and classes by name. */
@Repository
class RecordsStore {
    /** The same in every row, or the id of another child. */
    private static final Set<String> NOT_TOLD = Set.of("district_id", "child_id", "other_child_id");

    private final JdbcClient jdbc;

    RecordsStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Names of adults and classes of the district by their ids. */
    Map<UUID, String> names() {
        Map<UUID, String> names = new HashMap<>();
        jdbc.sql("select adult_id id, name from adult union all select class_id, name from classroom")
                .query(row -> {
                    names.put(row.getObject(1, UUID.class), row.getString(2));
                });
        return names;
    }

    Optional<UUID> idOf(String schoolKey) {
        return jdbc.sql("select child_id from child where school_key = :key").param("key", schoolKey)
                .query(UUID.class).optional();
    }

    /** Given and family name. */
    String name(UUID childId) {
        return jdbc.sql("select trim(given_name || ' ' || family_name) from child where child_id = :child")
                .param("child", childId).query(String.class).single();
    }

    /** Children of classes now, and of a school at any time; with the oldest request that waits for an answer. */
    List<KeptChild> kept(Set<UUID> classes, @Nullable UUID schoolId, LocalDate day) {
        return jdbc.sql("""
                select c.child_id, c.school_key, trim(c.given_name || ' ' || c.family_name) as name,
                  (array_agg(r.name order by e.starts_on desc))[1] as room,
                  case when bool_or(e.ends_on is null or e.ends_on >= :day) then null else max(e.ends_on) end as last,
                  (select min(q.asked_on) from family_request q where q.child_id = c.child_id and coalesce((select s.kind
                    from family_request_step s where s.request_id = q.request_id order by s.step desc limit 1),
                    'hearing_asked') = 'hearing_asked') as waits
                from child c join enrolment e using (district_id, child_id) join classroom r using (district_id, class_id)
                where r.school_id = cast(:school as uuid)
                  or (r.class_id = any(:classes) and (e.ends_on is null or e.ends_on >= :day))
                group by c.district_id, c.child_id order by waits nulls last, name, c.school_key""")
                .param("day", day).param("school", schoolId).param("classes", classes.toArray(UUID[]::new))
                .query((row, n) -> new KeptChild(row.getObject(1, UUID.class), row.getString(2), row.getString(3),
                        row.getString(4), row.getObject(5, LocalDate.class), row.getObject(6, LocalDate.class))).list();
    }

    /** Rows of a kind, oldest first; the columns in the order of the table. */
    List<Map<String, @Nullable Object>> rows(RecordKind kind, UUID childId, Map<UUID, String> names, ZoneId zone) {
        return jdbc.sql(kind.sql()).param("child", childId).query((row, n) -> {
            Map<String, @Nullable Object> cells = new LinkedHashMap<>();
            ResultSetMetaData columns = row.getMetaData();
            for (int i = 1; i <= columns.getColumnCount(); i++) {
                if (!NOT_TOLD.contains(columns.getColumnLabel(i))) {
                    cells.put(columns.getColumnLabel(i), cell(row, i, columns.getColumnTypeName(i), names, zone));
                }
            }
            return cells;
        }).list();
    }

    private static @Nullable Object cell(ResultSet row, int i, String type, Map<UUID, String> names, ZoneId zone)
            throws SQLException {
        if (row.getObject(i) == null) {
            return null;
        }
        return switch (type) {
            case "uuid" -> {
                UUID id = row.getObject(i, UUID.class);
                yield names.getOrDefault(id, id.toString());
            }
            case "timestamptz" -> row.getObject(i, OffsetDateTime.class).atZoneSameInstant(zone).toOffsetDateTime()
                    .toString();
            case "bool" -> row.getBoolean(i);
            case "int4", "int8" -> row.getLong(i);
            default -> {
                Array many = type.startsWith("_") ? row.getArray(i) : null;
                yield many == null ? row.getString(i) : Arrays.stream((Object[]) many.getArray())
                        .map(String::valueOf).collect(Collectors.joining(" "));
            }
        };
    }
}
