import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;

/** The invented school's days: two units, eight school weeks, one lost week. */
final class SampleDays {
    /** The Friday on which the story ends: the day of the review. */
    static final LocalDate ANCHOR = LocalDate.of(2026, 5, 8);
    /** First Monday of the looks. */
    static final LocalDate FIRST = LocalDate.of(2026, 3, 9);
    /** First Monday of the unit that is under way on the anchor day. */
    static final LocalDate UNIT = LocalDate.of(2026, 3, 30);
    /** Monday and Friday of the lost week. */
    static final LocalDate LOST_FROM = LocalDate.of(2026, 4, 20);
    static final LocalDate LOST_TO = LocalDate.of(2026, 4, 24);
    /** A day on which somebody else stood in. */
    static final LocalDate SUBSTITUTE = LocalDate.of(2026, 4, 9);

    /** {@code from,to,reason}. */
    static final List<String> CALENDAR = List.of(
            "2026-02-16,2026-02-16,Presidents' Day",
            LOST_FROM + "," + LOST_TO + ",school closed: water in the building",
            "2026-05-25,2026-05-25,Memorial Day");

    /** {@code skill,taught_from,due,expected_step}. */
    static final List<String> PACING = List.of(
            "T01,2026-02-23,2026-03-09,3",
            "T01,,2026-03-30,",
            "T02,2026-02-23,2026-03-09,4",
            "T02,,2026-03-30,",
            "T03,2026-03-09,2026-03-18,3",
            "T03,,2026-03-30,",
            "T04,2026-03-09,2026-03-20,3",
            "T04,,2026-04-06,",
            "T05,2026-03-30,2026-04-10,3",
            "T05,,2026-04-27,4",
            "T06,2026-04-02,2026-04-15,3",
            "T07,2026-04-07,2026-04-17,3",
            "T08,2026-04-13,2026-04-28,3",
            "T11,2026-05-11,2026-05-20,3");

    private SampleDays() {}

    static boolean schoolDay(LocalDate day) {
        boolean weekend = day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
        return !weekend && (day.isBefore(LOST_FROM) || day.isAfter(LOST_TO));
    }

    /** The school days of the looks, in order. */
    static List<LocalDate> all() {
        return FIRST.datesUntil(ANCHOR.plusDays(1)).filter(SampleDays::schoolDay).toList();
    }

    /** Groups at the teacher table on a weekday, in order of their turn: each group twice a week. */
    static List<Integer> tableGroups(LocalDate day) {
        return switch (day.getDayOfWeek()) {
            case MONDAY -> List.of(1, 2);
            case TUESDAY -> List.of(3, 4);
            case WEDNESDAY -> List.of(5, 1);
            case THURSDAY -> List.of(2, 3);
            default -> List.of(4, 5);
        };
    }

    /** First day on which the class works on the skill. */
    static LocalDate taughtFrom(String skill) {
        return PACING.stream()
                .map(row -> row.split(",", -1))
                .filter(cells -> cells[0].equals(skill) && !cells[1].isEmpty())
                .map(cells -> LocalDate.parse(cells[1]))
                .findFirst()
                .orElseThrow();
    }

    /** The skills a group works on at the table that day. */
    static List<String> focus(LocalDate day) {
        List<String> skills = day.isBefore(UNIT)
                ? List.of("T02", "T01", "T03", "T04")
                : List.of("T05", "T06", "T07", "T08");
        return skills.stream().filter(s -> !day.isBefore(taughtFrom(s))).toList();
    }
}
