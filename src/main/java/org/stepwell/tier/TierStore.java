package org.stepwell.tier;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.tier.ChildState.Dose;
import org.stepwell.core.tier.ChildState.OpenRequest;
import org.stepwell.core.tier.Tier;

/** Decisions, concerns and doses, added and never changed. */
@Repository
class TierStore {
    private final JdbcClient jdbc;

    TierStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void decide(int districtId, UUID unitId, UUID childId, LocalDate asOf, Tier from, Tier to, String choice,
            @Nullable Tier suggested, @Nullable String verdict, @Nullable String rules, String reason, String evidence,
            UUID by) {
        jdbc.sql("""
                insert into tier_decision (district_id, unit_id, child_id, as_of, from_tier, to_tier, choice, suggested,
                    verdict, rules, reason, evidence, decided_by)
                values (:d, :unit, :child, :on, :from, :to, :choice, :suggested, :verdict, :rules, :reason,
                    :evidence::jsonb, :by)""")
                .param("d", districtId).param("unit", unitId).param("child", childId).param("on", asOf)
                .param("from", from.code()).param("to", to.code()).param("choice", choice)
                .param("suggested", suggested == null ? null : suggested.code()).param("verdict", verdict)
                .param("rules", rules).param("reason", reason).param("evidence", evidence).param("by", by).update();
    }

    Map<UUID, List<DecisionLine>> decisions(UUID unitId, Collection<UUID> children) {
        return jdbc.sql("""
                select t.child_id, t.as_of, t.from_tier, t.to_tier, t.choice, t.suggested, t.reason, a.name,
                       t.decided_at
                from tier_decision t join adult a on a.district_id = t.district_id and a.adult_id = t.decided_by
                where t.unit_id = :unit and t.child_id = any (:children)
                order by t.as_of, t.decided_at""")
                .param("unit", unitId).param("children", children.toArray(UUID[]::new))
                .query((row, n) -> Map.entry(row.getObject(1, UUID.class), new DecisionLine(
                        row.getObject(2, LocalDate.class), Tier.of(row.getString(3)), Tier.of(row.getString(4)),
                        row.getString(5), row.getString(6) == null ? null : Tier.of(row.getString(6)),
                        row.getString(7), row.getString(8), row.getTimestamp(9).toInstant())))
                .list().stream().collect(Collectors.groupingBy(Map.Entry::getKey,
                        Collectors.mapping(Map.Entry::getValue, Collectors.toList())));
    }

    List<OpenRequest> open(UUID childId) {
        return jdbc.sql("select kind, raised_on from concern where child_id = :child order by raised_on")
                .param("child", childId)
                .query((row, n) -> new OpenRequest(row.getString(1).equals("concern") ? OpenRequest.Kind.CONCERN
                        : OpenRequest.Kind.EVALUATION, row.getObject(2, LocalDate.class))).list();
    }

    void addConcern(int districtId, UUID childId, String kind, LocalDate on, String words, UUID by) {
        jdbc.sql("insert into concern (district_id, child_id, kind, raised_on, words, recorded_by)"
                + " values (:d, :child, :kind, :on, :words, :by)")
                .param("d", districtId).param("child", childId).param("kind", kind.toLowerCase(Locale.ROOT))
                .param("on", on).param("words", words).param("by", by).update();
    }

    @Nullable Dose dose(UUID unitId, UUID childId) {
        return jdbc.sql("select planned, given, missed_by_school, missed_by_child from dose where unit_id = :unit"
                + " and child_id = :child order by as_of desc, recorded_at desc limit 1")
                .param("unit", unitId).param("child", childId)
                .query((row, n) -> new Dose(row.getInt(1), row.getInt(2), row.getInt(3), row.getInt(4)))
                .optional().orElse(null);
    }

    void addDose(int districtId, UUID unitId, UUID childId, LocalDate on, Dose dose, UUID by) {
        jdbc.sql("insert into dose (district_id, unit_id, child_id, as_of, planned, given, missed_by_school,"
                + " missed_by_child, recorded_by) values (:d, :unit, :child, :on, :planned, :given, :school, :self, :by)")
                .param("d", districtId).param("unit", unitId).param("child", childId).param("on", on)
                .param("planned", dose.planned()).param("given", dose.given())
                .param("school", dose.missedBySchool()).param("self", dose.missedByChild()).param("by", by).update();
    }
}
