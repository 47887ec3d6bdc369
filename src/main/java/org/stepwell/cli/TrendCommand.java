package org.stepwell.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.trend.Growth;
import org.stepwell.core.trend.TheilSen;
import org.stepwell.platform.csv.CsvRow;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.csv.Parsed;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Growth of each series of a file, in the order in which the series first appear. */
@Command(name = "trend", mixinStandardHelpOptions = true, description = {
        "Growth of each series in a file with columns series, x, y: least squares, Theil-Sen, Mann-Kendall.",
        "Slopes are per unit of x; what is not defined is left empty."})
final class TrendCommand implements Callable<Integer> {
    private static final List<String> COLUMNS = List.of("series", "x", "y");
    /** All pairs of points are held at once; more would not fit the usual heap. */
    private static final int MOST_POINTS = 5_000;

    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "SERIES.csv", description = "columns series, x, y")
    private Path file;
    @Option(names = "--out", paramLabel = "F", description = "file for the result; else it is printed")
    private @Nullable Path out;
    @Option(names = "--skip-bad-rows", description = "take the good rows of a file with bad ones")
    private boolean skipBadRows;

    private record Point(String series, double x, double y) {}

    @Override
    public Integer call() {
        InputFiles files = new InputFiles(spec.commandLine().getErr(), skipBadRows);
        List<Point> points = files.read(file, TrendCommand::points);
        files.refuseIfBad();
        Map<String, List<Point>> bySeries = new LinkedHashMap<>();
        points.forEach(p -> bySeries.computeIfAbsent(p.series(), s -> new ArrayList<>()).add(p));
        CsvWriter result = new CsvWriter(List.of("series", "n", "slope", "intercept", "se_slope", "low95", "high95",
                "theil_sen", "theil_low95", "theil_high95", "mann_kendall_s"));
        bySeries.forEach((series, own) -> add(result, series, own));
        if (out == null) {
            spec.commandLine().getOut().print(result);
            spec.commandLine().getOut().flush();
        } else {
            write(out, result.toString());
        }
        return 0;
    }

    private static void write(Path target, String content) {
        try {
            Files.writeString(target, content);
        } catch (IOException failed) {
            throw new BadFiles(target + " cannot be written; check that its folder exists and may be written to");
        }
    }

    private static Parsed<Point> points(byte[] bytes) {
        // Two equal rows are two measurements: no row stands for another one.
        return CsvTable.read(bytes, COLUMNS, List.of()).parse(TrendCommand::point, point -> new Object());
    }

    private static Point point(CsvRow row) {
        return new Point(row.required("series"), row.read("x", TrendCommand::number), row.read("y", TrendCommand::number));
    }

    private static double number(String text) {
        if (!text.strip().matches("[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][+-]?[0-9]+)?")) {
            throw new IllegalArgumentException("is not a number like 3, -0.5 or 1.2e3");
        }
        double value = Double.parseDouble(text.strip());
        if (Double.isInfinite(value)) {
            throw new IllegalArgumentException("is too large a number");
        }
        return value;
    }

    private static void add(CsvWriter result, String series, List<Point> points) {
        if (points.size() > MOST_POINTS) {
            throw new BadFiles("series " + series + " has " + points.size() + " points; up to " + MOST_POINTS
                    + " are taken. Split it, or take means first.");
        }
        Growth growth = Growth.of(points.stream().mapToDouble(Point::x).toArray(),
                points.stream().mapToDouble(Point::y).toArray());
        TheilSen robust = growth.theilSen();
        result.row(series, growth.n(), growth.slope(), growth.intercept(), growth.seSlope(), growth.low95(),
                growth.high95(), robust == null ? null : robust.slope(), robust == null ? null : robust.low(),
                robust == null ? null : robust.high(), growth.mannKendallS());
    }
}
