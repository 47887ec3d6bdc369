package org.stepwell.roster;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Stays of children in classes, as the people's list shows them. */
@Repository
class EnrolmentStore {
    private static final String STAYS = """
            select c.child_id, c.school_key, c.given_name, c.family_name, c.grade, e.starts_on, e.ends_on
            from enrolment e join child c using (district_id, child_id)
            where e.class_id = :class and""";
    private static final String BY_NAME = " order by c.given_name, c.family_name, c.school_key, e.starts_on";

    private final JdbcClient jdbc;

    EnrolmentStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Enrolled> inClass(UUID classId, LocalDate day) {
        return stays(STAYS + " (e.ends_on is null or e.ends_on >= :day)" + BY_NAME, classId, day);
    }

    /** The last stay of each child who has none now or to come, in whatever class. */
    List<Enrolled> left(UUID classId, LocalDate day) {
        return stays(STAYS + " " + """
                e.ends_on < :day
                  and not exists (select 1 from enrolment o where o.child_id = e.child_id
                      and (o.ends_on is null or o.ends_on >= :day))
                  and not exists (select 1 from enrolment l where l.child_id = e.child_id and l.class_id = e.class_id
                      and l.starts_on > e.starts_on)""" + BY_NAME, classId, day);
    }

    private List<Enrolled> stays(String sql, UUID classId, LocalDate day) {
        return jdbc.sql(sql).param("class", classId).param("day", day)
                .query((row, n) -> new Enrolled(row.getObject(1, UUID.class), row.getString(2), row.getString(3),
                        row.getString(4), row.getString(5), row.getObject(6, LocalDate.class),
                        row.getObject(7, LocalDate.class)))
                .list();
    }
}
