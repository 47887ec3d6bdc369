import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** The unit check of twenty items, scored so far for one table group only: each item a look at the step it tests. */
final class SampleCheck {
    private static final LocalDate DAY = LocalDate.of(2026, 5, 7);
    private static final int GROUP = 2;

    /** Counts everything and counts well: nineteen of twenty. */
    private static final String ALMOST_ALL_RIGHT = "q0610";

    private static final int ONLY_SLIP = 19;

    private record Item(String skill, int step, String task) {}

    private static final List<Item> ITEMS = List.of(
            new Item("T04", 3, "10"),
            new Item("T04", 4, "20"),
            new Item("T05", 3, "14"),
            new Item("T05", 3, "16"),
            new Item("T05", 4, "12"),
            new Item("T05", 4, "17"),
            new Item("T05", 4, "19"),
            new Item("T06", 3, "13"),
            new Item("T06", 4, "15"),
            new Item("T06", 4, "18"),
            new Item("T07", 3, "30"),
            new Item("T07", 4, "60"),
            new Item("T07", 4, "90"),
            new Item("T08", 3, "34"),
            new Item("T08", 3, "47"),
            new Item("T08", 4, "52"),
            new Item("T08", 4, "40"),
            new Item("T11", 3, "28/82"),
            new Item("T11", 4, "70/68"),
            new Item("T11", 4, "39/41"));

    private SampleCheck() {}

    static List<SampleLook> looks(SampleLessons lessons, SplittableRandom random) {
        List<SampleLook> looks = new ArrayList<>();
        for (SampleChild child : SampleChild.CLASS) {
            if (child.group() == GROUP) {
                for (int i = 0; i < ITEMS.size(); i++) {
                    looks.add(look(child, i, lessons, random));
                }
            }
        }
        return looks;
    }

    private static SampleLook look(SampleChild child, int index, SampleLessons lessons, SplittableRandom random) {
        Item item = ITEMS.get(index);
        double luck = random.nextDouble();
        boolean right = child.id().equals(ALMOST_ALL_RIGHT)
                ? index != ONLY_SLIP
                : luck < (lessons.hidden(child.id(), item.skill()) >= item.step() ? 0.93 : 0.45);
        LocalDateTime at = DAY.atTime(13, 10).plusSeconds(45L * index + random.nextInt(40));
        return new SampleLook(
                SampleLook.id(at, random), at, child.id(), item.skill(), item.task(),
                right ? item.step() : item.step() - 1, "none", "unit_check", SampleLook.TEACHER,
                "from_paper", "", "", false);
    }
}
