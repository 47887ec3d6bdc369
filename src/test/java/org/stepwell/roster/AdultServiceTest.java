package org.stepwell.roster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.locks.LockSupport;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.AdultService.Refusal;
import org.stepwell.roster.AdultService.Refused;
import org.stepwell.roster.Invitations.Role;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE=off")
@Import({TestDatabase.InSpring.class, AdultServiceTest.MovedClock.class})
class AdultServiceTest {
    private static final String OWN = "seven quiet herons";
    private static final Instant START = Instant.parse("2026-03-02T15:00:00Z");
    private static Instant now = START;

    @TestConfiguration(proxyBeanMethods = false)
    static class MovedClock {
        @Bean
        Clock clock() {
            return new Clock() {
                @Override
                public ZoneId getZone() {
                    return ZoneId.of("UTC");
                }

                @Override
                public Clock withZone(ZoneId zone) {
                    return Clock.fixed(now, zone);
                }

                @Override
                public Instant instant() {
                    return now;
                }
            };
        }
    }

    @LocalServerPort
    private int port;
    @Autowired
    private AdultService adults;
    @Autowired
    private RosterService roster;
    @Autowired
    private EnrolmentService enrolments;
    @Autowired
    private Access access;
    @Autowired
    private DataSource dataSource;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    private Grown grown;
    private String school = "";
    private UUID room = UUID.randomUUID();

    /** Each test has a school of its own: teacher t@, lead l@, second class Room 2 of u@. */
    @BeforeEach
    void founds() {
        now = START;
        grown = new Grown(dataSource, Clock.fixed(now, ZoneId.of("UTC")));
        school = grown.school();
        grown.terminal("t", Role.TEACHER, "Room 1").terminal("l", Role.LEAD, null)
                .terminal("u", Role.TEACHER, "Room 2");
        as("t");
        room = roster.classes().getFirst().classId();
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    private String in(String who) {
        return grown.in(who);
    }

    private SignedIn as(String who) {
        return grown.as(who);
    }

    private UUID id(String who) {
        return adults.adults(room).stream().filter(a -> a.signIn().equals(in(who))).findFirst().orElseThrow().adultId();
    }

    private void enters(Role role, String who) {
        assertThat(adults.accept(adults.invite(room, role, who).code(), who, in(who), OWN)).isTrue();
    }

    private static void refuses(Refusal refusal, Runnable work) {
        assertThatThrownBy(work::run).isInstanceOfSatisfying(Refused.class,
                refused -> assertThat(refused.refusal()).isEqualTo(refusal));
    }

    @Test
    void aCodeMakesOneAccountInTheRoleItWasGivenFor() {
        AdultService.Slip slip = adults.invite(room, Role.AIDE, "  Bo Lund ");
        assertThat(slip.code()).matches("\\d+-([a-z2-9]{4}-){3}[a-z2-9]{4}");
        assertThat(slip.lastDay()).isEqualTo(LocalDate.of(2026, 3, 15));
        assertThat(adults.open(room)).singleElement().satisfies(open -> {
            assertThat(open.forName()).isEqualTo("Bo Lund");
            assertThat(open.role()).isEqualTo(Role.AIDE);
        });
        assertThat(adults.accept(" " + slip.code().toUpperCase(Locale.ROOT) + " ", "Bo Lund", in("bo"), OWN)).isTrue();
        assertThat(adults.open(room)).isEmpty();
        assertThat(adults.adults(room)).extracting(ClassAdult::name, ClassAdult::role)
                .contains(org.assertj.core.groups.Tuple.tuple("Bo Lund", Role.AIDE));
        assertThat(adults.accept(slip.code(), "Bo again", in("bo2"), OWN)).as("used").isFalse();
        as("bo");
        assertThat(access.classes()).containsExactly(room);
        assertThat(adults.mayInvite(room)).isEmpty();
    }

    @Test
    void theCodeItselfIsKeptNowhere() {
        String code = adults.invite(room, Role.AIDE, "Bo").code();
        String kept = transaction.execute(status -> jdbc.sql("select string_agg(i::text, ' ') from invitation i")
                .query(String.class).single());
        assertThat(kept).doesNotContain(code).doesNotContain(code.substring(code.indexOf('-') + 1));
    }

    @Test
    void aCodeEndsAfterFourteenDaysOrWhenTakenBack() {
        String old = adults.invite(room, Role.AIDE, "Bo").code();
        now = START.plus(Duration.ofDays(14)).minusSeconds(1);
        AdultService.Slip back = adults.invite(room, Role.AIDE, "Cy");
        assertThat(adults.open(room)).hasSize(2);
        now = START.plus(Duration.ofDays(14));
        assertThat(adults.accept(old, "Bo", in("bo"), OWN)).isFalse();
        UUID open = adults.open(room).getFirst().invitationId();
        adults.revoke(room, open);
        assertThat(adults.accept(back.code(), "Cy", in("cy"), OWN)).isFalse();
        refuses(Refusal.OVER, () -> adults.revoke(room, open));
    }

    @Test
    void aFaultInTheFormKeepsTheCodeGood() {
        String code = adults.invite(room, Role.AIDE, "Bo").code();
        assertThatThrownBy(() -> adults.accept(code, "Bo", in("t"), OWN)).hasMessage("username: taken");
        assertThatThrownBy(() -> adults.accept(code, "", in("bo"), OWN)).hasMessage("name: blank");
        assertThatThrownBy(() -> adults.accept(code, "Bo", in("bo"), "short")).hasMessage("chosen: too_short");
        assertThatThrownBy(() -> adults.accept(code, "Bo", in("bo"), "we are in " + school))
                .hasMessage("chosen: too_near");
        assertThat(adults.accept(code, "Bo", in("bo"), OWN)).isTrue();
        for (String none : List.of("", "x", "1-", "999999999-abcd", "99999999999-abcd-abcd", "2-" + "x".repeat(90))) {
            assertThat(adults.accept(none, "Bo", in("bo3"), OWN)).as(none).isFalse();
        }
    }

    @Test
    void twoWhoUseTheSameCodeAtOnceMakeOneAccount() throws Exception {
        String code = adults.invite(room, Role.AIDE, "Bo").code();
        CyclicBarrier together = new CyclicBarrier(4);
        List<Callable<Boolean>> tries = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            String name = in("bo" + i);
            tries.add(() -> {
                together.await();
                return adults.accept(code, "Bo", name, OWN);
            });
        }
        List<Boolean> made = new ArrayList<>();
        try (var threads = Executors.newFixedThreadPool(4)) {
            for (var done : threads.invokeAll(tries)) {
                made.add(done.get());
            }
        }
        assertThat(made).containsOnlyOnce(true);
        assertThat(adults.adults(room)).filteredOn(a -> a.role() == Role.AIDE).hasSize(1);
    }

    @Test
    void aTeacherLetsInHelpersOfTheOwnClassAndALeadEverybody() {
        assertThat(adults.mayInvite(room)).containsExactlyInAnyOrder(Role.CO_TEACHER, Role.AIDE, Role.SPECIALIST);
        assertThatThrownBy(() -> adults.invite(room, Role.TEACHER, "Bo")).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> adults.invite(room, Role.LEAD, "Bo")).isInstanceOf(NotVisible.class);
        enters(Role.CO_TEACHER, "co");
        as("l");
        assertThat(adults.mayInvite(room)).containsExactlyInAnyOrder(Role.values());
        enters(Role.TEACHER, "t2");
        enters(Role.LEAD, "l2");
        String toTeach = adults.invite(room, Role.TEACHER, "Di").code();
        as("t");
        assertThat(adults.open(room)).as("a teacher neither sees nor takes back what she may not give").isEmpty();
        as("co");
        assertThatThrownBy(() -> adults.invite(room, Role.AIDE, "Bo")).isInstanceOf(NotVisible.class);
        as("u");
        assertThatThrownBy(() -> adults.invite(room, Role.AIDE, "Bo")).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> adults.adults(room)).isInstanceOf(NotVisible.class);
        assertThat(toTeach).isNotEmpty();
    }

    @Test
    void endedAccessIsOverAtOnceWithTheOpenSessionThoughTheDayStillCounts() {
        enters(Role.AIDE, "bo");
        UUID child = enrolments.add(room, new EnrolmentService.Entry("", "Ilse", "", ""), null);
        ApiClient open = new ApiClient(port);
        open.signIn(in("bo"), OWN);
        assertThat(open.get("/api/children").body()).contains("Ilse");
        adults.end(room, id("bo"));
        assertThat(open.get("/api/children").statusCode()).isEqualTo(401);
        assertThat(open.signIn(in("bo"), OWN).statusCode()).isEqualTo(302);
        assertThat(open.get("/api/children").body()).isEqualTo("[]");
        as("bo");
        assertThat(access.classes()).isEmpty();
        assertThat(access.children()).isEmpty();
        assertThat(access.childrenOn(LocalDate.of(2026, 3, 2))).as("looks of this morning").containsExactly(child);
        as("t");
        assertThat(adults.adults(room)).extracting(ClassAdult::signIn).doesNotContain(in("bo"));
        adults.addKnown(room, in("bo").toUpperCase(Locale.ROOT), Role.CO_TEACHER);
        assertThat(adults.adults(room)).anyMatch(a -> a.signIn().equals(in("bo")) && a.role() == Role.CO_TEACHER);
        as("bo");
        assertThat(access.children()).containsExactly(child);
    }

    @Test
    void whatWasSharedOfTheClassEndsWithTheAccess() {
        enters(Role.SPECIALIST, "sp");
        UUID child = enrolments.add(room, new EnrolmentService.Entry("", "Ilse", "", ""), null);
        UUID specialist = id("sp");
        access.grant(as("t").districtId(), specialist, child, "reading along", LocalDate.of(2026, 3, 2),
                LocalDate.of(2026, 6, 1));
        as("sp");
        assertThat(access.children()).containsExactly(child);
        as("t");
        adults.end(room, specialist);
        as("sp");
        assertThat(access.children()).isEmpty();
    }

    @Test
    void aClassKeepsItsLastTeacher() {
        refuses(Refusal.LAST_TEACHER, () -> adults.end(room, id("t")));
        as("l");
        refuses(Refusal.LAST_TEACHER, () -> adults.end(room, id("t")));
        enters(Role.TEACHER, "t2");
        as("t2");
        assertThatThrownBy(() -> adults.end(room, id("t"))).as("only a lead").isInstanceOf(NotVisible.class);
        as("t");
        adults.end(room, id("t"));
        as("t2");
        refuses(Refusal.LAST_TEACHER, () -> adults.end(room, id("t2")));
    }

    @Test
    void twoTeachersWhoLeaveAtOnceLeaveOneBehind() throws Exception {
        as("l");
        enters(Role.TEACHER, "t2");
        UUID first = id("t");
        UUID second = id("t2");
        try (var threads = Executors.newSingleThreadExecutor()) {
            as("t");
            Future<Boolean> other = transaction.execute(status -> {
                adults.end(room, first);
                Future<Boolean> leaving = threads.submit(() -> leaves("t2", second));
                while (!leaving.isDone() && jdbc.sql("select count(*) from pg_locks where not granted")
                        .query(Integer.class).single() == 0) {
                    LockSupport.parkNanos(Duration.ofMillis(10).toNanos());
                }
                return leaving;
            });
            assertThat(Objects.requireNonNull(other).get()).as("the second stays").isFalse();
        }
        as("l");
        assertThat(adults.adults(room)).filteredOn(a -> a.role() == Role.TEACHER)
                .extracting(ClassAdult::adultId).containsExactly(second);
    }

    private boolean leaves(String who, UUID adult) {
        as(who);
        try {
            adults.end(room, adult);
            return true;
        } catch (Refused stays) {
            return false;
        }
    }

    @Test
    void anAdultOfTheSchoolJoinsBySignInNameAndNobodyFromElsewhere() {
        adults.addKnown(room, in("u"), Role.SPECIALIST);
        refuses(Refusal.IN_CLASS, () -> adults.addKnown(room, in("u"), Role.AIDE));
        refuses(Refusal.NOBODY, () -> adults.addKnown(room, "nobody@here", Role.AIDE));
        refuses(Refusal.NAME, () -> adults.invite(room, Role.AIDE, "  "));
        assertThatThrownBy(() -> adults.addKnown(room, in("u"), Role.TEACHER)).isInstanceOf(NotVisible.class);
    }
}
