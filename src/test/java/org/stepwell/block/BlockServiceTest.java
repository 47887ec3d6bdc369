package org.stepwell.block;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.rotation.DayPlan;
import org.stepwell.core.rotation.LostTime;
import org.stepwell.core.rotation.Station;
import org.stepwell.core.rotation.Stop;
import org.stepwell.core.wording.Language;
import org.stepwell.grouping.GroupingService;
import org.stepwell.grouping.Seating.Group;
import org.stepwell.grouping.Seating.Kind;
import org.stepwell.grouping.Seating.Place;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=block"})
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class BlockServiceTest extends OnTheSample {
    @Autowired
    private BlockService blocks;
    @Autowired
    private GroupingService groupings;
    private List<ChildRow> children;

    @BeforeEach
    void countsTheChildren() {
        children = roster.children(room);
    }

    private static BlockPattern pattern(int rotations, int stations) {
        Map<DayOfWeek, Integer> days = new EnumMap<>(DayOfWeek.class);
        for (DayOfWeek day : DayOfWeek.values()) {
            days.put(day, rotations);
        }
        return new BlockPattern(IntStream.range(0, stations).mapToObj(i -> new Station(i == 0 ? "Teacher table"
                : "Station " + i, "cubes " + i, i == 2 ? "Rafael Osterlund" : "")).toList(), 10, 1, LocalTime.of(9, 30),
                days, new TreeMap<>(Map.of(4, 2)));
    }

    private void save(int groups) {
        Map<String, Place> places = new TreeMap<>();
        for (int i = 0; i < children.size(); i++) {
            places.put(children.get(i).schoolKey(), new Place(1 + i % groups, false, "why"));
        }
        groupings.save(room, blocks.picture(room).day(), Kind.GROUPS, IntStream.rangeClosed(1, groups)
                .mapToObj(n -> new Group(n, "T05", "", false)).toList(), places);
    }

    @Test
    @Order(1)
    void saysWhatIsStillMissingBeforeABlockCanBegin() {
        BlockPicture nothing = blocks.picture(room);
        assertThat(nothing.pattern()).isNull();
        assertThat(nothing.plan()).isNull();
        assertThatThrownBy(() -> blocks.start(room, LocalTime.of(9, 30), 3)).isInstanceOf(Refused.class)
                .hasMessageContaining("stations");
        blocks.setUp(room, pattern(3, 4));
        assertThatThrownBy(() -> blocks.start(room, LocalTime.of(9, 30), 3)).isInstanceOf(Refused.class)
                .hasMessageContaining("groups");
        save(5);
        assertThatThrownBy(() -> blocks.start(room, LocalTime.of(9, 30), 3)).isInstanceOf(Refused.class)
                .hasMessageContaining("Groups at one time: 5; stations: 4");
        assertThat(blocks.atTable(room)).isEmpty();
    }

    @Test
    @Order(2)
    void keepsTheSetUpAsItWasWritten() {
        BlockPattern written = pattern(3, 5);
        blocks.setUp(room, written);
        assertThat(blocks.picture(room).pattern()).isEqualTo(written);
        assertThat(blocks.picture(room).plan()).isNotNull().extracting(p -> p.turns().size()).isEqualTo(3);
    }

    @Test
    @Order(3)
    void beginsOnceAndTellsTheTableWhoComesWhen() {
        blocks.start(room, LocalTime.of(9, 40), 3);
        BlockPicture picture = blocks.picture(room);
        assertThat(picture.running()).isNotNull();
        DayPlan plan = picture.running().plan();
        assertThat(plan.turns()).extracting(DayPlan.Turn::starts).containsExactly(LocalTime.of(9, 40),
                LocalTime.of(9, 51), LocalTime.of(10, 2));
        assertThatThrownBy(() -> blocks.start(room, LocalTime.of(9, 40), 3)).isInstanceOf(Refused.class);
        List<BlockService.AtTable> turns = blocks.atTable(room);
        assertThat(turns).extracting(BlockService.AtTable::group).containsExactly(1, 2, 3);
        assertThat(Duration.between(turns.get(0).ends(), turns.get(1).starts())).isEqualTo(Duration.ofMinutes(1));
        as("coteacher@sample");
        assertThat(blocks.atTable(room)).as("the groups at the station that bears the adult's name")
                .extracting(BlockService.AtTable::group)
                .isEqualTo(plan.turns().stream().map(t -> t.stations().indexOf(2) + 1).toList())
                .isNotEqualTo(List.of(1, 2, 3));
        as("specialist@sample");
        assertThat(blocks.atTable(room)).as("numbers of groups only, for whoever sees children of the class").hasSize(3);
        assertThatThrownBy(() -> blocks.picture(room)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> blocks.start(room, LocalTime.of(9, 40), 3)).isInstanceOf(NotVisible.class);
    }

    @Test
    @Order(4)
    void aLossIsMendedOnceAndOwedFromThenOn() {
        ChildRow away = children.getFirst();
        blocks.absent(room, away.childId(), true);
        Map<LostTime, DayPlan> ways = blocks.ways(room, LocalTime.of(9, 50), 12);
        assertThat(ways).containsOnlyKeys(LostTime.SHIFT, LostTime.SHORTEN, LostTime.DROP);
        assertThat(blocks.ways(room, LocalTime.of(9, 50), 20)).containsOnlyKeys(LostTime.SHIFT, LostTime.DROP);
        assertThatThrownBy(() -> blocks.ways(room, LocalTime.of(23, 50), 12)).isInstanceOf(Refused.class)
                .hasMessageContaining("over");
        blocks.lose(room, 1, LostTime.DROP, LocalTime.of(9, 50), 12);
        assertThatThrownBy(() -> blocks.lose(room, 1, LostTime.SHIFT, LocalTime.of(9, 50), 12))
                .as("seen before the other adult's change").isInstanceOf(Refused.class);
        BlockPicture picture = blocks.picture(room);
        assertThat(picture.running().version()).isEqualTo(2);
        assertThat(picture.running().plan()).isEqualTo(ways.get(LostTime.DROP));
        assertThat(picture.stops()).containsExactly(new Stop(LocalTime.of(9, 50), 12));
        assertThat(picture.absent()).containsExactly(away.schoolKey());
        String second = key(2);
        String third = key(3);
        assertThat(picture.ledger().get(second).owed() + picture.ledger().get(third).owed()).isEqualTo(10);
        assertThat(picture.ledger().get(away.schoolKey())).satisfies(line -> {
            assertThat(line.given()).isZero();
            assertThat(line.absent()).isEqualTo(10);
            assertThat(line.owed()).isZero();
        });
        blocks.absent(room, away.childId(), false);
        assertThat(blocks.picture(room).absent()).isEmpty();
    }

    private String key(int group) {
        return blocks.picture(room).groups().groupOf().entrySet().stream().filter(e -> e.getValue() == group)
                .map(Map.Entry::getKey).findFirst().orElseThrow();
    }

    @Test
    @Order(5)
    void theSheetsNameGroupsStationsAndTimesAndNothingElse() throws Exception {
        for (Language language : Language.values()) {
            for (boolean substitute : new boolean[] {false, true}) {
                byte[] pdf = new BlockSheet(blocks.picture(room), "Room 6", substitute).pdf(language);
                try (PDDocument document = Loader.loadPDF(pdf)) {
                    String text = new PDFTextStripper().getText(document);
                    assertThat(document.getNumberOfPages()).isEqualTo(1);
                    assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
                    assertThat(text).contains("Teacher table", "Station 1", "9:40", children.getFirst().label());
                    assertThat(text).doesNotContain("T05", "Support", "support", "Extension", "On level", "Apoyo", "step");
                    assertThat(text.contains("cubes 2") && text.contains("Rafael Osterlund")).isEqualTo(substitute);
                }
            }
        }
    }

    @Test
    @Order(6)
    void nothingOfItCanBeChangedAfterwards() {
        assertThatThrownBy(() -> transaction.executeWithoutResult(s ->
                jdbc.sql("update block_day set lost_minutes = 0").update())).isInstanceOf(RuntimeException.class);
    }
}
