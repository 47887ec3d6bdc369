package org.stepwell.records;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Periods of a school, children whose time is over, and what went. Reads and sets; {@link ErasureStore} erases. */
@Repository
class RetentionStore {
    /**
     * Children who are in no class of the district any more and were in this school last, with whether a request waits;
     * as {@code ErasureStore} holds.
     */
    private static final String LEFT = """
            select c.child_id, c.school_key, trim(c.given_name || ' ' || c.family_name), max(e.ends_on),
              exists (select from family_request q where q.district_id = c.district_id and q.child_id = c.child_id
                and coalesce((select s.kind from family_request_step s where s.district_id = q.district_id
                  and s.request_id = q.request_id order by s.step desc limit 1), 'hearing_asked') = 'hearing_asked')
            from child c join enrolment e using (district_id, child_id) join classroom r using (district_id, class_id)
            group by c.district_id, c.child_id
            having bool_and(e.ends_on is not null and e.ends_on < :today)
              and (array_agg(r.school_id order by e.ends_on desc))[1] = :school
            order by max(e.ends_on), c.school_key""";

    private final JdbcClient jdbc;

    RetentionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Months by kind; a kind without a period is missing. */
    Map<RetentionKind, Integer> periods(UUID schoolId) {
        Map<RetentionKind, Integer> periods = new EnumMap<>(RetentionKind.class);
        jdbc.sql("select distinct on (kind) kind, months from retention_period where school_id = :school"
                + " order by kind, version desc").param("school", schoolId).query(row -> {
                    Integer months = row.getObject(2, Integer.class);
                    if (months != null) {
                        periods.put(RetentionKind.of(row.getString(1)), months);
                    }
                });
        return periods;
    }

    void set(int districtId, UUID schoolId, RetentionKind kind, @Nullable Integer months, UUID by) {
        jdbc.sql("""
                insert into retention_period (district_id, school_id, kind, version, months, set_by)
                select :district, :school, :kind, coalesce(max(version), 0) + 1, cast(:months as int), :by
                from retention_period where school_id = :school and kind = :kind""")
                .param("district", districtId).param("school", schoolId).param("kind", kind.code())
                .param("months", months).param("by", by).update();
    }

    /** What is over on this day, by kind and then by last day. */
    List<RetentionDue> due(UUID schoolId, Map<RetentionKind, Integer> periods, LocalDate today) {
        List<RetentionDue> left = jdbc.sql(LEFT).param("school", schoolId).param("today", today)
                .query((row, n) -> new RetentionDue(RetentionKind.CHILD, row.getObject(1, UUID.class), row.getString(2),
                        row.getString(3), row.getObject(4, LocalDate.class), 0, row.getBoolean(5))).list();
        List<RetentionDue> due = new ArrayList<>();
        periods.forEach((kind, months) -> left.stream().filter(c -> !c.lastDay().plusMonths(months).isAfter(today))
                .map(c -> new RetentionDue(kind, c.childId(), c.schoolKey(), c.name(), c.lastDay(),
                        rows(kind, c.childId()), c.held()))
                .filter(c -> c.rows() > 0).forEach(due::add));
        return due;
    }

    private int rows(RetentionKind kind, UUID childId) {
        return kind.records().stream().mapToInt(record -> jdbc.sql("select count(*) from " + record.table()
                + " t where " + record.where()).param("child", childId).query(Integer.class).single()).sum();
    }

    /** The newest runs of a school. */
    List<RetentionRun> runs(UUID schoolId, ZoneId zone, int most) {
        return jdbc.sql("""
                select r.kind, r.many, r.row_count, a.name, r.ran_at
                from retention_run r join adult a on a.district_id = r.district_id and a.adult_id = r.ordered_by
                where r.school_id = :school order by r.ran_at desc limit :most""").param("school", schoolId)
                .param("most", most).query((row, n) -> new RetentionRun(RetentionKind.of(row.getString(1)),
                        row.getInt(2), row.getInt(3), row.getString(4),
                        row.getTimestamp(5).toInstant().atZone(zone).toOffsetDateTime())).list();
    }
}
