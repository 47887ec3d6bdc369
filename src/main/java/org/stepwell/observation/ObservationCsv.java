package org.stepwell.observation;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.csv.CsvRow;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.csv.Parsed;

/** The file {@code observations.csv}. The same id with the same content is one look; with other content a bad row. */
public final class ObservationCsv {
    private static final List<String> REQUIRED = List.of(
            "id", "observed_at", "child", "skill", "task", "step", "help", "kind", "observer", "tags", "note");
    private static final List<String> OPTIONAL = List.of("replaces", "withdrawn", "clock_offset_ms");
    /** {@link UUID#fromString} alone also takes groups of other lengths and cuts them off. */
    private static final Pattern UUID_FORM =
            Pattern.compile("[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}");
    /** Longest note in characters. */
    public static final int LONGEST_NOTE = 4000;

    private static final int LONGEST_TASK = 100;
    private static final int LONGEST_OBSERVER = 200;

    private ObservationCsv() {
    }

    /** Reads the bytes of a file. */
    public static Parsed<Look> read(byte[] file) {
        return CsvTable.read(file, REQUIRED, OPTIONAL).parse(ObservationCsv::look, Look::id);
    }

    private static Look look(CsvRow row) {
        return new Look(
                row.read("id", ObservationCsv::uuid),
                row.read("observed_at", ObservationCsv::instant),
                child(row.required("child")),
                row.orNull("skill"),
                shorter(row, "task", LONGEST_TASK),
                row.stepOrNull("step"),
                row.text("help").isEmpty() ? Help.NONE : row.read("help", Help::of),
                row.read("kind", Kind::of),
                Objects.requireNonNull(shorter(row, "observer", LONGEST_OBSERVER)),
                tags(row.text("tags")),
                shorter(row, "note", LONGEST_NOTE),
                row.text("replaces").isEmpty() ? null : row.read("replaces", ObservationCsv::uuid),
                !row.text("withdrawn").isEmpty() && row.read("withdrawn", ObservationCsv::truth),
                row.text("clock_offset_ms").isEmpty() ? null : row.read("clock_offset_ms", ObservationCsv::whole));
    }

    /**
     * Reads an id.
     *
     * @throws IllegalArgumentException when it is no UUID in the usual form of 36 characters
     */
    public static UUID uuid(String text) {
        if (!UUID_FORM.matcher(text).matches()) {
            throw new Refused("cell.uuid");
        }
        return UUID.fromString(text);
    }

    /**
     * Reads an instant with offset, to the microsecond.
     *
     * @throws IllegalArgumentException when it has no offset or is not ISO 8601
     */
    public static OffsetDateTime instant(String text) {
        try {
            OffsetDateTime at = OffsetDateTime.parse(text).truncatedTo(ChronoUnit.MICROS);
            if (at.getYear() < 1990 || at.getYear() > 2200) {
                throw new Refused("cell.years");
            }
            return at;
        } catch (DateTimeException wrong) {
            throw new Refused("cell.instant");
        }
    }

    /** Reads tags separated by semicolons. */
    public static Set<String> tags(String text) {
        return Arrays.stream(text.split(";")).map(String::strip).filter(t -> !t.isEmpty())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String child(String text) {
        if (text.chars().anyMatch(Character::isISOControl)) {
            throw new CsvRow.Bad("child", "cell.control");
        }
        return text;
    }

    private static @Nullable String shorter(CsvRow row, String column, int longest) {
        String text = column.equals("observer") ? row.required(column) : row.orNull(column);
        if (text != null && text.length() > longest) {
            throw new CsvRow.Bad(column, "cell.long", text.length(), longest);
        }
        return text;
    }

    private static Long whole(String text) {
        try {
            return Long.valueOf(text);
        } catch (NumberFormatException wrong) {
            throw new Refused("cell.whole");
        }
    }

    private static boolean truth(String text) {
        return switch (text) {
            case "true" -> true;
            case "false" -> false;
            default -> throw new Refused("cell.truth");
        };
    }

    /** Writes looks, in the order given. */
    public static String write(Collection<Look> looks) {
        CsvWriter out = new CsvWriter(java.util.stream.Stream.concat(REQUIRED.stream(), OPTIONAL.stream()).toList());
        for (Look look : looks) {
            out.row(look.id(), look.observedAt(), look.child(), look.skill(), look.task(), look.step(),
                    look.help().code(), look.kind().code(), look.observer(), String.join(";", look.tags()),
                    look.note(), look.replaces(), look.withdrawn() ? "true" : "", look.clockOffsetMs());
        }
        return out.toString();
    }
}
