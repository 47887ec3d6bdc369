package org.stepwell.bench;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.stepwell.core.tier.Tier;

/** Writes the scores: JSON lines for programs, a table for people. */
final class BenchReport {
    private static final String IDEAL = "ideal";
    private static final List<String> FLOOR = List.of("last_mark", "mean_of_three", "step_seen_twice", "conventional");

    private final PrintStream out;
    private final PrintStream table;
    private final Map<String, List<Double>> ratios = new LinkedHashMap<>();
    private final Map<String, List<Double>> above = new LinkedHashMap<>();
    private final Map<String, long[][]> reliability = new LinkedHashMap<>();

    BenchReport(PrintStream out, PrintStream table, long seed, int count) {
        this.out = out;
        this.table = table;
        line("seed %d, %d classrooms per family. Balanced accuracy of the tier in force after each review.", seed, count);
        line(
                "%-22s %-16s %6s %6s  %5s %5s %5s  %6s %6s %6s  %s",
                "family", "decider", "bal", "/ideal", "supp", "on", "ext", "oppos%", "moves", "weeks", "right at .75-.85");
    }

    void family(String family, Map<String, Score> scores) {
        Score ideal = scores.get(IDEAL);
        double floor = scores.entrySet().stream()
                .filter(e -> FLOOR.contains(e.getKey()))
                .mapToDouble(e -> e.getValue().balancedAccuracy())
                .max()
                .orElse(Double.NaN);
        scores.forEach((decider, score) -> {
            double balanced = score.balancedAccuracy();
            double ratio = balanced / ideal.balancedAccuracy();
            String name = "decisions." + family + "." + decider + ".";
            json(name + "balanced_accuracy", balanced, "share", "ideal_observer", ratio);
            for (Tier tier : Tier.values()) {
                json(name + "recall_" + tier.code(), score.recall(tier), "share", "ideal_observer",
                        score.recall(tier) / ideal.recall(tier));
            }
            json(name + "opposite_errors", score.opposite(), "share", "limit 0.005", score.opposite() / 0.005);
            json(name + "moves", score.movesPerChild(), "moves per child", "limit 1.0", score.movesPerChild());
            json(name + "weeks_to_support", score.weeksToSupport(), "weeks", "ideal_observer",
                    score.weeksToSupport() / ideal.weeksToSupport());
            json(name + "right_when_clear", score.rightWhenClear(), "share", "chance 0.75-0.85",
                    score.rightWhenClear() / 0.8);
            row(family, decider, score, ratio);
            if (!FLOOR.contains(decider) && !decider.equals(IDEAL)) {
                ratios.computeIfAbsent(decider, d -> new ArrayList<>()).add(ratio);
                above.computeIfAbsent(decider, d -> new ArrayList<>()).add(balanced - floor);
                gather(decider, score);
            }
        });
    }

    private void row(String family, String decider, Score score, double ratio) {
        line(
                "%-22s %-16s %6.3f %6.3f  %5.2f %5.2f %5.2f  %6.2f %6.2f %6.2f  %s",
                family,
                decider,
                score.balancedAccuracy(),
                ratio,
                score.recall(Tier.SUPPORT),
                score.recall(Tier.ON_LEVEL),
                score.recall(Tier.EXTENSION),
                100 * score.opposite(),
                score.movesPerChild(),
                score.weeksToSupport(),
                score.clearMoves() == 0
                        ? "-"
                        : String.format(Locale.ROOT, "%.2f of %d", score.rightWhenClear(), score.clearMoves()));
    }

    private void gather(String decider, Score score) {
        long[][] sums = reliability.computeIfAbsent(decider, d -> new long[2][10]);
        for (int band = 0; band < 10; band++) {
            sums[0][band] += score.suggested()[band];
            sums[1][band] += score.right()[band];
        }
    }

    void finish() {
        ratios.forEach((decider, own) -> {
            double mean = own.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
            double worst = own.stream().mapToDouble(Double::doubleValue).min().orElse(Double.NaN);
            double least = above.get(decider).stream().mapToDouble(Double::doubleValue).min().orElse(Double.NaN);
            json("decisions.all." + decider + ".mean_of_ideal", mean, "ratio", "goal 0.975", mean / 0.975);
            json("decisions.all." + decider + ".worst_of_ideal", worst, "ratio", "goal 0.94", worst / 0.94);
            json("decisions.all." + decider + ".least_above_thumb", least, "share", "goal 0.16", least / 0.16);
            line("%s: mean %.3f and worst %.3f of the ideal; least above the best rule of thumb %.3f",
                    decider, mean, worst, least);
            long[][] sums = reliability.get(decider);
            StringBuilder bands = new StringBuilder("  moves right by chance:");
            for (int band = 0; band < 10; band++) {
                if (sums[0][band] > 0) {
                    bands.append(String.format(Locale.ROOT, "  .%d: %.2f of %d", band,
                            (double) sums[1][band] / sums[0][band], sums[0][band]));
                }
            }
            line("%s", bands);
        });
    }

    private void json(String name, double value, String unit, String against, double ratio) {
        out.print(String.format(
                Locale.ROOT,
                "{\"name\":\"%s\",\"value\":%s,\"unit\":\"%s\",\"against\":\"%s\",\"ratio\":%s}\n",
                name,
                number(value),
                unit,
                against,
                number(ratio)));
    }

    private static String number(double value) {
        return Double.isFinite(value) ? String.format(Locale.ROOT, "%.6f", value) : "null";
    }

    private void line(String format, Object... arguments) {
        table.print(String.format(Locale.ROOT, format, arguments) + "\n");
    }
}
