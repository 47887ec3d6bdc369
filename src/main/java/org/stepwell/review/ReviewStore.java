package org.stepwell.review;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;

/** Reviews, choices and seals; rows are added and never changed. */
@Repository
class ReviewStore {
    private final JdbcClient jdbc;

    ReviewStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Opened(UUID reviewId, LocalDate week) {}

    record Sealed(UUID reviewId, LocalDate week, LocalDate on, String content, String digest, String by,
            java.time.Instant at) {}

    Optional<Opened> find(UUID classId, UUID unitId, LocalDate week) {
        return jdbc.sql("select review_id, week from review where class_id = :class and unit_id = :unit and week = :week")
                .param("class", classId).param("unit", unitId).param("week", week)
                .query((row, n) -> new Opened(row.getObject(1, UUID.class), row.getObject(2, LocalDate.class)))
                .optional();
    }

    /** Opens a review; does nothing when another adult just did. */
    void open(int districtId, UUID classId, UUID unitId, LocalDate week, UUID by) {
        jdbc.sql("""
                insert into review (district_id, class_id, unit_id, week, opened_by)
                values (:d, :class, :unit, :week, :by) on conflict on constraint review_once_a_week do nothing""")
                .param("d", districtId).param("class", classId).param("unit", unitId).param("week", week)
                .param("by", by).update();
    }

    /** All turns, oldest first. */
    List<Choice> choices(UUID reviewId) {
        return jdbc.sql("""
                select c.child_id, c.turn, c.choice, c.tier, c.until, c.reason, c.suggested, c.verdict, a.name,
                       c.chosen_at
                from review_choice c join adult a on a.district_id = c.district_id and a.adult_id = c.chosen_by
                where c.review_id = :review order by c.turn, c.chosen_at""").param("review", reviewId)
                .query((row, n) -> new Choice(row.getObject(1, UUID.class), row.getInt(2),
                        Choice.Kind.of(row.getString(3)), Tier.of(row.getString(4)),
                        row.getObject(5, LocalDate.class), row.getString(6), Tier.of(row.getString(7)),
                        Verdict.valueOf(row.getString(8).toUpperCase(java.util.Locale.ROOT)), row.getString(9),
                        row.getTimestamp(10).toInstant())).list();
    }

    /** Adds a turn; {@code false} when another adult took it first. */
    boolean choose(int districtId, UUID reviewId, Choice choice, UUID by) {
        return jdbc.sql("""
                insert into review_choice (district_id, review_id, child_id, turn, choice, tier, until, reason, suggested,
                    verdict, chosen_by)
                values (:d, :review, :child, :turn, :choice, :tier, :until, :reason, :suggested, :verdict, :by)
                on conflict do nothing""")
                .param("d", districtId).param("review", reviewId).param("child", choice.childId())
                .param("turn", choice.turn()).param("choice", choice.kind().code()).param("tier", choice.tier().code())
                .param("until", choice.until()).param("reason", choice.reason())
                .param("suggested", choice.suggested().code()).param("verdict", choice.verdict().code())
                .param("by", by).update() == 1;
    }

    /** Adds the seal; {@code false} when it is there already. */
    boolean seal(int districtId, UUID reviewId, LocalDate on, String content, String digest, UUID by) {
        return jdbc.sql("""
                insert into review_seal (district_id, review_id, sealed_on, content, digest, sealed_by)
                values (:d, :review, :on, :content, :digest, :by) on conflict do nothing""")
                .param("d", districtId).param("review", reviewId).param("on", on).param("content", content)
                .param("digest", digest).param("by", by).update() == 1;
    }

    /** Closed reviews of a class and unit, newest first. */
    List<Sealed> sealed(UUID classId, UUID unitId) {
        return jdbc.sql("""
                select r.review_id, r.week, s.sealed_on, s.content, s.digest, a.name, s.sealed_at
                from review r join review_seal s using (district_id, review_id)
                join adult a on a.district_id = s.district_id and a.adult_id = s.sealed_by
                where r.class_id = :class and r.unit_id = :unit order by r.week desc""")
                .param("class", classId).param("unit", unitId)
                .query((row, n) -> new Sealed(row.getObject(1, UUID.class), row.getObject(2, LocalDate.class),
                        row.getObject(3, LocalDate.class), row.getString(4), row.getString(5), row.getString(6),
                        row.getTimestamp(7).toInstant())).list();
    }

    /** Held while a choice or the seal is written, so that no choice slips in behind the seal. */
    void lock(UUID reviewId) {
        jdbc.sql("select pg_advisory_xact_lock(hashtextextended(:review, 0))").param("review", reviewId.toString())
                .query((row, n) -> 1).list();
    }
}
