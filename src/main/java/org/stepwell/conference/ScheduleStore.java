package org.stepwell.conference;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.conference.Schedule.Arrival;
import org.stepwell.conference.Schedule.Visit;
import org.stepwell.core.wording.Language;

/** Schedules of talks in versions, and who came; rows are added and never changed. */
@Repository
class ScheduleStore {
    private final JdbcClient jdbc;

    ScheduleStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The newest version of a class; that of version 0 where there is none. */
    Schedule newest(UUID classId) {
        record Row(UUID id, int version) {}
        Optional<Row> row = jdbc.sql("""
                select schedule_id, version from conference_schedule where class_id = :class
                order by version desc limit 1""").param("class", classId)
                .query((r, n) -> new Row(r.getObject(1, UUID.class), r.getInt(2))).optional();
        if (row.isEmpty()) {
            return new Schedule(0, List.of(), Map.of());
        }
        List<Slot> slots = jdbc.sql("""
                select on_day, starts_at, minutes, pause, child_id, household, language from conference_slot
                where schedule_id = :id order by place""").param("id", row.get().id())
                .query((r, n) -> new Slot(r.getObject(1, LocalDate.class), r.getObject(2, LocalTime.class), r.getInt(3),
                        r.getBoolean(4), r.getObject(5, UUID.class), r.getInt(6), Language.of(r.getString(7)))).list();
        return new Schedule(row.get().version(), slots, arrivals(slots.stream().map(Slot::childId)
                .filter(java.util.Objects::nonNull).distinct().toList()));
    }

    private Map<Visit, Arrival> arrivals(Collection<UUID> children) {
        Map<Visit, Arrival> arrivals = new HashMap<>();
        jdbc.sql("""
                select distinct on (child_id, on_day, household) child_id, on_day, household, outcome
                from conference_arrival where child_id = any (:children)
                order by child_id, on_day, household, recorded_at desc""")
                .param("children", children.toArray(UUID[]::new))
                .query(r -> {
                    arrivals.put(new Visit(r.getObject(1, UUID.class), r.getObject(2, LocalDate.class), r.getInt(3)),
                            Arrival.valueOf(r.getString(4).toUpperCase(Locale.ROOT)));
                });
        return arrivals;
    }

    /** Adds a version; {@code false} when it is there already, because somebody else kept one meanwhile. */
    boolean add(int districtId, UUID classId, int version, List<Slot> slots, UUID by) {
        UUID id = UUID.randomUUID();
        if (jdbc.sql("""
                insert into conference_schedule (district_id, schedule_id, class_id, version, written_by)
                values (:d, :id, :class, :version, :by)
                on conflict on constraint conference_schedule_version do nothing""")
                .param("d", districtId).param("id", id).param("class", classId).param("version", version)
                .param("by", by).update() == 0) {
            return false;
        }
        int place = 0;
        for (Slot slot : slots) {
            jdbc.sql("""
                    insert into conference_slot (district_id, schedule_id, place, on_day, starts_at, minutes, pause,
                        child_id, household, language)
                    values (:d, :id, :place, :on, :at, :minutes, :pause, :child, :household, :language)""")
                    .param("d", districtId).param("id", id).param("place", ++place).param("on", slot.day())
                    .param("at", slot.start()).param("minutes", slot.minutes()).param("pause", slot.pause())
                    .param("child", slot.childId()).param("household", slot.household())
                    .param("language", slot.language().code()).update();
        }
        return true;
    }

    void arrived(int districtId, Visit visit, Arrival outcome, UUID by) {
        jdbc.sql("""
                insert into conference_arrival (district_id, child_id, on_day, household, outcome, recorded_by)
                values (:d, :child, :on, :household, :outcome, :by)""")
                .param("d", districtId).param("child", visit.childId()).param("on", visit.day())
                .param("household", visit.household()).param("outcome", outcome.name().toLowerCase(Locale.ROOT))
                .param("by", by).update();
    }
}
