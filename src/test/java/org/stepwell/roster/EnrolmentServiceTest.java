package org.stepwell.roster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.context.SecurityContextHolder;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.EnrolmentService.Entry;
import org.stepwell.roster.Invitations.Role;

@SpringBootTest(classes = Application.class, properties = "STEPWELL_SAMPLE=off")
@Import({TestDatabase.InSpring.class, EnrolmentServiceTest.FixedClock.class})
class EnrolmentServiceTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    @TestConfiguration(proxyBeanMethods = false)
    static class FixedClock {
        @Bean
        Clock clock() {
            return Clock.fixed(Instant.parse("2026-03-02T15:00:00Z"), ZoneOffset.UTC);
        }
    }

    @Autowired
    private EnrolmentService enrolments;
    @Autowired
    private RosterService roster;
    @Autowired
    private DataSource dataSource;
    @Autowired
    private Clock clock;
    private Grown grown;
    private UUID room;

    @BeforeEach
    void founds() {
        grown = new Grown(dataSource, clock).terminal("t", Role.TEACHER, "Room 1").terminal("l", Role.LEAD, null)
                .terminal("u", Role.TEACHER, "Room 2");
        grown.as("t");
        room = roster.classes().getFirst().classId();
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    private UUID add(String given) {
        return enrolments.add(room, new Entry("", given, "", ""), null);
    }

    private static void wrong(String said, Runnable work) {
        assertThatThrownBy(work::run).isInstanceOf(EntryFault.Found.class).hasMessage(said);
    }

    @Test
    void aChildComesInWithAKeyMadeOrGivenAndAFirstDay() {
        UUID ilse = enrolments.add(room, new Entry("", " Ilse ", " Brandvold ", ""), null);
        enrolments.add(room, new Entry(" k-7 ", "Tane", "", "2"), LocalDate.of(2026, 3, 9));
        assertThat(enrolments.inClass(room)).satisfiesExactly(
                child -> {
                    assertThat(child.childId()).isEqualTo(ilse);
                    assertThat(child.name()).isEqualTo("Ilse Brandvold");
                    assertThat(child.schoolKey()).matches("c[0-9a-f]{8}");
                    assertThat(child.grade()).isEqualTo("1");
                    assertThat(child.startsOn()).isEqualTo(TODAY);
                    assertThat(child.endsOn()).isNull();
                },
                child -> {
                    assertThat(child.schoolKey()).isEqualTo("k-7");
                    assertThat(child.grade()).isEqualTo("2");
                    assertThat(child.startsOn()).isEqualTo(LocalDate.of(2026, 3, 9));
                });
        assertThat(roster.children(room)).extracting(ChildRow::givenName).as("who is here today")
                .containsExactly("Ilse");
    }

    @Test
    void namesTheFieldThatCannotBeTakenAndStoresNothing() {
        enrolments.add(room, new Entry("k-7", "Ilse", "", ""), null);
        wrong("given: blank", () -> enrolments.add(room, new Entry("", " ", "", ""), null));
        wrong("given: long", () -> enrolments.add(room, new Entry("", "x".repeat(101), "", ""), null));
        wrong("family: signs", () -> enrolments.add(room, new Entry("", "Tane", "a\0b", ""), null));
        wrong("grade: long", () -> enrolments.add(room, new Entry("", "Tane", "", "y".repeat(21)), null));
        wrong("key: taken", () -> enrolments.add(room, new Entry("k-7", "Tane", "", ""), null));
        wrong("key: long", () -> enrolments.add(room, new Entry("k".repeat(101), "Tane", "", ""), null));
        assertThat(enrolments.inClass(room)).hasSize(1);
    }

    @Test
    void theLastDayStillCountsAndCanBeTakenBack() {
        UUID child = add("Ilse");
        enrolments.end(room, child, TODAY);
        assertThat(roster.children(room)).hasSize(1);
        assertThat(enrolments.inClass(room).getFirst().endsOn()).isEqualTo(TODAY);
        wrong("day: day", () -> enrolments.end(room, child, TODAY.minusDays(1)));
        enrolments.end(room, child, null);
        assertThat(enrolments.inClass(room).getFirst().endsOn()).isNull();
    }

    @Test
    void whoLeftIsListedAndComesBackWithTheSameId() {
        UUID child = enrolments.add(room, new Entry("", "Ilse", "", ""), TODAY.minusDays(30));
        enrolments.end(room, child, TODAY.minusDays(1));
        assertThat(enrolments.inClass(room)).isEmpty();
        assertThat(enrolments.left(room)).singleElement().extracting(Enrolled::childId).isEqualTo(child);
        enrolments.back(room, child);
        assertThat(enrolments.left(room)).isEmpty();
        assertThat(enrolments.inClass(room)).singleElement().satisfies(back -> {
            assertThat(back.childId()).isEqualTo(child);
            assertThat(back.startsOn()).isEqualTo(TODAY);
        });
        assertThatThrownBy(() -> enrolments.back(room, child)).isInstanceOf(NotVisible.class);
    }

    @Test
    void aLeadMovesAChildOnAndATeacherOnlyBetweenOwnClasses() {
        UUID child = enrolments.add(room, new Entry("", "Ilse", "", ""), TODAY.minusDays(30));
        grown.as("l");
        UUID other = roster.classes().get(1).classId();
        grown.as("t");
        assertThatThrownBy(() -> enrolments.move(room, child, other, TODAY)).isInstanceOf(NotVisible.class);
        grown.as("l");
        wrong("day: day", () -> enrolments.move(room, child, other, TODAY.minusDays(30)));
        enrolments.move(room, child, other, TODAY);
        assertThat(enrolments.inClass(room)).isEmpty();
        assertThat(enrolments.left(room)).as("in another class").isEmpty();
        assertThat(enrolments.inClass(other)).singleElement().extracting(Enrolled::startsOn).isEqualTo(TODAY);
        grown.as("u");
        assertThat(roster.children()).extracting(ChildRow::childId).containsExactly(child);
        grown.as("t");
        assertThat(roster.children()).isEmpty();
    }

    @Test
    void anAdultOfAnotherClassChangesNothing() {
        UUID child = add("Ilse");
        grown.as("u");
        assertThatThrownBy(() -> add("Tane")).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> enrolments.end(room, child, TODAY)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> enrolments.correct(room, child, new Entry("", "X", "", "")))
                .isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> enrolments.inClass(room)).isInstanceOf(NotVisible.class);
        UUID own = roster.classes().getFirst().classId();
        assertThatThrownBy(() -> enrolments.correct(own, child, new Entry("", "X", "", "")))
                .isInstanceOf(NotVisible.class);
        grown.as("t");
        enrolments.correct(room, child, new Entry("", "Ilse-Marie", "Brandvold", "1"));
        assertThat(enrolments.inClass(room).getFirst().name()).isEqualTo("Ilse-Marie Brandvold");
    }
}
