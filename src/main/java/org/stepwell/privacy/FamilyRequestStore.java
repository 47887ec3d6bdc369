package org.stepwell.privacy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.privacy.FamilyRequest.Happened;
import org.stepwell.privacy.FamilyRequest.Kind;
import org.stepwell.privacy.FamilyRequest.Step;

/** Requests of families and what became of them. */
@Repository
class FamilyRequestStore {
    private final JdbcClient jdbc;

    FamilyRequestStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Requests on a child, oldest first. */
    List<FamilyRequest> of(UUID childId) {
        Map<UUID, List<Step>> steps = new HashMap<>();
        jdbc.sql("""
                select s.request_id, s.kind, s.done_on, s.words, a.name from family_request_step s
                  join family_request r using (district_id, request_id)
                  join adult a on a.district_id = s.district_id and a.adult_id = s.recorded_by
                where r.child_id = :child order by s.step""").param("child", childId).query(row -> {
                    steps.computeIfAbsent(row.getObject(1, UUID.class), id -> new ArrayList<>()).add(new Step(
                            Happened.valueOf(row.getString(2).toUpperCase(Locale.ROOT)),
                            row.getObject(3, LocalDate.class), row.getString(4), row.getString(5)));
                });
        return jdbc.sql("""
                select r.request_id, r.kind, r.asked_on, r.words, a.name from family_request r
                  join adult a on a.district_id = r.district_id and a.adult_id = r.recorded_by
                where r.child_id = :child order by r.asked_on, r.recorded_at""").param("child", childId)
                .query((row, n) -> {
                    UUID id = row.getObject(1, UUID.class);
                    return new FamilyRequest(id, Kind.valueOf(row.getString(2).toUpperCase(Locale.ROOT)),
                            row.getObject(3, LocalDate.class), row.getString(4), row.getString(5),
                            steps.getOrDefault(id, List.of()));
                }).list();
    }

    UUID add(int districtId, UUID childId, Kind kind, LocalDate on, String words, UUID by) {
        return jdbc.sql("""
                insert into family_request (district_id, child_id, kind, asked_on, words, recorded_by)
                values (:district, :child, :kind, :on, :words, :by) returning request_id""")
                .param("district", districtId).param("child", childId).param("kind", kind.code()).param("on", on)
                .param("words", words).param("by", by).query(UUID.class).single();
    }

    /** @return whether nobody took that step before */
    boolean add(int districtId, UUID requestId, int number, Step step, UUID by) {
        return jdbc.sql("""
                insert into family_request_step (district_id, request_id, step, kind, done_on, words, recorded_by)
                values (:district, :request, :step, :kind, :on, :words, :by) on conflict do nothing""")
                .param("district", districtId).param("request", requestId).param("step", number)
                .param("kind", step.kind().code()).param("on", step.on()).param("words", step.words()).param("by", by)
                .update() == 1;
    }
}
