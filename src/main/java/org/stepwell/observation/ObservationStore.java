package org.stepwell.observation;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.BadSqlGrammarException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;

/** Looks, added once and never changed. */
@Repository
class ObservationStore {
    private static final String COLUMNS = """
            select o.observation_id, o.observed_at, c.school_key, o.skill, o.task, o.step, o.help, o.kind, o.observer,
                   o.tags, o.note, o.replaces, o.withdrawn, o.clock_offset_ms, o.child_id, o.recorded_at,
                   case when v.taken then null else o.waiting_since end, r.observation_id as replaced_by, r.withdrawn as taken_back
            from observation o join child c using (district_id, child_id)
            left join waiting_verdict v on v.district_id = o.district_id and v.observation_id = o.observation_id
            left join lateral (select n.observation_id, n.withdrawn from observation n
                where n.district_id = o.district_id and n.replaces = o.observation_id
                  and (n.waiting_since is null or exists (select 1 from waiting_verdict t
                    where t.district_id = n.district_id and t.observation_id = n.observation_id and t.taken))
                order by n.observed_at desc, n.observation_id desc limit 1) r on true
            """;

    /** What PostgreSQL calls a row that its policies refuse. */
    private static final String OUT_OF_REACH = "42501";

    private final JdbcClient jdbc;

    ObservationStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Adds a look unless its id is there already; says whether it was added.
     *
     * @throws DataIntegrityViolationException when there is no such child any more, or none in reach of the adult
     */
    boolean add(int districtId, UUID childId, @Nullable UUID classId, Look look, UUID recordedBy,
            @Nullable Instant waitingSince) {
        try {
            return added(districtId, childId, classId, look, recordedBy, waitingSince);
        } catch (BadSqlGrammarException refused) {
            if (OUT_OF_REACH.equals(refused.getSQLException().getSQLState())) {
                throw new DataIntegrityViolationException("no such child in reach", refused);
            }
            throw refused;
        }
    }

    private boolean added(int districtId, UUID childId, @Nullable UUID classId, Look look, UUID recordedBy,
            @Nullable Instant waitingSince) {
        return jdbc.sql("""
                insert into observation (district_id, observation_id, child_id, class_id, skill, task, step, help, kind,
                    observer, recorded_by, tags, note, observed_at, observed_on, replaces, withdrawn, clock_offset_ms,
                    waiting_since)
                values (:d, :id, :child, :class, :skill, :task, :step, :help, :kind, :observer, :by, :tags, :note,
                    :at, :on, :replaces, :withdrawn, :offset, :waiting)
                on conflict (district_id, observation_id) do nothing""")
                .param("d", districtId).param("id", look.id()).param("child", childId).param("class", classId)
                .param("skill", look.skill()).param("task", look.task()).param("step", look.step())
                .param("help", look.help().code()).param("kind", look.kind().code())
                .param("observer", look.observer()).param("by", recordedBy)
                .param("tags", look.tags().toArray(String[]::new)).param("note", look.note())
                .param("at", look.observedAt()).param("on", look.day()).param("replaces", look.replaces())
                .param("withdrawn", look.withdrawn()).param("offset", look.clockOffsetMs())
                .param("waiting", waitingSince == null ? null : Timestamp.from(waitingSince)).update() == 1;
    }

    Optional<ObservationLine> find(UUID id, ZoneId zone) {
        return jdbc.sql(COLUMNS + "where o.observation_id = :id").param("id", id)
                .query((row, n) -> line(row, zone)).optional();
    }

    List<ObservationLine> find(Collection<UUID> ids, ZoneId zone) {
        return jdbc.sql(COLUMNS + "where o.observation_id = any (:ids)").param("ids", ids.toArray(UUID[]::new))
                .query((row, n) -> line(row, zone)).list();
    }

    List<ObservationLine> ofChildren(Collection<UUID> children, ZoneId zone) {
        return jdbc.sql(COLUMNS + "where o.child_id = any (:children) order by o.observed_at, o.observation_id")
                .param("children", children.toArray(UUID[]::new)).query((row, n) -> line(row, zone)).list();
    }

    /** Looks at these children that wait and that nobody has taken or left. */
    List<ObservationLine> undecided(Collection<UUID> children, ZoneId zone) {
        return jdbc.sql(COLUMNS + "where o.child_id = any (:children) and o.waiting_since is not null"
                + " and v.observation_id is null order by o.observed_at, o.observation_id")
                .param("children", children.toArray(UUID[]::new)).query((row, n) -> line(row, zone)).list();
    }

    /** Says once what becomes of a look that waited; whether this was the first word. */
    boolean decide(int districtId, UUID id, boolean taken, UUID by) {
        return jdbc.sql("""
                insert into waiting_verdict (district_id, observation_id, taken, decided_by)
                values (:d, :id, :taken, :by) on conflict (district_id, observation_id) do nothing""")
                .param("d", districtId).param("id", id).param("taken", taken).param("by", by).update() == 1;
    }

    private static ObservationLine line(ResultSet row, ZoneId zone) throws SQLException {
        Look look = new Look(row.getObject(1, UUID.class),
                row.getTimestamp(2).toInstant().atZone(zone).toOffsetDateTime(), row.getString(3), row.getString(4),
                row.getString(5), row.getObject(6, Integer.class), Help.of(row.getString(7)),
                Kind.of(row.getString(8)), row.getString(9), Set.of((String[]) row.getArray(10).getArray()),
                row.getString(11), row.getObject(12, UUID.class), row.getBoolean(13), row.getObject(14, Long.class));
        return new ObservationLine(look, row.getObject(15, UUID.class), row.getTimestamp(16).toInstant(),
                row.getObject(18, UUID.class), row.getBoolean(19), row.getTimestamp(17) != null);
    }
}
