import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Looks written by hand: children whose story a review has to tell. */
final class SampleStories {
    /**
     * A child's line begins with {@code =}; then one look a line:
     * month-day, time, skill, task, step, help, kind, observer, tags or {@code .}, and after a bar the note.
     */
    private static final String LOOKS =
            """
            = q0602 four of ten sessions given, small steps
            03-31 10:04 T05 14 1 none table T counted_all_from_one |
            04-02 10:06 T04 10 2 cubes table T said_ten_checked_by_ones |
            04-07 10:03 T05 14 1 none table T counted_all_from_one | Looked away twice, then counted well.
            04-10 10:51 T05 16 1 none exit_task T counted_all_from_one |
            04-14 10:05 T05 14 1 none table T counted_all_from_one;recounted_the_stick |
            04-16 10:02 T06 15 2 none table T heard_order_71;digits_swapped |
            04-17 10:52 T08 34 1 none exit_task T counted_34_by_ones |
            04-28 10:03 T05 16 2 none table T began_at_ten | First time from ten without being asked.
            04-28 10:07 T07 30 1 none table T cubes_by_ones |
            04-29 10:54 T08 47 2 cubes exit_task T kept_on_by_tens |
            04-30 10:05 T06 13 2 none table T heard_order_71 |
            05-05 10:04 T05 17 2 none table T began_at_ten |
            05-05 10:08 T07 20 2 none table T fell_back_to_ones |
            05-06 11:24 T07 20 2 cubes specialist S fell_back_to_ones | First session since April.
            05-06 10:53 T08 34 2 none exit_task T kept_on_by_tens |
            05-07 10:06 T06 15 2 none table T heard_order_71 |
            = q0603 beyond the unit in three skills, digits in the mirror
            03-30 9:43 T05 16 4 none table T said_ten_and_seven |
            04-06 9:45 T05 17 5 none table T wrote_10_plus_7;said |
            04-13 9:44 T05 19 5 none table T wrote_10_plus_7;drew |
            04-13 9:48 T06 15 2 none table T heard_order_71;mirror_written | The 5 looked in the mirror.
            04-15 9:53 T05 23 5 none table T wrote_10_plus_7;said | Went on past twenty alone.
            04-15 9:57 T07 60 5 none table T ten_tens_100;said |
            04-17 10:51 T08 52 5 none exit_task T told_both_ways |
            04-27 9:43 T05 30 5 none table T wrote_10_plus_7;said |
            04-27 9:46 T07 60 5 none table T ten_tens_100;showed |
            04-27 9:49 T08 68 5 none table T told_both_ways;said |
            04-29 9:52 T06 16 2 none table C heard_order_71;mirror_written |
            04-29 9:55 T07 90 5 none table C ten_tens_100;said |
            04-29 10:51 T08 47 5 none exit_task T told_both_ways |
            05-04 9:44 T05 23 5 none table T wrote_10_plus_7;said |
            05-06 9:52 T06 15 2 none table C heard_order_71;mirror_written | Said fifteen at once, wrote 51.
            05-06 9:56 T07 60 5 none table C ten_tens_100;said |
            05-06 10:51 T08 68 5 none exit_task T told_both_ways |
            = q0607 cubes always out
            03-31 9:54 T04 10 3 cubes table T made_a_stick |
            04-07 9:55 T06 14 3 cubes table T matched_numeral |
            04-14 9:55 T05 14 3 cubes table T made_ten_and_extras |
            04-17 10:53 T08 34 3 cubes exit_task T built_34 |
            04-28 9:54 T05 16 3 cubes table T made_ten_and_extras | Quick hands, proud of the sticks.
            04-28 9:58 T07 40 3 cubes table T sticks_10_20_30 |
            04-29 10:52 T08 47 3 cubes exit_task T built_34 |
            05-01 9:43 T05 17 3 cubes table T made_ten_and_extras |
            05-05 9:54 T05 19 3 cubes table T made_ten_and_extras |
            05-05 9:57 T06 16 3 cubes table T matched_numeral |
            05-06 10:52 T08 52 3 cubes exit_task T built_34 |
            05-08 9:44 T07 60 3 cubes table T sticks_10_20_30 |
            = q0610 right and fast, counts everything
            03-30 9:54 T05 14 1 none table T counted_all_from_one | Right and very fast.
            04-06 9:55 T05 16 1 none table T counted_all_from_one |
            04-13 9:55 T07 30 1 none table T cubes_by_ones |
            04-16 9:53 T06 15 3 none table T matched_numeral |
            04-27 9:54 T05 16 1 none table T counted_all_from_one | Right again, every cube touched.
            04-29 10:55 T08 34 1 none exit_task T counted_34_by_ones |
            04-30 9:54 T07 50 1 none table T cubes_by_ones | Counted fifty cubes without a slip.
            05-04 9:54 T05 17 1 none table T counted_all_from_one |
            05-04 9:58 T06 13 3 none table T matched_numeral |
            05-06 10:55 T08 47 1 none exit_task T counted_34_by_ones |
            05-07 9:53 T07 60 1 none table T cubes_by_ones |
            = q0612 shows it, few English words yet
            03-31 9:56 T05 12 3 none table T made_ten_and_extras;showed |
            04-10 10:52 T05 14 3 none exit_task T made_ten_and_extras;drew |
            04-14 9:57 T05 16 4 none table T said_ten_and_seven;showed | Ten fingers, then six. No words needed.
            04-17 10:54 T08 34 3 cubes exit_task T built_34;showed |
            04-28 9:55 T05 13 4 none table T said_ten_and_seven;showed |
            04-28 9:59 T07 30 3 none table T sticks_10_20_30;showed |
            04-29 10:56 T08 47 2 none exit_task T kept_on_by_tens |
            05-01 9:44 T06 15 3 none table T matched_numeral |
            05-05 9:55 T05 17 4 none table T said_ten_and_seven;showed |
            05-05 9:58 T07 50 3 none table T sticks_10_20_30;showed |
            05-06 10:54 T08 52 3 none exit_task T built_34;drew |
            05-08 9:45 T05 16 4 none table T said_ten_and_seven;showed | Again ten and six on the fingers.
            05-08 9:48 T06 13 3 none table T matched_numeral |
            = q0613 growing, request of the family open
            03-31 10:05 T05 14 1 none table T counted_all_from_one |
            04-07 10:05 T05 14 1 none table T counted_all_from_one |
            04-14 10:03 T06 13 2 none table T heard_order_71 |
            04-16 10:04 T05 16 2 none table T began_at_ten |
            04-17 10:55 T08 34 1 none exit_task T counted_34_by_ones |
            04-27 11:23 T07 20 1 none specialist S cubes_by_ones |
            04-28 10:05 T05 17 2 none table T began_at_ten |
            04-29 11:22 T07 30 2 cubes specialist S fell_back_to_ones |
            04-29 10:57 T08 34 1 none exit_task T counted_34_by_ones |
            04-30 10:04 T06 15 2 none table T heard_order_71;digits_swapped |
            05-04 11:23 T07 30 2 none specialist S fell_back_to_ones | Kept going to thirty.
            05-05 10:05 T05 16 3 none table T made_ten_and_extras | Made the ten without a word from me.
            05-06 10:56 T08 34 2 none exit_task T kept_on_by_tens |
            05-07 10:04 T06 14 2 none table T heard_order_71 |
            = q0615 two adults, two kinds of number
            03-31 9:57 T05 16 3 none table T made_ten_and_extras |
            04-10 10:53 T05 17 3 none exit_task T made_ten_and_extras |
            04-14 9:58 T05 17 4 none table T said_ten_and_seven;said |
            04-17 10:56 T08 34 3 cubes exit_task T built_34 |
            04-28 9:56 T05 16 4 none table T said_ten_and_seven;said |
            04-28 10:00 T07 40 3 none table T sticks_10_20_30 |
            04-29 10:58 T08 47 2 none exit_task T kept_on_by_tens |
            05-01 9:46 T06 16 3 none table T matched_numeral |
            05-05 9:56 T05 11 1 none table A counted_all_from_one |
            05-06 10:57 T08 52 3 none exit_task T built_34 |
            05-08 9:46 T05 12 1 none table A counted_all_from_one | Did not know the word twelve as ten and two.
            05-08 9:49 T07 60 3 none table T sticks_10_20_30 |
            = q0616 away since the lost week, plan running
            03-31 10:07 T05 14 1 none table T counted_all_from_one |
            04-01 11:22 T04 10 2 cubes specialist S said_ten_checked_by_ones |
            04-02 10:04 T05 14 1 none table T counted_all_from_one |
            04-07 10:07 T05 16 2 none table T began_at_ten |
            04-08 11:23 T06 15 2 none specialist S heard_order_71 |
            04-10 10:54 T05 14 2 none exit_task T began_at_ten |
            04-14 10:06 T05 16 2 none table T began_at_ten |
            04-15 11:22 T07 20 2 cubes specialist S fell_back_to_ones |
            04-16 10:05 T08 34 1 none table T counted_34_by_ones |
            04-16 10:08 T05 17 3 cubes table T made_ten_and_extras | Best day so far.
            05-04 8:40 . . 0 none other T written_later | Family called: back on Monday.
            = q0617 the same difficulty for five weeks
            04-01 9:44 T05 14 1 none table T counted_all_from_one |
            04-08 9:43 T05 14 1 none table T counted_all_from_one;recounted_the_stick |
            04-10 10:55 T05 16 1 none exit_task T counted_all_from_one |
            04-15 9:44 T05 14 2 none table T began_at_ten |
            04-17 9:54 T07 30 1 none table T cubes_by_ones |
            04-17 10:57 T08 34 1 none exit_task T counted_34_by_ones |
            04-29 9:43 T05 16 2 none table T began_at_ten;recounted_the_stick |
            04-29 10:59 T08 34 1 none exit_task T counted_34_by_ones |
            05-01 9:54 T06 15 2 none table T heard_order_71;digits_swapped |
            05-01 9:57 T07 20 1 none table T cubes_by_ones |
            05-06 9:43 T05 16 2 none table T began_at_ten | Unsure what the stick is worth.
            05-06 10:58 T08 34 2 none exit_task T kept_on_by_tens |
            05-08 9:54 T07 30 2 none table T fell_back_to_ones |
            05-08 9:57 T05 17 2 none table T began_at_ten |
            = q0620 quiet, seldom seen
            04-01 9:46 T05 14 2 none table T began_at_ten |
            04-08 9:46 T05 16 3 cubes table T made_ten_and_extras |
            05-01 9:55 T05 16 3 none table T made_ten_and_extras | Watched the others, then built it.
            = q0621 extra help has done its work
            03-31 10:08 T05 14 2 none table T began_at_ten |
            04-02 10:08 T05 16 3 cubes table T made_ten_and_extras |
            04-08 11:27 T05 16 3 none specialist S made_ten_and_extras |
            04-14 10:07 T05 17 4 none table T said_ten_and_seven |
            04-14 10:09 T07 30 3 none table T sticks_10_20_30 |
            04-16 10:06 T05 16 4 none table T heard_said_17 |
            04-16 10:09 T06 14 3 none table T matched_numeral |
            04-17 10:58 T08 34 3 none exit_task T built_34 |
            04-28 10:06 T05 19 4 none table T said_ten_and_seven |
            04-28 10:09 T07 50 3 none table T sticks_10_20_30 |
            04-29 11:00 T08 47 2 none exit_task T kept_on_by_tens;lost_the_shift |
            04-30 10:06 T06 15 3 none table T matched_numeral |
            05-05 10:06 T05 13 4 none table T said_ten_and_seven;said | Told the others how it works.
            05-05 10:09 T07 60 3 none table T sticks_10_20_30 |
            05-06 10:59 T08 52 3 none exit_task T built_34 |
            05-07 10:07 T05 15 4 none table T heard_said_17 |
            05-07 10:09 T06 16 3 none table T matched_numeral |
            = q0622 new in the class, one sitting
            05-04 8:30 . . 0 none other T from_paper | Sheet of the former school: counts to 100, adds within ten.
            05-06 9:53 T05 17 5 none table C wrote_10_plus_7 |
            05-06 9:54 T05 16 5 none table C wrote_10_plus_7 |
            05-06 9:55 T07 60 5 none table C ten_tens_100 |
            05-06 9:56 T08 34 5 none table C told_both_ways;not_valid | Read it off the next sheet.
            05-06 9:58 T08 52 5 none table C told_both_ways;not_valid | The same again.
            """;

    private SampleStories() {}

    static List<SampleLook> looks(SplittableRandom random) {
        List<SampleLook> looks = new ArrayList<>();
        String child = "";
        for (String line : LOOKS.lines().toList()) {
            if (line.startsWith("=")) {
                child = line.split(" ")[1];
            } else {
                looks.add(look(child, line, random));
            }
        }
        return looks;
    }

    private static SampleLook look(String child, String line, SplittableRandom random) {
        String[] halves = line.split("\\|", -1);
        String[] w = halves[0].trim().split(" ");
        String time = w[1].length() == 4 ? "0" + w[1] : w[1];
        LocalDateTime at = LocalDateTime.parse("2026-" + w[0] + "T" + time)
                .plusSeconds(1 + random.nextInt(58));
        return new SampleLook(
                SampleLook.id(at, random),
                at,
                child,
                w[2].equals(".") ? "" : w[2],
                w[3].equals(".") ? "" : w[3],
                Integer.parseInt(w[4]),
                w[5],
                w[6],
                observer(w[7]),
                w[8].equals(".") ? "" : w[8],
                halves[1].trim(),
                "",
                false);
    }

    private static String observer(String letter) {
        return switch (letter) {
            case "T" -> SampleLook.TEACHER;
            case "C" -> SampleLook.CO_TEACHER;
            case "S" -> SampleLook.SPECIALIST;
            case "A" -> SampleLook.AIDE;
            default -> throw new IllegalArgumentException("no such observer: " + letter);
        };
    }
}
