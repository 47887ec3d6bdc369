package org.stepwell.platform.csv;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.stepwell.core.problem.Problem;

/**
 * A CSV file: UTF-8 (byte order mark accepted), LF or CRLF, RFC 4180 quoting, header required, columns matched by name
 * in any order, unknown columns reported and ignored.
 */
public final class CsvTable {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180.builder().setIgnoreEmptyLines(true).get();

    private final List<String> unknownColumns;
    private final List<CsvRow> rows;
    private final List<CsvProblem> problems;

    private CsvTable(List<String> unknownColumns, List<CsvRow> rows, List<CsvProblem> problems) {
        this.unknownColumns = List.copyOf(unknownColumns);
        this.rows = List.copyOf(rows);
        this.problems = List.copyOf(problems);
    }

    /**
     * Reads the bytes of a file. Never throws for bad content: what is wrong stands in {@link #problems()}.
     *
     * @param required columns that must be in the header
     * @param optional columns that may be
     */
    public static CsvTable read(byte[] bytes, List<String> required, List<String> optional) {
        String text;
        try {
            text = StandardCharsets.UTF_8.newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException wrong) {
            return broken(0, Problem.of("file.not-utf8"));
        }
        if (text.startsWith("\uFEFF")) {
            text = text.substring(1);
        }
        if (text.isBlank()) {
            return broken(0, Problem.of("file.empty", String.join(", ", required)));
        }
        try (CSVParser parser = FORMAT.parse(new StringReader(text))) {
            return new Reading(required, optional, new Lines(text)).read(parser);
        } catch (UncheckedIOException | IOException wrong) {
            return broken(0, Problem.of("file.quotes"));
        }
    }

    private static CsvTable broken(long line, Problem reason) {
        return new CsvTable(List.of(), List.of(), List.of(new CsvProblem(line, "", reason)));
    }

    /** Tells the line on which a row starts; asked in the order of the file, empty lines before a row are passed by. */
    private static final class Lines {
        private final String text;
        private int at;
        private long line = 1;

        Lines(String text) {
            this.text = text;
        }

        long of(CSVRecord record) {
            int start = Math.toIntExact(record.getCharacterPosition());
            while (at < text.length() && (at < start || text.charAt(at) == '\n' || text.charAt(at) == '\r')) {
                char here = text.charAt(at++);
                if (here == '\n' || here == '\r' && (at == text.length() || text.charAt(at) != '\n')) {
                    line++;
                }
            }
            return line;
        }
    }

    private record Reading(List<String> required, List<String> optional, Lines lines) {
        CsvTable read(CSVParser parser) {
            List<String> unknown = new ArrayList<>();
            List<CsvRow> rows = new ArrayList<>();
            List<CsvProblem> problems = new ArrayList<>();
            List<String> header = List.of();
            for (CSVRecord record : parser) {
                long line = lines.of(record);
                if (header.isEmpty()) {
                    header = record.stream().map(String::strip).toList();
                    problems.addAll(headerProblems(header));
                    header.stream().filter(c -> !required.contains(c) && !optional.contains(c)).forEach(unknown::add);
                    if (!problems.isEmpty()) {
                        return new CsvTable(unknown, List.of(), problems);
                    }
                } else if (record.size() != header.size()) {
                    problems.add(new CsvProblem(line, "", Problem.of("file.cells", record.size(), header.size())));
                } else if (unreadable(record) >= 0) {
                    problems.add(new CsvProblem(line, header.get(unreadable(record)), Problem.of("file.nul")));
                } else {
                    rows.add(new CsvRow(line, cells(header, record)));
                }
            }
            return new CsvTable(unknown, rows, problems);
        }

        private List<CsvProblem> headerProblems(List<String> header) {
            List<String> missing = required.stream().filter(c -> !header.contains(c)).toList();
            if (!missing.isEmpty()) {
                return List.of(new CsvProblem(1, "", Problem.of("file.lacks", String.join(", ", missing),
                        String.join(", ", header))));
            }
            Set<String> seen = new HashSet<>();
            return header.stream().filter(c -> !c.isEmpty() && !seen.add(c))
                    .map(c -> new CsvProblem(1, c, Problem.of("file.twice"))).toList();
        }

        /** Place of the first cell with a NUL, which a database cannot keep as text; -1 when there is none. */
        private static int unreadable(CSVRecord record) {
            for (int i = 0; i < record.size(); i++) {
                if (record.get(i).indexOf('\0') >= 0) {
                    return i;
                }
            }
            return -1;
        }

        private static Map<String, String> cells(List<String> header, CSVRecord record) {
            Map<String, String> cells = new HashMap<>();
            for (int i = 0; i < header.size(); i++) {
                cells.put(header.get(i), restored(record.get(i)));
            }
            return cells;
        }
    }

    /** Takes away the quote that {@link CsvWriter} puts before a cell a spreadsheet would run as a formula. */
    private static String restored(String cell) {
        return cell.length() >= 2 && cell.charAt(0) == '\'' && CsvWriter.startsLikeFormula(cell.substring(1))
                ? cell.substring(1) : cell;
    }

    /** Columns in the file that nobody asked for; they were ignored. */
    public List<String> unknownColumns() {
        return unknownColumns;
    }

    /** What is wrong with the file as such; when the header does not fit there are no rows. */
    public List<CsvProblem> problems() {
        return problems;
    }

    /**
     * Reads every row. A row whose reader throws {@link CsvRow.Bad} or {@code IllegalArgumentException} is reported.
     *
     * @param key gives what makes two rows the same row; equal rows with equal keys count once, others with the same
     *     key are bad
     */
    public <T> Parsed<T> parse(Function<CsvRow, T> reader, Function<T, Object> key) {
        Map<Object, T> byKey = new LinkedHashMap<>();
        Map<Object, Long> lineOf = new HashMap<>();
        List<CsvProblem> found = new ArrayList<>(problems);
        for (CsvRow row : rows) {
            try {
                T value = reader.apply(row);
                Object id = key.apply(value);
                T before = byKey.putIfAbsent(id, value);
                if (before == null) {
                    lineOf.put(id, row.line());
                } else if (!before.equals(value)) {
                    found.add(new CsvProblem(row.line(), "", Problem.of("file.other-content", lineOf.get(id))));
                }
            } catch (CsvRow.Bad bad) {
                found.add(new CsvProblem(row.line(), bad.column(), bad.problem()));
            } catch (IllegalArgumentException bad) {
                found.add(new CsvProblem(row.line(), "", Problem.of(bad)));
            }
        }
        List<Long> lines = byKey.keySet().stream().map(lineOf::get).toList();
        return new Parsed<>(List.copyOf(byKey.values()), lines, List.copyOf(found), unknownColumns);
    }
}
