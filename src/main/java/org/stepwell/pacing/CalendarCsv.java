package org.stepwell.pacing;

import java.util.Collection;
import java.util.List;
import org.stepwell.core.pacing.SchoolCalendar.Break;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.csv.Parsed;

/** The file {@code calendar.csv}: days without school beside weekends. */
public final class CalendarCsv {
    private static final List<String> COLUMNS = List.of("from", "to", "reason");

    private CalendarCsv() {
    }

    /** Reads the bytes of a file. */
    public static Parsed<Break> read(byte[] file) {
        return CsvTable.read(file, COLUMNS, List.of()).parse(
                row -> new Break(row.date("from"), row.date("to"), row.text("reason")),
                row -> List.of(row.from(), row.to()));
    }

    /** Writes breaks, in the order given. */
    public static String write(Collection<Break> breaks) {
        CsvWriter out = new CsvWriter(COLUMNS);
        breaks.forEach(row -> out.row(row.from(), row.to(), row.reason()));
        return out.toString();
    }
}
