package org.stepwell.roster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.mock.env.MockEnvironment;
import org.stepwell.TestDatabase;
import org.stepwell.platform.security.AccountService;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.roster.Invitations.Invitation;
import org.stepwell.roster.Invitations.Role;
import org.stepwell.roster.SetUpService.Outcome;
import org.stepwell.roster.SetUpService.Wish;

class SetUpTest {
    /** Still Sunday evening in Chicago. */
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-02T03:00:00Z"), ZoneOffset.UTC);

    private TestDatabase database;

    @BeforeEach
    void opens() {
        database = TestDatabase.fresh();
    }

    @AfterEach
    void closes() {
        database.close();
    }

    /** One run of the program on the store. */
    private final class Run {
        final AccountService accounts = AccountService.over(database.runTime(), CLOCK);
        final SetUpCode code = new SetUpCode(accounts);
        final SetUpService service = new SetUpService(RosterStore.over(database.runTime()), accounts, code,
                DistrictScope.transactions(database.runTime()), CLOCK);

        Outcome found(String typed) {
            return service.found(new Wish(typed, "Alder Hill", "America/Chicago", "Room 1", "Ana Ruiz", "ana@hill",
                    "seven quiet herons"));
        }
    }

    private String one(String sql) throws SQLException {
        try (Connection all = database.superuser(); var row = all.createStatement().executeQuery(sql)) {
            row.next();
            return String.valueOf(row.getString(1));
        }
    }

    @Test
    void makesSchoolClassAndTeacherForTheCodeAndOnlyOnce() throws SQLException {
        Run run = new Run();
        String code = run.code.now().orElseThrow();
        assertThat(code.replace("-", "")).hasSize(16);
        assertThat(run.found(" " + code.toUpperCase(java.util.Locale.ROOT).replace("-", " ") + " "))
                .isEqualTo(Outcome.MADE);
        assertThat(one("select s.time_zone || ' ' || k.name || ' ' || a.name || ' ' || ca.role || ' ' || ca.starts_on"
                + " from school s join classroom k using (school_id) join class_adult ca using (class_id)"
                + " join adult a using (adult_id)")).isEqualTo("America/Chicago Room 1 Ana Ruiz teacher 2026-03-01");
        assertThat(one("select one_time from credential")).isEqualTo("f");
        assertThat(run.found(code)).isEqualTo(Outcome.DONE_BEFORE);
        assertThat(run.service.open()).isFalse();
        assertThat(run.code.fits("")).isFalse();
    }

    @Test
    void eachRunHasACodeOfItsOwnAndTheFormerOneOpensNothing() {
        String former = new Run().code.now().orElseThrow();
        Run next = new Run();
        assertThat(next.code.now()).isNotEqualTo(java.util.Optional.of(former));
        assertThat(next.found(former)).isEqualTo(Outcome.WRONG_CODE);
        assertThat(next.found("")).isEqualTo(Outcome.WRONG_CODE);
        assertThat(next.found("x".repeat(1_000_000))).isEqualTo(Outcome.WRONG_CODE);
        assertThat(next.service.open()).isTrue();
    }

    @Test
    void ofManyAtTheSameTimeOnTwoServersOneMakesTheSchool() throws Exception {
        List<Callable<Outcome>> tries = new ArrayList<>();
        CyclicBarrier together = new CyclicBarrier(6);
        for (Run run : List.of(new Run(), new Run())) {
            String code = run.code.now().orElseThrow();
            for (int i = 0; i < 3; i++) {
                tries.add(() -> {
                    together.await();
                    return run.found(code);
                });
            }
        }
        List<Outcome> outcomes = new ArrayList<>();
        try (var threads = Executors.newFixedThreadPool(6)) {
            for (var done : threads.invokeAll(tries)) {
                outcomes.add(done.get());
            }
        }
        assertThat(outcomes).containsOnlyOnce(Outcome.MADE).doesNotContain(Outcome.WRONG_CODE);
        assertThat(one("select count(*) from school")).isEqualTo("1");
        assertThat(one("select count(*) from adult")).isEqualTo("1");
    }

    @ParameterizedTest
    @CsvSource({"'',America/Chicago,Room 1,Ana,ana@hill,seven quiet herons,school,blank",
        "Alder,'',Room 1,Ana,ana@hill,seven quiet herons,zone,blank",
        "Alder,Chicago,Room 1,Ana,ana@hill,seven quiet herons,zone,zone",
        "Alder,+06:00,Room 1,Ana,ana@hill,seven quiet herons,zone,zone",
        "Alder,America/Chicago,'  ',Ana,ana@hill,seven quiet herons,room,blank",
        "Alder,America/Chicago,Room 1,'',ana@hill,seven quiet herons,name,blank",
        "Alder,America/Chicago,Room 1,Ana,ana hill,seven quiet herons,username,signs",
        "Alder,America/Chicago,Room 1,Ana,ana@hill,short,chosen,too_short",
        "Alder,America/Chicago,Room 1,Ana,ana@hill,password12345678,chosen,common",
        "Alder,America/Chicago,Room 1,Ana,ana@hill,here at alder we sing,chosen,too_near"})
    void namesTheFieldThatCannotBeTakenAndMakesNothing(String school, String zone, String room, String name,
            String signIn, String password, String field, String reason) throws SQLException {
        Run run = new Run();
        String code = run.code.now().orElseThrow();
        assertThatThrownBy(() -> run.service.found(new Wish(code, school, zone, room, name, signIn, password)))
                .isInstanceOfSatisfying(EntryFault.Found.class,
                        found -> assertThat(found.fault()).isEqualTo(new EntryFault(field, reason)));
        assertThat(one("select count(*) from district")).isEqualTo("0");
        assertThat(run.found(code)).isEqualTo(Outcome.MADE);
    }

    @Test
    void longAndUnprintableNamesAreNamedToo() {
        Run run = new Run();
        String code = run.code.now().orElseThrow();
        assertThatThrownBy(() -> run.service.found(new Wish(code, "x".repeat(201), "America/Chicago", "Room 1", "Ana",
                "ana@hill", "seven quiet herons"))).hasMessage("school: long");
        assertThatThrownBy(() -> run.service.found(new Wish(code, "A\0b", "America/Chicago", "Room 1", "Ana",
                "ana@hill", "seven quiet herons"))).hasMessage("school: signs");
    }

    @Test
    void theTerminalSaysAddressAndCodeUntilSomebodyCanSignIn() {
        Run run = new Run();
        SetUpNotice notice = new SetUpNotice(run.code, new MockEnvironment()
                .withProperty("local.server.port", "4711").withProperty("STEPWELL_BIND", "127.0.0.1"));
        assertThat(notice.lines()).anySatisfy(line -> assertThat(line).contains("http://localhost:4711/set-up"))
                .anySatisfy(line -> assertThat(line).contains(run.code.now().orElseThrow()))
                .anySatisfy(line -> assertThat(line).contains("./stepwell adult add"));
        new Invitations(database.runTime(), CLOCK).add(
                new Invitation("ana@hill", "Ana Ruiz", Role.TEACHER, "Room 1", true, "Hill", "America/Chicago"));
        assertThat(notice.lines()).isEmpty();
        assertThat(run.found("anything")).isEqualTo(Outcome.DONE_BEFORE);
    }
}
