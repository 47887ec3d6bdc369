package org.stepwell.platform.csv;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.problem.Problem;
import org.stepwell.core.problem.Refused;

/** One row, asked by column name. A value that does not fit throws {@link Bad}, which names the column. */
public final class CsvRow {
    private static final DateTimeFormatter DATE =
            DateTimeFormatter.ofPattern("uuuu-MM-dd").withResolverStyle(ResolverStyle.STRICT);

    private final long line;
    private final Map<String, String> cells;

    CsvRow(long line, Map<String, String> cells) {
        this.line = line;
        this.cells = cells;
    }

    /** A value that does not fit its column. */
    public static final class Bad extends Refused {
        private final String column;

        /** What is wrong and what is accepted, as {@link Problem#of(String, Object...)} takes it. */
        public Bad(String column, String key, Object... gaps) {
            super(key, gaps);
            this.column = column;
        }

        /** The column it stands in. */
        public String column() {
            return column;
        }
    }

    /** Line of the file on which the row starts; the header is line 1. */
    public long line() {
        return line;
    }

    /** The cell as it stands; empty when the cell is empty or the column is not in the file. */
    public String text(String column) {
        return cells.getOrDefault(column, "");
    }

    /** The cell, or {@code null} when empty. */
    public @Nullable String orNull(String column) {
        String text = text(column);
        return text.isEmpty() ? null : text;
    }

    /** The cell of a column that may not be empty. */
    public String required(String column) {
        String text = text(column);
        if (text.isBlank()) {
            throw new Bad(column, "cell.empty");
        }
        return text;
    }

    /** The cell read by {@code reader}; its {@code IllegalArgumentException} becomes the reason. */
    public <T> T read(String column, Function<String, T> reader) {
        try {
            return reader.apply(required(column));
        } catch (Bad named) {
            throw named;
        } catch (IllegalArgumentException | DateTimeException wrong) {
            throw new Bad(column, "cell", shortened(text(column)), Problem.of(wrong));
        }
    }

    /** A date {@code YYYY-MM-DD}, or {@code null} when empty. */
    public @Nullable LocalDate dateOrNull(String column) {
        return text(column).isEmpty() ? null : date(column);
    }

    /** A date {@code YYYY-MM-DD}. */
    public LocalDate date(String column) {
        String text = required(column);
        try {
            return LocalDate.parse(text, DATE);
        } catch (DateTimeException wrong) {
            throw new Bad(column, "cell.date", shortened(text));
        }
    }

    /** A step 1-5, or {@code null} when empty. */
    public @Nullable Integer stepOrNull(String column) {
        String text = text(column);
        if (text.isEmpty()) {
            return null;
        }
        if (text.length() != 1 || text.charAt(0) < '1' || text.charAt(0) > '5') {
            throw new Bad(column, "cell.step", shortened(text));
        }
        return text.charAt(0) - '0';
    }

    private static String shortened(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "...";
    }
}
