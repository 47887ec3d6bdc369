package org.stepwell.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stepwell.TestDatabase;

/** Laws of the whole schema, read from the live catalog. */
class SchemaTest {
    /** Not by district: Flyway's own table, the directory that finds a sign-in name's district, facts about no district. */
    private static final List<String> EXCEPTIONS = List.of("flyway_schema_history", "sign_in", "store_mark");

    private static final TestDatabase DATABASE = TestDatabase.fresh();
    private final JdbcClient jdbc = JdbcClient.create(DATABASE.runTime());

    @AfterAll
    static void closes() {
        DATABASE.close();
    }

    private List<String> names(String sql) {
        return jdbc.sql(sql).query(String.class).list().stream().filter(n -> EXCEPTIONS.stream()
                .noneMatch(e -> n.equals(e) || n.startsWith(e + " ") || n.startsWith(e + "."))).toList();
    }

    @Test
    void everyTableForcesRowSecurity() {
        assertThat(names("select relname from pg_class where relkind = 'r' and relnamespace = 'public'::regnamespace"
                + " and not (relrowsecurity and relforcerowsecurity)")).isEmpty();
        assertThat(names("select relname from pg_class where relkind = 'r'"
                + " and relnamespace = 'public'::regnamespace")).hasSizeGreaterThan(15);
    }

    @Test
    void everyKeyAndForeignKeyLeadsWithTheDistrict() {
        assertThat(names("""
                select c.relname || ' ' || k.conname from pg_constraint k join pg_class c on c.oid = k.conrelid
                where k.connamespace = 'public'::regnamespace and k.contype in ('p', 'u', 'f')
                  and (select attname from pg_attribute where attrelid = c.oid and attnum = k.conkey[1]) <> 'district_id'
                """)).isEmpty();
        assertThat(names("""
                select c.relname || ' ' || i.indexrelid::regclass from pg_index i join pg_class c on c.oid = i.indrelid
                where c.relnamespace = 'public'::regnamespace
                  and (select attname from pg_attribute where attrelid = c.oid and attnum = i.indkey[0]) <> 'district_id'
                """)).isEmpty();
    }

    @Test
    void everyTableAndColumnSaysWhatItIs() {
        assertThat(names("""
                select c.relname || '.' || a.attname from pg_class c join pg_attribute a on a.attrelid = c.oid
                where c.relkind = 'r' and c.relnamespace = 'public'::regnamespace and a.attnum > 0
                  and not a.attisdropped and col_description(c.oid, a.attnum) is null""")).isEmpty();
        assertThat(names("select relname from pg_class where relkind = 'r'"
                + " and relnamespace = 'public'::regnamespace and obj_description(oid) is null")).isEmpty();
    }

    @Test
    void theRunTimeUserOwnsNothing() {
        assertThat(names("select relname from pg_class where pg_get_userbyid(relowner) = current_user")).isEmpty();
    }
}
