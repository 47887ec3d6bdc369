package org.stepwell.roster;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Schools, adults, classes and children. */
@Repository
class RosterStore {
    private final JdbcClient jdbc;

    RosterStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** For work outside the server. */
    static RosterStore over(DataSource dataSource) {
        return new RosterStore(JdbcClient.create(dataSource));
    }

    void addDistrict(int districtId, String name, boolean sample) {
        jdbc.sql("insert into district (district_id, name, sample) values (:id, :name, :sample)")
                .param("id", districtId).param("name", name).param("sample", sample).update();
    }

    void addSchool(int districtId, UUID schoolId, String name, String zone) {
        jdbc.sql("insert into school (district_id, school_id, name, time_zone) values (:d, :id, :name, :zone)")
                .param("d", districtId).param("id", schoolId).param("name", name).param("zone", zone).update();
    }

    void addClass(int districtId, UUID classId, UUID schoolId, String name, String grade) {
        jdbc.sql("""
                insert into classroom (district_id, class_id, school_id, name, grade)
                values (:d, :id, :school, :name, :grade)""")
                .param("d", districtId).param("id", classId).param("school", schoolId).param("name", name)
                .param("grade", grade).update();
    }

    void addAdult(int districtId, UUID adultId, UUID schoolId, String signIn, String name, boolean lead) {
        jdbc.sql("""
                insert into adult (district_id, adult_id, school_id, sign_in, name, lead)
                values (:d, :id, :school, :signIn, :name, :lead)""")
                .param("d", districtId).param("id", adultId).param("school", schoolId).param("signIn", signIn)
                .param("name", name).param("lead", lead).update();
        jdbc.sql("insert into sign_in (name, district_id, adult_id) values (:name, :d, :id)")
                .param("name", signIn.toLowerCase(java.util.Locale.ROOT)).param("d", districtId)
                .param("id", adultId).update();
    }

    void addClassAdult(int districtId, UUID classId, UUID adultId, String role, LocalDate from) {
        jdbc.sql("""
                insert into class_adult (district_id, class_id, adult_id, role, starts_on)
                values (:d, :class, :adult, :role, :from)
                on conflict (district_id, class_id, adult_id, starts_on)
                    do update set role = excluded.role, ends_on = null, ended_at = null""")
                .param("d", districtId).param("class", classId).param("adult", adultId).param("role", role)
                .param("from", from).update();
    }

    /** Whether the transaction works for the sample. */
    boolean sample() {
        return jdbc.sql("select exists (select 1 from district where sample)").query(Boolean.class).single();
    }

    /** @param zone its time zone */
    record School(int districtId, UUID schoolId, String name, String zone) {}

    /** The schools of the district that the transaction works for. */
    List<School> schools() {
        return jdbc.sql("select district_id, school_id, name, time_zone from school order by name, school_id")
                .query((row, n) -> new School(row.getInt(1), row.getObject(2, UUID.class), row.getString(3),
                        row.getString(4)))
                .list();
    }

    /** Every class of a school, by name. */
    List<Classroom> classesOf(UUID schoolId) {
        return jdbc.sql("select class_id, name, grade from classroom where school_id = :school order by name")
                .param("school", schoolId)
                .query((row, n) -> new Classroom(row.getObject(1, UUID.class), row.getString(2), row.getString(3)))
                .list();
    }

    /** Names of every other child that shares a class with this one, seen by the reader or not. */
    Set<String> otherNames(UUID childId) {
        return new TreeSet<>(jdbc.sql("""
                select distinct unnest(array[other.given_name, other.family_name])
                from enrolment mine
                join enrolment theirs on theirs.district_id = mine.district_id and theirs.class_id = mine.class_id
                join child other on other.district_id = theirs.district_id and other.child_id = theirs.child_id
                where mine.child_id = :child and other.child_id <> :child""")
                .param("child", childId).query(String.class).list().stream().filter(name -> !name.isBlank()).toList());
    }

    Map<String, String> adults(UUID schoolId) {
        return jdbc.sql("select sign_in, name from adult where school_id = :school").param("school", schoolId)
                .query((row, n) -> Map.entry(row.getString(1), row.getString(2))).stream()
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    List<Classroom> classes(Set<UUID> whole, Set<UUID> children, LocalDate day) {
        return jdbc.sql("""
                select class_id, name, grade from classroom
                where class_id = any (:whole) or class_id in (
                    select class_id from enrolment where child_id = any (:children)
                      and (ends_on is null or ends_on >= :day))
                order by name""")
                .param("whole", whole.toArray(UUID[]::new)).param("children", children.toArray(UUID[]::new))
                .param("day", day)
                .query((row, n) -> new Classroom(row.getObject(1, UUID.class), row.getString(2), row.getString(3)))
                .list();
    }

    List<ChildRow> children(Set<UUID> children, LocalDate day) {
        return jdbc.sql("""
                select c.child_id, c.school_key, c.given_name, c.family_name, e.class_id, e.starts_on
                from child c join enrolment e using (district_id, child_id)
                where c.child_id = any (:children) and e.starts_on <= :day and (e.ends_on is null or e.ends_on >= :day)
                order by c.given_name, c.family_name, c.school_key""")
                .param("children", children.toArray(UUID[]::new)).param("day", day)
                .query((row, n) -> new ChildRow(row.getObject(1, UUID.class), row.getString(2), row.getString(3),
                        row.getString(4), row.getString(3), row.getObject(5, UUID.class),
                        row.getObject(6, LocalDate.class)))
                .list();
    }

    Optional<UUID> childByKey(String schoolKey) {
        return jdbc.sql("select child_id from child where school_key = :key").param("key", schoolKey)
                .query(UUID.class).optional();
    }

    boolean everIn(UUID classId, UUID childId) {
        return jdbc.sql("select exists (select 1 from enrolment where class_id = :class and child_id = :child)")
                .param("class", classId).param("child", childId).query(Boolean.class).single();
    }

    UUID addChild(int districtId, String schoolKey, String givenName, String familyName, String grade) {
        return jdbc.sql("""
                insert into child (district_id, school_key, given_name, family_name, grade)
                values (:d, :key, :given, :family, :grade) returning child_id""")
                .param("d", districtId).param("key", schoolKey).param("given", givenName)
                .param("family", familyName).param("grade", grade).query(UUID.class).single();
    }

    void renameChild(UUID childId, String givenName, String familyName, String grade) {
        jdbc.sql("update child set given_name = :given, family_name = :family, grade = :grade where child_id = :id")
                .param("given", givenName).param("family", familyName).param("grade", grade).param("id", childId)
                .update();
    }

    void enrol(int districtId, UUID classId, UUID childId, LocalDate from, @Nullable LocalDate to) {
        jdbc.sql("""
                insert into enrolment (district_id, class_id, child_id, starts_on, ends_on)
                values (:d, :class, :child, :from, :to)
                on conflict (district_id, class_id, child_id, starts_on) do update set ends_on = excluded.ends_on""")
                .param("d", districtId).param("class", classId).param("child", childId).param("from", from)
                .param("to", to).update();
    }

    boolean enrolled(UUID classId, UUID childId, LocalDate day) {
        return jdbc.sql("""
                select exists (select 1 from enrolment where class_id = :class and child_id = :child
                    and starts_on <= :day and (ends_on is null or ends_on >= :day))""")
                .param("class", classId).param("child", childId).param("day", day).query(Boolean.class).single();
    }

    List<RosterRow> export(UUID classId) {
        return jdbc.sql("""
                select c.school_key, c.given_name, c.family_name, c.grade, k.name, e.starts_on, e.ends_on
                from enrolment e join child c using (district_id, child_id) join classroom k using (district_id, class_id)
                where e.class_id = :class order by c.school_key, e.starts_on""")
                .param("class", classId)
                .query((row, n) -> new RosterRow(row.getString(1), row.getString(2), row.getString(3),
                        row.getString(4), row.getString(5), row.getObject(6, LocalDate.class),
                        row.getObject(7, LocalDate.class)))
                .list();
    }
}
