import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Makes the files of the sample class from a seed: the same seed, the same bytes.
 *
 * <p>{@code java sample-class/MakeSampleClass.java sample-class} reads {@code seed.txt} and {@code phrases.csv} of that
 * folder and writes the other files into it.
 */
public final class MakeSampleClass {
    private MakeSampleClass() {}

    /** @param args the folder */
    public static void main(String[] args) throws IOException {
        if (args.length != 1) {
            System.err.println("usage: java sample-class/MakeSampleClass.java FOLDER");
            System.exit(2);
        }
        Path folder = Path.of(args[0]);
        long seed = Long.parseLong(Files.readString(folder.resolve("seed.txt")).trim());
        write(folder, "roster.csv", "child,given_name,family_name,grade,class,start,end", roster());
        write(folder, "pacing.csv", "skill,taught_from,due,expected_step", SampleDays.PACING);
        write(folder, "calendar.csv", "from,to,reason", SampleDays.CALENDAR);
        write(folder, "observations.csv", SampleLook.HEADER, observations(seed, phrases(folder)));
        write(folder, "decisions.csv", "as_of,child,tier,reason", SampleDecisions.rows());
        write(folder, "dose.csv", "child,planned,given,missed_by_school,missed_by_child", SampleDecisions.DOSE);
        write(folder, "concerns.csv", "child,kind,on", SampleDecisions.CONCERNS);
        write(folder, "adults.csv", "sign_in,name,role", SampleDecisions.ADULTS);
        write(folder, "grants.csv", "adult,child,reason,until_days", SampleDecisions.GRANTS);
        write(folder, "sample.properties", "# The sample class; README.md says what each line means.", settings());
    }

    private static List<String> roster() {
        return SampleChild.CLASS.stream()
                .map(c -> String.join(
                        ",", c.id(), SampleLook.quoted(c.given()), SampleLook.quoted(c.family()), "1", "Room 6",
                        c.start().toString(), ""))
                .toList();
    }

    private static List<String> observations(long seed, Map<String, List<String>> phrases) {
        SplittableRandom random = new SplittableRandom(seed);
        SampleLessons lessons = new SampleLessons(random.split(), phrases);
        List<SampleLook> looks = new ArrayList<>(lessons.looks());
        looks.addAll(SampleStories.looks(random.split()));
        looks.addAll(SampleCheck.looks(lessons, random.split()));
        looks.addAll(SampleCorrections.looks(random.split()));
        return looks.stream()
                .sorted(Comparator.comparing(SampleLook::at).thenComparing(l -> l.id().toString()))
                .map(SampleLook::line)
                .toList();
    }

    /** Codes to tap by skill and step, such as {@code T05.3}. The first three columns hold no quotes. */
    private static Map<String, List<String>> phrases(Path folder) throws IOException {
        Map<String, List<String>> phrases = new HashMap<>();
        for (String line : Files.readAllLines(folder.resolve("phrases.csv"))) {
            String[] cells = line.split(",");
            if (line.endsWith(",phrase") && cells[3].equals("en")) {
                phrases.computeIfAbsent(cells[0] + "." + cells[2], k -> new ArrayList<>()).add(cells[1]);
            }
        }
        return phrases;
    }

    private static List<String> settings() {
        return List.of(
                "anchor=" + SampleDays.ANCHOR,
                "time_zone=America/Chicago",
                "school=Quillwater School",
                "class=Room 6",
                "grade=1",
                "unit=Teens and tens",
                "unit_start=" + SampleDays.UNIT,
                "progression=tens-and-ones");
    }

    private static void write(Path folder, String name, String header, List<String> rows) throws IOException {
        Files.writeString(folder.resolve(name), header + "\n" + String.join("\n", rows) + "\n");
    }
}
