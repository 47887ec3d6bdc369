package org.stepwell.sample;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;

/** The sample files read by themselves, row by row, without the importer: an independent reading of the same bytes. */
final class SampleClass {
    private static final Path FOLDER = Path.of("sample-class");

    private SampleClass() {}

    /** Rows by column name; fails on a row with another number of cells than the header. */
    static List<Map<String, String>> rows(String file) {
        List<List<String>> lines = parsed(read(file));
        List<String> header = lines.getFirst();
        List<Map<String, String>> rows = new ArrayList<>();
        for (List<String> cells : lines.subList(1, lines.size())) {
            if (cells.size() != header.size()) {
                throw new IllegalStateException(file + ": " + cells + " does not fit " + header);
            }
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < cells.size(); i++) {
                row.put(header.get(i), cells.get(i));
            }
            rows.add(row);
        }
        return rows;
    }

    static String read(String file) {
        try {
            return Files.readString(FOLDER.resolve(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static LocalDate anchor() {
        Properties settings = new Properties();
        try (var reader = Files.newBufferedReader(FOLDER.resolve("sample.properties"))) {
            settings.load(reader);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return LocalDate.parse(settings.getProperty("anchor"));
    }

    static Progression progression() {
        List<Progression.Skill> skills = rows("skills.csv").stream()
                .map(r -> new Progression.Skill(
                        r.get("skill"), r.get("title"), needs(r.get("needs")), words(r.get("standards"))))
                .toList();
        List<Progression.Phrase> phrases = rows("phrases.csv").stream()
                .map(r -> new Progression.Phrase(
                        r.get("skill"),
                        r.get("code"),
                        number(r.get("step")),
                        r.get("language"),
                        r.get("text"),
                        Progression.Phrase.Kind.valueOf(r.get("kind").toUpperCase(java.util.Locale.ROOT))))
                .toList();
        return new Progression("tens-and-ones", skills, phrases);
    }

    private static List<Progression.Need> needs(String cell) {
        return words(cell).stream()
                .map(n -> {
                    String[] halves = n.split(":");
                    String[] need = halves[halves.length - 1].split(">=");
                    int before = halves.length == 2 ? Integer.parseInt(halves[0]) : 1;
                    return new Progression.Need(before, need[0], Integer.parseInt(need[1]));
                })
                .toList();
    }

    static Pacing pacing() {
        return new Pacing(rows("pacing.csv").stream()
                .map(r -> new PacingRow(
                        r.get("skill"),
                        r.get("taught_from").isEmpty() ? null : LocalDate.parse(r.get("taught_from")),
                        LocalDate.parse(r.get("due")),
                        number(r.get("expected_step"))))
                .toList());
    }

    static SchoolCalendar calendar() {
        return new SchoolCalendar(rows("calendar.csv").stream()
                .map(r -> new SchoolCalendar.Break(
                        LocalDate.parse(r.get("from")), LocalDate.parse(r.get("to")), r.get("reason")))
                .toList());
    }

    static List<Look> looks() {
        return rows("observations.csv").stream()
                .map(r -> new Look(
                        UUID.fromString(r.get("id")),
                        OffsetDateTime.parse(r.get("observed_at")),
                        r.get("child"),
                        text(r.get("skill")),
                        text(r.get("task")),
                        number(r.get("step")),
                        Help.of(r.get("help")),
                        Kind.of(r.get("kind")),
                        r.get("observer"),
                        Set.copyOf(words(r.get("tags"))),
                        text(r.get("note")),
                        r.get("replaces").isEmpty() ? null : UUID.fromString(r.get("replaces")),
                        r.get("withdrawn").equals("true"),
                        null))
                .toList();
    }

    /** The looks that count at the end of the day. */
    static EffectiveLooks counted(LocalDate day) {
        return EffectiveLooks.of(looks(), progression(), day);
    }

    /** The id of the only child with this given name. */
    static String child(String given) {
        List<String> ids = rows("roster.csv").stream()
                .filter(r -> r.get("given_name").equals(given))
                .map(r -> r.get("child"))
                .toList();
        if (ids.size() != 1) {
            throw new IllegalStateException(given + ": " + ids);
        }
        return ids.getFirst();
    }

    static List<String> words(String cell) {
        return cell.isEmpty() ? List.of() : List.of(cell.split(";"));
    }

    private static @Nullable String text(String cell) {
        return cell.isEmpty() ? null : cell;
    }

    private static @Nullable Integer number(String cell) {
        return cell.isEmpty() ? null : Integer.valueOf(cell);
    }

    /** RFC 4180 with LF; the last line ends with LF. */
    private static List<List<String>> parsed(String text) {
        List<List<String>> lines = new ArrayList<>();
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (quoted && c == '"' && text.charAt(i + 1) == '"') {
                cell.append(c);
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (quoted || c != ',' && c != '\n') {
                cell.append(c);
            } else {
                cells.add(cell.toString());
                cell.setLength(0);
                if (c == '\n') {
                    lines.add(List.copyOf(cells));
                    cells.clear();
                }
            }
        }
        if (quoted || !cells.isEmpty() || !cell.isEmpty()) {
            throw new IllegalStateException("the file ends inside a row");
        }
        return lines;
    }
}
