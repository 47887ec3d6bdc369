package org.stepwell.records;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
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
