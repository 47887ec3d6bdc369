package org.stepwell.core.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ItemReportTest {
    private static final double CLOSE = 1e-9;

    /** LSAT section 6, Bock and Lieberman 1970, data set lsat6 of the R package psych; alpha by psych and psy. */
    @Test
    void agreesWithSectionSix() {
        ItemReport report = counted("""
                00000:3 00001:6 00010:2 00011:11 00100:1 00101:1 00110:3 00111:4 01000:1 01001:8 01011:16 01101:3
                01110:2 01111:15 10000:10 10001:29 10010:14 10011:81 10100:3 10101:28 10110:15 10111:80 11000:16
                11001:56 11010:21 11011:173 11100:11 11101:61 11110:28 11111:298""");
        assertThat(report.n()).isEqualTo(1000);
        near(report.mean(), 3.819);
        near(report.alpha(), .294997192215944);
        near(report.kr20(), .294997192215944);
        double[] p = {.924, .709, .553, .763, .870};
        double[] rest = {.112832688922, .153178120117, .172778943291, .144428095247, .121596402547};
        double[] without = {.275356210798, .237583904647, .216799462943, .245932710434, .266294411208};
        for (int i = 0; i < 5; i++) {
            near(report.items().get(i).p(), p[i]);
            near(report.items().get(i).rRest(), rest[i]);
            near(report.items().get(i).alphaWithout(), without[i]);
        }
    }

    /** LSAT section 7, same paper, data set lsat7 of the R package psych. */
    @Test
    void agreesWithSectionSeven() {
        near(counted("""
                00000:12 00001:19 00010:1 00011:7 00100:3 00101:19 00110:3 00111:17 01000:10 01001:5 01010:3 01011:7
                01100:7 01101:23 01110:8 01111:28 10000:7 10001:39 10010:11 10011:34 10100:14 10101:51 10110:15
                10111:90 11000:6 11001:25 11010:7 11011:35 11100:18 11101:136 11110:32 11111:308""").alpha(),
                .453408735387426);
    }

    /** A class of our own; alpha by the R packages psych and psychometric, discrimination by its formula. */
    @Test
    void agreesOnAClassOfTwelve() {
        ItemReport report = counted("""
                00100011000010000000:1 11111100100000000000:1 11110100001000001000:1 11010100101010000000:1
                11101111110100000001:1 10101100000100000100:1 11111111011100100010:1 11111111011110111100:1
                11111110111111110000:1 10111111111001001000:1 11111111111010100010:1 11111111111111011111:1""");
        near(report.sd(), 4.67990546395);
        near(report.alpha(), .853465382584791);
        near(report.sem(), 1.79146033825);
        double[] p = {.916666667, .75, .916666667, .75, .75, .916666667, .666666667, .583333333, .583333333, .583333333,
            .666666667, .5, .5, .25, .333333333, .25, .333333333, .25, .25, .166666667};
        double[] rest = {.4150286783, .3806076134, .2048366226, .4273170940, .5700991146, .4150286783, .5912561448,
            .3827736661, .2203892660, .8629023608, .5464307572, .4528998376, .2502314601, .4982018950, .4873347445,
            .6922667310, .3144495264, .2656844657, .4982018950, .3347300388};
        for (int i = 0; i < 20; i++) {
            near(report.items().get(i).p(), p[i]);
            near(report.items().get(i).rRest(), rest[i]);
        }
        int[] thirds = {1, 2, 1, 2, 2, 1, 2, 1, 1, 3, 2, 2, 1, 2, 2, 3, 2, 1, 1, 1};
        for (int i = 0; i < 20; i++) {
            near(report.items().get(i).discrimination(), thirds[i] / 3.0);
        }
    }

    /** Source: the README beside the file; values by R. */
    @Test
    void agreesWithRForTwoHundredPersons() throws IOException {
        List<double[]> rows = Files.readAllLines(Path.of("src/test/resources/reference/exam-200.csv")).stream().skip(1)
                .map(l -> Arrays.stream(l.split(",")).skip(1).mapToDouble(Double::parseDouble).toArray()).toList();
        ItemReport report = report(rows);
        near(report.mean(), 7.325);
        near(report.sd(), 2.90197905093409);
        near(report.alpha(), .722765222147634);
        near(report.sem(), 1.52798161170059);
        double[] p = {.560, .685, .775, .485, .730, .640, .150, .615, .425, .375, .810, .635, .440};
        double[] rest = {.271495635, .335453736267, .341591426154, .301557641585, .358506205579, .428702512082,
            .198607767084, .445481935307, .356458504152, .393622727831, .416673581555, .36516305074, .266835898887};
        for (int i = 0; i < 13; i++) {
            near(report.items().get(i).p(), p[i]);
            near(report.items().get(i).rRest(), rest[i]);
        }
    }

    /** By hand: variances by n are 1/6 and 1/18 for the items, 7/18 for the totals 1.5, 1, 0. */
    @Test
    void hasAlphaButNoFormula20WithHalfMarks() {
        ItemReport halves = report(List.of(new double[] {1, 0.5}, new double[] {0.5, 0.5}, new double[] {0, 0}));
        assertThat(halves.kr20()).isNull();
        near(halves.alpha(), 2 * (1 - (1 / 6.0 + 1 / 18.0) / (7 / 18.0)));
    }

    /** By hand: variances by n are 1/4 and 3/16 for the items, 11/16 for the totals 2, 1, 0, 0. */
    @Test
    void countsAnItemNotReachedAsNothingInTheTotalButNotAsWrong() {
        ItemReport gaps = report(List.of(new double[] {1, 1}, new double[] {1, Double.NaN}, new double[] {0, 0},
                new double[] {0, Double.NaN}));
        near(gaps.mean(), 0.75);
        near(gaps.items().get(1).p(), 0.5);
        assertThat(gaps.items().get(1).notReached()).isEqualTo(2);
        near(gaps.alpha(), 2 * (1 - (1 / 4.0 + 3 / 16.0) / (11 / 16.0)));
    }

    @Test
    void leavesUndefinedWhatIsNot() {
        ItemReport report = report(List.of(new double[] {1, 0.5, Double.NaN}, new double[] {1, 0, Double.NaN}));
        assertThat(report.kr20()).isNull();
        assertThat(report.alpha()).isNotNull();
        assertThat(report.items().get(0).rRest()).isNull();
        assertThat(report.items().get(2).p()).isNull();
        assertThat(report.items().get(2).notReached()).isEqualTo(2);
        assertThat(report(List.of()).mean()).isNull();
    }

    /**
     * Formula 20 written out as Kuder and Richardson have it (1937, Psychometrika 2, 151-160; from memory): shares and
     * variances by n. On marks of 0 and 1 it is alpha. The mixed value (shares with a variance by n - 1) is the usual
     * slip and must not come out; the three expected ones are by R.
     */
    @Test
    void formulaTwentyIsAlphaOnRightAndWrong() throws IOException {
        List<double[]> six = rows("""
                00000:3 00001:6 00010:2 00011:11 00100:1 00101:1 00110:3 00111:4 01000:1 01001:8 01011:16 01101:3
                01110:2 01111:15 10000:10 10001:29 10010:14 10011:81 10100:3 10101:28 10110:15 10111:80 11000:16
                11001:56 11010:21 11011:173 11100:11 11101:61 11110:28 11111:298""");
        near(formulaTwenty(six, 0), .294997192215944);
        near(formulaTwenty(six, 1), .295952195024);
        List<double[]> exam = Files.readAllLines(Path.of("src/test/resources/reference/exam-200.csv")).stream().skip(1)
                .map(l -> Arrays.stream(l.split(",")).skip(1).mapToDouble(Double::parseDouble).toArray()).toList();
        for (List<double[]> rows : List.of(six, exam)) {
            near(report(rows).kr20(), formulaTwenty(rows, 0));
            near(report(rows).alpha(), formulaTwenty(rows, 0));
        }
        long seed = 20261125L;
        System.out.println("formulaTwentyIsAlphaOnRightAndWrong: seed " + seed);
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        for (int round = 0; round < 200; round++) {
            List<double[]> made = IntStream.range(0, 3 + random.nextInt(25)).mapToObj(
                    c -> random.ints(6, 0, 2).asDoubleStream().toArray()).toList();
            ItemReport report = report(made);
            if (report.alpha() != null) {
                near(report.kr20(), formulaTwenty(made, 0));
            }
        }
    }

    private static double formulaTwenty(List<double[]> rows, int less) {
        int n = rows.size();
        int k = rows.getFirst().length;
        double pq = 0;
        for (int i = 0; i < k; i++) {
            int item = i;
            double p = rows.stream().mapToDouble(r -> r[item]).sum() / n;
            pq += p * (1 - p);
        }
        double[] totals = rows.stream().mapToDouble(r -> Arrays.stream(r).sum()).toArray();
        double mean = Arrays.stream(totals).sum() / n;
        double variance = Arrays.stream(totals).map(t -> (t - mean) * (t - mean)).sum() / (n - less);
        return k / (k - 1.0) * (1 - pq / variance);
    }

    private static ItemReport counted(String patterns) {
        return report(rows(patterns));
    }

    private static List<double[]> rows(String patterns) {
        List<double[]> rows = new ArrayList<>();
        for (String pattern : patterns.split("\\s+")) {
            String[] halves = pattern.split(":");
            for (int i = 0; i < Integer.parseInt(halves[1]); i++) {
                rows.add(halves[0].chars().mapToDouble(c -> c - '0').toArray());
            }
        }
        return rows;
    }

    private static ItemReport report(List<double[]> rows) {
        int k = rows.isEmpty() ? 0 : rows.getFirst().length;
        return ItemReport.of(new Responses(
                IntStream.range(0, k).mapToObj(i -> new Responses.Item("i" + i, null)).toList(), rows));
    }

    private static void near(Double measured, double expected) {
        assertThat(measured).isCloseTo(expected, within(CLOSE));
    }
}
