package org.stepwell.roster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.stepwell.TestDatabase;
import org.stepwell.roster.Invitations.Invitation;
import org.stepwell.roster.Invitations.Role;

class InvitationsTest {
    private TestDatabase database;
    private Invitations invitations;

    @BeforeEach
    void opens() {
        database = TestDatabase.fresh();
        invitations = new Invitations(database.runTime(),
                Clock.fixed(Instant.parse("2026-03-02T03:00:00Z"), ZoneOffset.UTC));
    }

    @AfterEach
    void closes() {
        database.close();
    }

    private String add(String signIn, Role role, @Nullable String room, boolean newClass, @Nullable String school,
            @Nullable String zone) {
        return invitations.add(new Invitation(signIn, "Ana Ruiz", role, room, newClass, school, zone));
    }

    private String one(String sql) throws SQLException {
        try (Connection all = database.superuser(); var row = all.createStatement().executeQuery(sql)) {
            row.next();
            return String.valueOf(row.getString(1));
        }
    }

    @Test
    void theFirstAdultBringsSchoolAndClassAlongAndStartsOnTheSchoolsDay() throws SQLException {
        String password = add("ana@hill", Role.TEACHER, "Room 1", true, "Hill", "America/Chicago");
        assertThat(password).matches("([a-z2-9]{4}-){3}[a-z2-9]{4}");
        assertThat(one("select starts_on from class_adult where role = 'teacher'")).isEqualTo("2026-03-01");
        assertThat(one("select district_id from adult")).isEqualTo("2");
        assertThat(one("select one_time and expires_at = '2026-03-09T03:00:00Z' from credential")).isEqualTo("t");
        assertThat(one("select password_hash like '%" + password + "%' from credential")).isEqualTo("f");
    }

    @Test
    void laterAdultsJoinTheOnlySchoolAndAKnownClass() throws SQLException {
        add("ana@hill", Role.TEACHER, "Room 1", true, "Hill", "America/Chicago");
        add("bo@hill", Role.AIDE, "room 1", false, null, null);
        add("cy@hill", Role.LEAD, null, false, "hill", null);
        assertThat(one("select count(*) from classroom")).isEqualTo("1");
        assertThat(one("select count(*) from school")).isEqualTo("1");
        assertThat(one("select sign_in from adult where lead")).isEqualTo("cy@hill");
    }

    @Test
    void aSecondSchoolIsADistrictOfItsOwn() throws SQLException {
        add("ana@hill", Role.TEACHER, "Room 1", true, "Hill", "America/Chicago");
        add("dee@lake", Role.TEACHER, "Room 1", true, "Lake", "America/Denver");
        assertThat(one("select count(distinct district_id) from school")).isEqualTo("2");
        assertThatThrownBy(() -> add("eve@lake", Role.AIDE, "Room 1", false, null, null))
                .hasMessageContaining("--school").hasMessageContaining("Hill, Lake");
    }

    @Test
    void saysWhatIsMissingAndMakesNothing() throws SQLException {
        assertThatThrownBy(() -> add("ana@hill", Role.TEACHER, "Room 1", true, null, null))
                .hasMessageContaining("no school yet").hasMessageContaining("--time-zone");
        assertThatThrownBy(() -> add("ana@hill", Role.TEACHER, "Room 1", true, "Hill", null))
                .hasMessageContaining("time zone");
        assertThatThrownBy(() -> add("ana@hill", Role.TEACHER, "Room 1", true, "Hill", "Chicago"))
                .hasMessageContaining("\"Chicago\"").hasMessageContaining("America/Chicago");
        assertThatThrownBy(() -> add("ana@hill", Role.TEACHER, "Room 1", false, "Hill", "America/Chicago"))
                .hasMessageContaining("no class Room 1").hasMessageContaining("--new-class");
        assertThatThrownBy(() -> add("ana@hill", Role.TEACHER, null, false, "Hill", "America/Chicago"))
                .hasMessageContaining("--class");
        assertThatThrownBy(() -> add("ana@hill", Role.LEAD, "Room 1", false, "Hill", "America/Chicago"))
                .hasMessageContaining("leave --class out");
        assertThatThrownBy(() -> add("ana ruiz", Role.TEACHER, "Room 1", true, "Hill", "America/Chicago"))
                .hasMessageContaining("without spaces");
        assertThatThrownBy(() -> invitations.reset("ana@hill")).hasMessageContaining("Nobody signs in as ana@hill");
        assertThat(one("select count(*) from district")).isEqualTo("0");
        assertThat(one("select count(*) from adult")).isEqualTo("0");
    }

    @Test
    void refusesATakenNameInAnyCaseAndAnotherTimeZoneOfAKnownSchool() {
        add("ana@hill", Role.TEACHER, "Room 1", true, "Hill", "America/Chicago");
        assertThatThrownBy(() -> add("Ana@Hill", Role.TEACHER, "Room 1", false, null, null))
                .hasMessageContaining("adult reset");
        assertThatThrownBy(() -> add("bo@hill", Role.TEACHER, "Room 1", false, "Hill", "America/Denver"))
                .hasMessageContaining("America/Chicago");
    }
}
