package org.stepwell.conference;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Talks with families and what became of what was agreed; rows are added and never changed. */
@Repository
class FamilyTalkStore {
    private final JdbcClient jdbc;

    FamilyTalkStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of these children, newest first. */
    List<FamilyTalk> talks(Collection<UUID> children) {
        return jdbc.sql("""
                select t.talk_id, t.child_id, t.held_on, t.said, t.agreed,
                       case when s.step is null then t.again_on else s.again_on end, coalesce(s.step, 0), a.name
                from family_talk t
                join adult a on a.district_id = t.district_id and a.adult_id = t.written_by
                left join lateral (select step, again_on from family_talk_step s
                    where s.district_id = t.district_id and s.talk_id = t.talk_id order by step desc limit 1) s on true
                where t.child_id = any (:children) order by t.held_on desc, t.written_at desc""")
                .param("children", children.toArray(UUID[]::new))
                .query((row, n) -> new FamilyTalk(row.getObject(1, UUID.class), row.getObject(2, UUID.class),
                        row.getObject(3, LocalDate.class), row.getString(4), row.getString(5),
                        row.getObject(6, LocalDate.class), row.getInt(7), row.getString(8))).list();
    }

    /** Adds a talk; the same id again does nothing. */
    void add(int districtId, FamilyTalk talk, UUID by) {
        jdbc.sql("""
                insert into family_talk (district_id, talk_id, child_id, held_on, said, agreed, again_on, written_by)
                values (:d, :id, :child, :on, :said, :agreed, :again, :by) on conflict do nothing""")
                .param("d", districtId).param("id", talk.talkId()).param("child", talk.childId()).param("on", talk.on())
                .param("said", talk.said()).param("agreed", talk.agreed()).param("again", talk.againOn())
                .param("by", by).update();
    }

    /** Moves what was agreed to another day, or says it is done; nothing when somebody did so first. */
    void step(int districtId, UUID talkId, int step, @Nullable LocalDate againOn, UUID by) {
        jdbc.sql("""
                insert into family_talk_step (district_id, talk_id, step, again_on, written_by)
                values (:d, :id, :step, :again, :by) on conflict do nothing""")
                .param("d", districtId).param("id", talkId).param("step", step).param("again", againOn)
                .param("by", by).update();
    }
}
