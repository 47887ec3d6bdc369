package org.stepwell.pacing;

import java.util.Collection;
import java.util.List;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.csv.Parsed;

/** The file {@code pacing.csv}. A skill has one row for a due day. */
public final class PacingCsv {
    private static final List<String> COLUMNS = List.of("skill", "taught_from", "due", "expected_step");

    private PacingCsv() {
    }

    /** Reads the bytes of a file. */
    public static Parsed<PacingRow> read(byte[] file) {
        return CsvTable.read(file, COLUMNS, List.of()).parse(
                row -> new PacingRow(row.required("skill"), row.dateOrNull("taught_from"), row.date("due"),
                        row.stepOrNull("expected_step")),
                row -> List.of(row.skill(), row.due()));
    }

    /** Writes rows, in the order given. */
    public static String write(Collection<PacingRow> rows) {
        CsvWriter out = new CsvWriter(COLUMNS);
        rows.forEach(row -> out.row(row.skill(), row.taughtFrom(), row.due(), row.expectedStep()));
        return out.toString();
    }
}
