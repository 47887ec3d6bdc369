package org.stepwell.platform.csv;

import org.stepwell.core.problem.Problem;

/**
 * What is wrong with a file or one row of it.
 *
 * @param line line of the file, 1 = header; 0 = the file as a whole
 * @param column name of the column, or empty
 * @param reason what is wrong and what is accepted, in the language of whoever reads it
 */
public record CsvProblem(long line, String column, Problem reason) {
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        if (line > 0) {
            text.append("line ").append(line).append(", ");
        }
        if (!column.isEmpty()) {
            text.append("column ").append(column).append(": ");
        }
        return text.append(reason).toString();
    }
}
