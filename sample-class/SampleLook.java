import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.SplittableRandom;
import java.util.UUID;

/**
 * One row of observations.csv.
 *
 * @param at wall clock of the school
 * @param step 1-5, or 0 for a note without a step
 * @param tags separated by {@code ;}
 * @param replaces empty, or the id of the look this row stands in for
 */
record SampleLook(
        UUID id,
        LocalDateTime at,
        String child,
        String skill,
        String task,
        int step,
        String help,
        String kind,
        String observer,
        String tags,
        String note,
        String replaces,
        boolean withdrawn) {

    static final String TEACHER = "teacher@sample";
    static final String CO_TEACHER = "coteacher@sample";
    static final String SPECIALIST = "specialist@sample";
    static final String LEAD = "lead@sample";
    static final String AIDE = "Mr. Ferro (aide)";
    static final String SUBSTITUTE = "Ms. Adair (substitute)";

    static final String HEADER =
            "id,observed_at,child,skill,task,step,help,kind,observer,tags,note,replaces,withdrawn";

    /** Every day of the story lies in the summer half of the year of America/Chicago. */
    private static final ZoneOffset OFFSET = ZoneOffset.ofHours(-5);

    private static final DateTimeFormatter INSTANT = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ssXXX");

    /** An id in the layout of RFC 9562 version 7: the time in milliseconds, then random bits. */
    static UUID id(LocalDateTime at, SplittableRandom random) {
        long millis = at.toInstant(OFFSET).toEpochMilli() + random.nextInt(1000);
        long high = (millis << 16) | 0x7000L | random.nextInt(0x1000);
        long low = (random.nextLong() >>> 2) | 0x8000000000000000L;
        return new UUID(high, low);
    }

    /** This row as a line of the file. */
    String line() {
        return String.join(
                ",",
                id.toString(),
                INSTANT.format(at.atOffset(OFFSET)),
                child,
                skill,
                quoted(task),
                step == 0 ? "" : Integer.toString(step),
                help,
                kind,
                quoted(observer),
                tags,
                quoted(note),
                replaces,
                withdrawn ? "true" : "");
    }

    /** A cell by RFC 4180: quotes only where they are needed. */
    static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
        return plain ? text : "\"" + text.replace("\"", "\"\"") + "\"";
    }
}
