package org.stepwell.grouping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.core.grouping.Aim;
import org.stepwell.core.grouping.GroupChild;
import org.stepwell.core.grouping.GroupFinder;
import org.stepwell.core.grouping.Grouping;
import org.stepwell.core.grouping.Proposal;
import org.stepwell.core.grouping.Wish;
import org.stepwell.grouping.Seating.Group;
import org.stepwell.grouping.Seating.Kind;
import org.stepwell.grouping.Seating.Place;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.RosterService;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class GroupingServiceTest {
    @Autowired
    private GroupingService groupings;
    @Autowired
    private RosterService roster;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;

    private UUID room;
    private LocalDate today;

    @BeforeEach
    void signsIn() {
        SampleSignIn.as("teacher@sample", jdbc, transaction);
        room = roster.classes().getFirst().classId();
        today = groupings.picture(room).day();
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    private Grouping proposed(int groups) {
        GroupsPicture picture = groupings.picture(room);
        return ((Proposal.Groups) GroupFinder.propose(picture.task(groups, Aim.FOCUS, Map.of(), new TreeSet<>())))
                .grouping();
    }

    private void save(LocalDate on, Kind kind, Map<String, Integer> groupOf, int groups, String task) {
        Map<String, Place> places = new TreeMap<>();
        groupOf.forEach((child, group) -> places.put(child, new Place(group, false, "why")));
        List<Group> all = new ArrayList<>();
        for (int g = 1; g <= groups; g++) {
            all.add(new Group(g, "T05", task, g == 2));
        }
        groupings.save(room, on, kind, all, places);
    }

    @Test
    @Order(1)
    void theSampleClassIsGroupedByWhatItWorksOnNow() {
        GroupsPicture picture = groupings.picture(room);
        assertThat(picture.unit()).isTrue();
        assertThat(picture.children()).hasSameSizeAs(picture.rows()).allMatch(c -> c.tier() != null
                && c.focus() != null);
        assertThat(picture.children()).extracting(GroupChild::estimate).anyMatch(e -> e != null);
        assertThat(picture.usualGroups()).isEqualTo((picture.rows().size() + 4) / 5);
        assertThat(proposed(5).groupOf()).hasSize(picture.rows().size());
    }

    @Test
    @Order(2)
    void whatIsSavedLastHoldsAndTheOldStaysToBeRead() {
        Map<String, Integer> first = proposed(5).groupOf();
        save(today, Kind.GROUPS, first, 5, "17");
        Map<String, Integer> second = new TreeMap<>(first);
        second.replaceAll((child, group) -> 6 - group);
        save(today, Kind.GROUPS, second, 5, "13");
        Seating now = groupings.seating(room, today).orElseThrow();
        assertThat(now.groupOf()).isEqualTo(second);
        assertThat(now.groups()).hasSize(5).first().isEqualTo(new Group(1, "T05", "13", false));
        assertThat(now.groups().get(1).secondAdult()).isTrue();
        assertThat(groupings.history(room)).extracting(Seating::groupOf).startsWith(new TreeMap<>(second),
                new TreeMap<>(first));
    }

    @Test
    @Order(3)
    void groupsOfOneDayHoldOnThatDayOnly() {
        Map<String, Integer> usual = groupings.seating(room, today).orElseThrow().groupOf();
        Map<String, Integer> swapped = new TreeMap<>(usual);
        swapped.replaceAll((child, group) -> group % 5 + 1);
        save(today.plusDays(1), Kind.DAY, swapped, 5, "12");
        assertThat(groupings.seating(room, today).orElseThrow().groupOf()).isEqualTo(usual);
        assertThat(groupings.seating(room, today.plusDays(1)).orElseThrow().groupOf()).isEqualTo(swapped);
        assertThat(groupings.seating(room, today.plusDays(2)).orElseThrow().groupOf()).isEqualTo(usual);
    }

    @Test
    @Order(4)
    void companyIsCountedOverGroupingsThatWentOn() {
        Map<String, Integer> usual = groupings.seating(room, today).orElseThrow().groupOf();
        Map<String, Integer> turned = new TreeMap<>();
        List<String> ids = new ArrayList<>(usual.keySet());
        ids.sort(java.util.Comparator.comparing(usual::get));
        for (int i = 0; i < ids.size(); i++) {
            turned.put(ids.get(i), i % 5 + 1);
        }
        savedOnceFor(today.minusDays(30), turned);
        savedOnceFor(today.minusDays(21), usual);
        savedOnceFor(today.minusDays(14), usual);
        Map<String, Integer> renumbered = new TreeMap<>(usual);
        renumbered.replaceAll((child, group) -> group % 5 + 1);
        savedOnceFor(today.minusDays(7), renumbered);
        GroupsPicture picture = groupings.picture(room);
        assertThat(picture.children()).allMatch(c -> c.stays() == 3 && c.lastGroup() != null);
        assertThat(picture.since().values()).containsOnly(today.minusDays(21));
        save(today, Kind.GROUPS, turned, 5, "");
        assertThat(groupings.picture(room).children()).as("what was just saved is not last time")
                .isEqualTo(picture.children());
        savedOnceFor(today.minusDays(1), turned);
        assertThat(groupings.picture(room).children()).allMatch(c -> c.stays() == 1);
    }

    /** As saved on an earlier day; the service itself refuses days that are past. */
    private void savedOnceFor(LocalDate day, Map<String, Integer> groupOf) {
        save(today, Kind.GROUPS, groupOf, 5, "");
        DistrictScope.in(1, () -> transaction.execute(status -> {
            UUID id = UUID.randomUUID();
            jdbc.sql("insert into seating (district_id, seating_id, class_id, for_on, kind, groups, saved_by)"
                    + " select district_id, :id, class_id, :day, kind, groups, saved_by from seating"
                    + " order by saved_at desc limit 1").param("id", id).param("day", day).update();
            return jdbc.sql("insert into seating_place (district_id, seating_id, child_id, group_no)"
                    + " select district_id, :id, child_id, group_no from seating_place where seating_id ="
                    + " (select seating_id from seating where seating_id <> :id order by saved_at desc limit 1)")
                    .param("id", id).update();
        }));
    }

    @Test
    @Order(5)
    void wishesHoldUntilTheyAreTakenBack() {
        List<String> ids = groupings.picture(room).children().stream().map(GroupChild::id).toList();
        Wish apart = new Wish.Apart(ids.get(0), ids.get(1));
        Wish away = new Wish.AwayAt(ids.get(2), 3);
        Wish second = new Wish.WithSecondAdult(ids.get(3));
        Wish together = new Wish.Together(ids.get(4), ids.get(5));
        for (Wish wish : List.of(apart, away, second, together)) {
            groupings.wish(room, wish, true);
        }
        groupings.wish(room, new Wish.Apart(ids.get(1), ids.get(0)), true);
        assertThat(groupings.picture(room).wishes()).hasSize(4).contains(away, second);
        groupings.wish(room, new Wish.Apart(ids.get(1), ids.get(0)), false);
        groupings.wish(room, away, false);
        assertThat(groupings.picture(room).wishes()).hasSize(2).contains(second);
        groupings.wish(room, away, true);
        assertThat(groupings.picture(room).wishes()).hasSize(3).contains(away);
    }

    @Test
    @Order(6)
    void aSpecialistReadsTheSharedChildrenAndDecidesNothing() {
        Map<String, Integer> usual = groupings.seating(room, today).orElseThrow().groupOf();
        SampleSignIn.as("specialist@sample", jdbc, transaction);
        Seating seen = groupings.seating(room, today).orElseThrow();
        assertThat(seen.places().keySet()).isNotEmpty().hasSizeLessThan(usual.size())
                .containsExactlyInAnyOrderElementsOf(roster.children(room).stream().map(c -> c.schoolKey()).toList());
        assertThatThrownBy(() -> groupings.picture(room)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> save(today, Kind.GROUPS, usual, 5, "")).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> groupings.wish(room, new Wish.WithSecondAdult(seen.places().firstKey()), true))
                .isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> groupings.history(room)).isInstanceOf(NotVisible.class);
    }

    @Test
    @Order(7)
    void aPlaceIsNeededForEveryChildAndNoDayThatIsPast() {
        Map<String, Integer> some = new TreeMap<>(groupings.seating(room, today).orElseThrow().groupOf());
        assertThatThrownBy(() -> save(today.minusDays(1), Kind.GROUPS, some, 5, "")).hasMessageContaining("past");
        assertThatThrownBy(() -> save(today, Kind.GROUPS, some, 4, "")).hasMessageContaining("place");
        some.remove(some.keySet().iterator().next());
        assertThatThrownBy(() -> save(today, Kind.GROUPS, some, 5, "")).hasMessageContaining("place");
    }

    @Test
    @Order(8)
    void nothingSavedIsEverChanged() {
        for (String table : List.of("seating", "seating_group", "seating_place", "grouping_wish")) {
            assertThatThrownBy(() -> DistrictScope.in(1, () -> transaction.execute(
                    status -> jdbc.sql("update " + table + " set district_id = district_id").update())))
                    .as(table).isInstanceOf(DataAccessException.class);
        }
    }
}
