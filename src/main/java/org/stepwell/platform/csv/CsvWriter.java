package org.stepwell.platform.csv;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Writes CSV with LF. A cell that a spreadsheet would run as a formula gets a quote in front, which
 * {@link CsvTable} takes away again, so that what goes out comes back equal.
 */
public final class CsvWriter {
    private final StringBuilder out = new StringBuilder();

    /** @param header column names */
    public CsvWriter(List<String> header) {
        row(header.toArray());
    }

    /** Adds a row; {@code null} is an empty cell. */
    public CsvWriter row(@Nullable Object... cells) {
        for (int i = 0; i < cells.length; i++) {
            if (i > 0) {
                out.append(',');
            }
            Object cell = cells[i];
            append(cell == null ? "" : cell.toString());
        }
        out.append('\n');
        return this;
    }

    private void append(String cell) {
        String safe = startsLikeFormula(cell) || quotedFormula(cell) ? "'" + cell : cell;
        if (safe.indexOf(',') < 0 && safe.indexOf('"') < 0 && safe.indexOf('\n') < 0 && safe.indexOf('\r') < 0) {
            out.append(safe);
        } else {
            out.append('"').append(safe.replace("\"", "\"\"")).append('"');
        }
    }

    private static boolean quotedFormula(String cell) {
        return cell.length() >= 2 && cell.charAt(0) == '\'' && (startsLikeFormula(cell.substring(1))
                || quotedFormula(cell.substring(1)));
    }

    /** Whether a spreadsheet would take the cell for a formula; a plain negative number is none. */
    static boolean startsLikeFormula(String cell) {
        if (cell.isEmpty() || "=+-@\t\r".indexOf(cell.charAt(0)) < 0) {
            return quotedFormula(cell);
        }
        return !cell.matches("-?[0-9]+(\\.[0-9]+)?(E-?[0-9]+)?");
    }

    /** The file so far. */
    @Override
    public String toString() {
        return out.toString();
    }
}
