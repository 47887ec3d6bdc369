package org.stepwell.platform.csv;

import java.util.List;

/**
 * What a file held.
 *
 * @param rows the good ones, in the order of the file
 * @param problems every bad row, and what is wrong with the file as such
 * @param unknownColumns columns that were ignored
 */
public record Parsed<T>(List<T> rows, List<CsvProblem> problems, List<String> unknownColumns) {
    /** Whether every row was good. */
    public boolean clean() {
        return problems.isEmpty();
    }
}
