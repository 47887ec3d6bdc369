package org.stepwell.check;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.stepwell.core.check.Responses;
import org.stepwell.core.check.Responses.Item;
import org.stepwell.core.problem.Problem;
import org.stepwell.platform.csv.CsvProblem;
import org.stepwell.platform.csv.CsvRow;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.csv.Parsed;

/**
 * The file responses.csv: columns {@code i01}, {@code i02}, ... are items, in the order of the header, and others are
 * ignored; in a file without any such name every column beside {@code child} is an item. A first row {@code #skill} may
 * name the skills of the items.
 */
public final class ResponsesCsv {
    private static final String SKILLS = "#skill";
    private static final Pattern ITEM = Pattern.compile("i[0-9]+");

    private ResponsesCsv() {
    }

    /**
     * A file as it was read.
     *
     * @param children ids of the rows, in order
     * @param responses the marks, one row for each of them
     */
    public record Sheet(List<String> children, Responses responses) {}

    private record Line(String child, List<String> cells, List<Double> marks) {}

    /** One {@link Sheet}, or none when the file as such cannot be read. */
    public static Parsed<Sheet> read(byte[] bytes) {
        List<String> header = CsvTable.read(bytes, List.of("child"), List.of()).unknownColumns();
        List<String> named = header.stream().filter(c -> ITEM.matcher(c).matches()).toList();
        List<String> ids = named.isEmpty() ? header.stream().filter(c -> !c.isEmpty()).toList() : named;
        Parsed<Line> lines = CsvTable.read(bytes, List.of("child"), ids).parse(row -> line(row, ids), Line::child);
        List<CsvProblem> problems = new ArrayList<>(lines.problems());
        if (problems.isEmpty() && ids.isEmpty()) {
            problems.add(new CsvProblem(1, "", Problem.of("check.no-items")));
        }
        List<String> skills = lines.rows().stream().filter(l -> l.child().equals(SKILLS)).findFirst()
                .map(Line::cells).orElse(List.of());
        List<Item> items = new ArrayList<>();
        for (int i = 0; i < ids.size(); i++) {
            items.add(new Item(ids.get(i), skills.isEmpty() || skills.get(i).isBlank() ? null : skills.get(i)));
        }
        List<Line> children = lines.rows().stream().filter(l -> !l.child().equals(SKILLS)).toList();
        Responses responses = new Responses(items, children.stream()
                .map(line -> line.marks().stream().mapToDouble(Double::doubleValue).toArray()).toList());
        return new Parsed<>(List.of(new Sheet(children.stream().map(Line::child).toList(), responses)), problems,
                lines.unknownColumns());
    }

    /** Writes the answers; an item not reached is an empty cell. */
    public static String write(Sheet sheet) {
        List<Item> items = sheet.responses().items();
        List<String> header = new ArrayList<>(List.of("child"));
        items.forEach(item -> header.add(item.id()));
        CsvWriter out = new CsvWriter(header);
        if (items.stream().anyMatch(item -> item.skill() != null)) {
            List<Object> skills = new ArrayList<>(List.of(SKILLS));
            items.forEach(item -> skills.add(item.skill() == null ? "" : item.skill()));
            out.row(skills.toArray());
        }
        for (int c = 0; c < sheet.children().size(); c++) {
            List<Object> row = new ArrayList<>(List.of(sheet.children().get(c)));
            for (double mark : sheet.responses().rows().get(c)) {
                row.add(Double.isNaN(mark) ? "" : mark == 1 ? "1" : mark == 0 ? "0" : "0.5");
            }
            out.row(row.toArray());
        }
        return out.toString();
    }

    private static Line line(CsvRow row, List<String> ids) {
        String child = row.required("child");
        List<String> cells = ids.stream().map(row::text).toList();
        List<Double> marks = child.equals(SKILLS) ? List.of() : ids.stream().map(id -> mark(row, id)).toList();
        return new Line(child, cells, marks);
    }

    private static double mark(CsvRow row, String id) {
        String text = row.text(id).strip();
        return switch (text) {
            case "" -> Double.NaN;
            case "0", "0.0" -> 0;
            case "1", "1.0" -> 1;
            case "0.5", ".5" -> 0.5;
            default -> throw new CsvRow.Bad(id, "cell.mark", text);
        };
    }
}
