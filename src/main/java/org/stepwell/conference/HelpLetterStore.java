package org.stepwell.conference;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.wording.Language;

/** Versions of letters about extra help, added and never changed. */
@Repository
class HelpLetterStore {
    private final JdbcClient jdbc;

    HelpLetterStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Row(int version, boolean approved, LocalDate on, String lines, String school, String confirmed, String by) {}

    /** Newest first. */
    List<Row> versions(UUID planId, Language language) {
        return jdbc.sql("""
                select l.version, l.state = 'approved', l.letter_on, l.lines::text, l.school_text, l.confirmed::text, a.name
                from help_letter l join adult a on a.district_id = l.district_id and a.adult_id = l.written_by
                where l.plan_id = :plan and l.language = :language
                order by l.version desc""")
                .param("plan", planId).param("language", language.code())
                .query((row, n) -> new Row(row.getInt(1), row.getBoolean(2), row.getObject(3, LocalDate.class),
                        row.getString(4), row.getString(5), row.getString(6), row.getString(7))).list();
    }

    /** Adds a version; none when that version is there already, because somebody else kept one meanwhile. */
    boolean add(int districtId, UUID childId, UUID planId, Language language, int version, boolean approved,
            LocalDate on, String lines, String school, String confirmed, UUID by) {
        return jdbc.sql("""
                insert into help_letter (district_id, child_id, plan_id, language, version, state, letter_on, lines,
                    school_text, confirmed, written_by)
                values (:d, :child, :plan, :language, :version, :state, :on, :lines::jsonb, :school, :confirmed::jsonb, :by)
                on conflict on constraint help_letter_version do nothing""")
                .param("d", districtId).param("child", childId).param("plan", planId)
                .param("language", language.code()).param("version", version)
                .param("state", approved ? "approved" : "draft").param("on", on).param("lines", lines)
                .param("school", school).param("confirmed", confirmed).param("by", by).update() == 1;
    }

    /** The words of the school that this adult used last, whatever the child. */
    Optional<String> lastSchoolText(UUID adultId, Language language) {
        return jdbc.sql("""
                select school_text from help_letter where written_by = :by and language = :language and school_text <> ''
                order by written_at desc limit 1""").param("by", adultId).param("language", language.code())
                .query(String.class).optional();
    }

    /** Children of whom a plan of extra help runs without an approved letter in any language. */
    List<UUID> withoutWord(Collection<UUID> children, LocalDate today) {
        return jdbc.sql("""
                select distinct p.child_id from plan p
                where p.child_id = any (:children) and p.kind = 'support' and p.started_on <= :today
                  and not exists (select from plan_end e where e.district_id = p.district_id and e.plan_id = p.plan_id
                      and e.ended_on < :today)
                  and not exists (select from help_letter l where l.district_id = p.district_id and l.plan_id = p.plan_id
                      and l.state = 'approved')""")
                .param("children", children.toArray(UUID[]::new)).param("today", today).query(UUID.class).list();
    }
}
