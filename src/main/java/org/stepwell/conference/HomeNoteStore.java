package org.stepwell.conference;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.wording.Language;

/** Versions of pages for home, added and never changed. */
@Repository
class HomeNoteStore {
    private final JdbcClient jdbc;

    HomeNoteStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Row(int version, boolean approved, LocalDate on, String parts, String confirmed, String by,
            java.time.Instant at) {}

    /** Newest first. */
    List<Row> versions(UUID childId, Language language) {
        return jdbc.sql("""
                select n.version, n.state = 'approved', n.note_on, n.parts::text, n.confirmed::text, a.name, n.written_at
                from home_note n join adult a on a.district_id = n.district_id and a.adult_id = n.written_by
                where n.child_id = :child and n.language = :language
                order by n.version desc""")
                .param("child", childId).param("language", language.code())
                .query((row, n) -> new Row(row.getInt(1), row.getBoolean(2), row.getObject(3, LocalDate.class),
                        row.getString(4), row.getString(5), row.getString(6), row.getTimestamp(7).toInstant())).list();
    }

    /** Adds a version; none when that version is there already, because somebody else kept one meanwhile. */
    boolean add(int districtId, UUID childId, Language language, int version, boolean approved, LocalDate on,
            String parts, String confirmed, UUID by) {
        return jdbc.sql("""
                insert into home_note (district_id, child_id, language, version, state, note_on, parts, confirmed,
                    written_by)
                values (:d, :child, :language, :version, :state, :on, :parts::jsonb, :confirmed::jsonb, :by)
                on conflict on constraint home_note_version do nothing""")
                .param("d", districtId).param("child", childId).param("language", language.code())
                .param("version", version).param("state", approved ? "approved" : "draft").param("on", on)
                .param("parts", parts).param("confirmed", confirmed).param("by", by).update() == 1;
    }

    /** Day of the newest approved page on a child in any language. */
    @Nullable LocalDate lastApproved(UUID childId) {
        return jdbc.sql("select max(note_on) from home_note where child_id = :child and state = 'approved'")
                .param("child", childId).query((row, n) -> row.getObject(1, LocalDate.class)).list().stream()
                .filter(java.util.Objects::nonNull).findFirst().orElse(null);
    }
}
