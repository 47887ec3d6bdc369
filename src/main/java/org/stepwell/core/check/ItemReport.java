package org.stepwell.core.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Item and test statistics of a unit check. A mark that is not reached counts 0 in totals and is left out of the share
 * right. {@code null} is what is not defined.
 *
 * @param n children
 * @param mean of the totals
 * @param sd of the totals, with n - 1
 * @param kr20 Kuder and Richardson's formula 20; {@code null} with half marks
 * @param alpha Cronbach's alpha
 * @param sem standard error of measurement: {@code sd} times the root of 1 - alpha
 */
public record ItemReport(
        int n,
        @Nullable Double mean,
        @Nullable Double sd,
        @Nullable Double kr20,
        @Nullable Double alpha,
        @Nullable Double sem,
        List<ItemLine> items) {

    /** Share of the children in the upper and in the lower group (Kelley 1939, by common report). */
    private static final double GROUP_SHARE = 0.27;

    /**
     * One item.
     *
     * @param p mean mark of those who reached it, 0 to 1
     * @param rRest correlation with the total of the other items
     * @param alphaWithout alpha of the check without this item
     * @param discrimination mean mark of the upper group minus that of the lower one, by total; equal totals keep the
     *     order of the file
     * @param notReached children who did not reach it
     */
    public record ItemLine(
            String id,
            @Nullable String skill,
            @Nullable Double p,
            @Nullable Double rRest,
            @Nullable Double alphaWithout,
            @Nullable Double discrimination,
            int notReached) {}

    /** Copies the list. */
    public ItemReport {
        items = List.copyOf(items);
    }

    /** Measures a check. */
    public static ItemReport of(Responses responses) {
        int n = responses.rows().size();
        int k = responses.items().size();
        double[][] columns = new double[k][n];
        double[] totals = new double[n];
        boolean halves = false;
        for (int c = 0; c < n; c++) {
            for (int i = 0; i < k; i++) {
                double mark = responses.rows().get(c)[i];
                columns[i][c] = Double.isNaN(mark) ? 0 : mark;
                totals[c] += columns[i][c];
                halves |= mark == 0.5;
            }
        }
        List<ItemLine> lines = new ArrayList<>();
        int[] order = IntStream.range(0, n).boxed().sorted(Comparator.comparingDouble(c -> -totals[c]))
                .mapToInt(Integer::intValue).toArray();
        for (int i = 0; i < k; i++) {
            lines.add(line(responses, i, columns, totals, order));
        }
        Double alpha = alpha(columns, totals, -1);
        Double sd = n < 2 ? null : StrictMath.sqrt(squares(totals) / (n - 1));
        Double sem = sd == null || alpha == null ? null : (Double) (sd * StrictMath.sqrt(1 - alpha));
        return new ItemReport(n, n == 0 ? null : (Double) mean(totals), sd, halves ? null : alpha, alpha, sem, lines);
    }

    private static ItemLine line(Responses responses, int i, double[][] columns, double[] totals, int[] order) {
        int n = totals.length;
        double sum = 0;
        int reached = 0;
        double[] rest = new double[n];
        for (int c = 0; c < n; c++) {
            double mark = responses.rows().get(c)[i];
            if (!Double.isNaN(mark)) {
                sum += mark;
                reached++;
            }
            rest[c] = totals[c] - columns[i][c];
        }
        Responses.Item item = responses.items().get(i);
        return new ItemLine(item.id(), item.skill(), reached == 0 ? null : (Double) (sum / reached),
                correlation(columns[i], rest), alpha(columns, rest, i), discrimination(columns[i], order), n - reached);
    }

    private static @Nullable Double discrimination(double[] marks, int[] order) {
        int size = (int) Math.round(GROUP_SHARE * order.length);
        if (size == 0) {
            return null;
        }
        double upper = 0;
        double lower = 0;
        for (int g = 0; g < size; g++) {
            upper += marks[order[g]];
            lower += marks[order[order.length - 1 - g]];
        }
        return (upper - lower) / size;
    }

    /** Alpha of all items but one; for marks of 0 and 1 it equals formula 20. */
    private static @Nullable Double alpha(double[][] columns, double[] totals, int without) {
        int k = columns.length - (without < 0 ? 0 : 1);
        double whole = squares(totals);
        if (k < 2 || totals.length < 2 || whole == 0) {
            return null;
        }
        double parts = 0;
        for (int i = 0; i < columns.length; i++) {
            if (i != without) {
                parts += squares(columns[i]);
            }
        }
        return k / (k - 1.0) * (1 - parts / whole);
    }

    private static @Nullable Double correlation(double[] a, double[] b) {
        double spread = squares(a) * squares(b);
        if (spread == 0) {
            return null;
        }
        double meanA = mean(a);
        double meanB = mean(b);
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - meanA) * (b[i] - meanB);
        }
        return sum / StrictMath.sqrt(spread);
    }

    /** Sum of squared distances from the mean; exactly 0 when all are equal. */
    private static double squares(double[] values) {
        double mean = mean(values);
        double sum = 0;
        for (double value : values) {
            sum += (value - mean) * (value - mean);
        }
        return sum;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
