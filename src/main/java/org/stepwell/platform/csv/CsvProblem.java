package org.stepwell.platform.csv;

/**
 * What is wrong with a file or one row of it.
 *
 * @param line line of the file, 1 = header; 0 = the file as a whole
 * @param column name of the column, or empty
 * @param reason what is wrong and what is accepted
 */
public record CsvProblem(long line, String column, String reason) {
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
