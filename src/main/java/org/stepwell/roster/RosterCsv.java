package org.stepwell.roster;

import java.util.Collection;
import java.util.List;
import java.util.Objects;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.csv.Parsed;

/** The file {@code roster.csv}. A child has one line for a class and first day. */
public final class RosterCsv {
    private static final List<String> COLUMNS =
            List.of("child", "given_name", "family_name", "grade", "class", "start", "end");

    private RosterCsv() {
    }

    /** Reads the bytes of a file. */
    public static Parsed<RosterRow> read(byte[] file) {
        return CsvTable.read(file, COLUMNS, List.of()).parse(
                row -> new RosterRow(row.required("child"), row.required("given_name"), row.text("family_name"),
                        row.text("grade"), row.text("class"), row.dateOrNull("start"), row.dateOrNull("end")),
                row -> List.of(row.child(), row.className(), Objects.requireNonNullElse(row.start(), "")));
    }

    /** Writes rows, in the order given. */
    public static String write(Collection<RosterRow> rows) {
        CsvWriter out = new CsvWriter(COLUMNS);
        rows.forEach(row -> out.row(row.child(), row.givenName(), row.familyName(), row.grade(), row.className(),
                row.start(), row.end()));
        return out.toString();
    }
}
