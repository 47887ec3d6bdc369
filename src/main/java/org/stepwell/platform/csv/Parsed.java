package org.stepwell.platform.csv;

import java.util.Collections;
import java.util.List;

/**
 * What a file held.
 *
 * @param rows the good ones, in the order of the file
 * @param lines for each of them the line it starts on, 1 = header; 0 = the rows do not stand for lines
 * @param problems every bad row, and what is wrong with the file as such
 * @param unknownColumns columns that were ignored
 */
public record Parsed<T>(List<T> rows, List<Long> lines, List<CsvProblem> problems, List<String> unknownColumns) {
    /** Checks that every row has its line. */
    public Parsed {
        if (lines.size() != rows.size()) {
            throw new IllegalArgumentException(rows.size() + " rows with " + lines.size() + " lines");
        }
    }

    /** Rows that do not stand for lines of the file. */
    public Parsed(List<T> rows, List<CsvProblem> problems, List<String> unknownColumns) {
        this(rows, Collections.nCopies(rows.size(), 0L), problems, unknownColumns);
    }

    /** Whether every row was good. */
    public boolean clean() {
        return problems.isEmpty();
    }
}
