package org.stepwell.core.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class GrowthTest {
    private static final double CLOSE = 1e-9;

    /** NIST Statistical Reference Datasets, linear regression, "Norris": certified values. */
    @Test
    void agreesWithTheCertifiedValuesOfNorris() {
        double[] y = {.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, .3, .1, 778.1, 668.8,
            339.3, 448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6, .3, .6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6,
            228.9, 668.4, 449.2, .2};
        double[] x = {.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, .4, .6, 775.5, 666.9, 338,
            447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2, .3, .3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2,
            669.1, 448.9, .5};
        Growth growth = Growth.of(x, y);
        near(growth.slope(), 1.00211681802045);
        near(growth.intercept(), -0.262323073774029);
        near(growth.seSlope(), 0.000429796848199937);
    }

    /** Sen 1968, JASA 63:1379, example; the limits as SciPy's and R deming's tests have them. */
    @Test
    void agreesWithTheExampleOfSen() {
        double[] x = {1, 2, 3, 4, 10, 12, 18};
        double[] y = {9, 15, 19, 20, 45, 55, 78};
        TheilSen slope = Objects.requireNonNull(TheilSen.of(x, y, 0.93));
        near(slope.slope(), 4);
        near(slope.low(), 26.0 / 7);
        near(slope.high(), 4.375);
        assertThat(Growth.of(x, y).mannKendallS()).isEqualTo(21);
    }

    /** Anscombe 1973, American Statistician 27:17, first set; standard error by R lm on its data set anscombe. */
    @Test
    void agreesWithTheFirstSetOfAnscombe() {
        double[] x = {10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5};
        double[] y = {8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68};
        Growth growth = Growth.of(x, y);
        near(growth.intercept(), 3.00009090909091);
        near(growth.slope(), .500090909090909);
        near(growth.seSlope(), .117905500595634);
    }

    /** Made-up class series by week; expected values by R 4 lm and confint, Theil-Sen and S by their formulas. */
    @Test
    void agreesWithRForAClassByWeek() {
        Growth growth = Growth.of(new double[] {1, 2, 3, 4, 5, 6, 7, 8}, new double[] {3, 4, 4, 6, 5, 7, 8, 8});
        near(growth.slope(), .75);
        near(growth.intercept(), 2.25);
        near(growth.seSlope(), .0944911182523068);
        near(growth.low95(), .51878856292049);
        near(growth.high95(), .98121143707951);
        near(Objects.requireNonNull(growth.theilSen()).slope(), .775);
        assertThat(growth.mannKendallS()).isEqualTo(24);
    }

    /** Made-up series with weeks left out; expected values by R 4 lm. */
    @Test
    void measuresAlongTheDaysAndNotAlongTheCount() {
        Growth growth = Growth.of(new double[] {1, 2, 5, 6, 9, 10}, new double[] {2, 2, 3, 3, 4, 4});
        assertThat(growth.slope()).isCloseTo(.24427480916, within(1e-11));
        assertThat(growth.intercept()).isCloseTo(1.65648854962, within(1e-11));
        near(growth.seSlope(), .0186983949831);
    }

    /** Source of the expected values: the README beside the files. */
    @Test
    void agreesWithRForSixtyChildren() throws IOException {
        List<String[]> points = rows("growth-60.csv");
        List<String[]> expected = rows("growth-60-reference.csv");
        assertThat(expected).hasSize(60);
        for (String[] row : expected) {
            List<String[]> own = points.stream().filter(p -> p[0].equals(row[0])).toList();
            Growth growth = Growth.of(own.stream().mapToDouble(p -> Double.parseDouble(p[1])).toArray(),
                    own.stream().mapToDouble(p -> Double.parseDouble(p[3])).toArray());
            assertThat(growth.n()).isEqualTo(Integer.parseInt(row[1]));
            near(growth.slope(), Double.parseDouble(row[2]));
            near(growth.intercept(), Double.parseDouble(row[3]));
            near(growth.seSlope(), Double.parseDouble(row[4]));
            near(growth.low95(), Double.parseDouble(row[5]));
            near(growth.high95(), Double.parseDouble(row[6]));
            near(Objects.requireNonNull(growth.theilSen()).slope(), Double.parseDouble(row[7]));
            assertThat(growth.mannKendallS()).isEqualTo(Long.parseLong(row[8].strip()));
        }
    }

    /** Source of the expected values: the README beside the files. */
    @Test
    void boundsTheRobustSlopeOfSixtyChildrenAsSciPyDoes() throws IOException {
        List<String[]> points = rows("growth-60.csv");
        List<String[]> expected = rows("growth-60-theil.csv");
        assertThat(expected).hasSize(60);
        for (String[] row : expected) {
            List<String[]> own = points.stream().filter(p -> p[0].equals(row[0])).toList();
            TheilSen slope = Objects.requireNonNull(
                    TheilSen.of(own.stream().mapToDouble(p -> Double.parseDouble(p[1])).toArray(),
                            own.stream().mapToDouble(p -> Double.parseDouble(p[3])).toArray()));
            near(slope.slope(), Double.parseDouble(row[1]));
            near(slope.low(), Double.parseDouble(row[2]));
            near(slope.high(), Double.parseDouble(row[3]));
        }
    }

    /** Made-up series with ties in x and y; expected values by SciPy 1.17.1, scipy.stats.theilslopes, alpha 0.95. */
    @Test
    void boundsTheRobustSlopeWhereTimesAndValuesAreEqual() {
        TheilSen slope = Objects.requireNonNull(TheilSen.of(new double[] {1, 1, 2, 3, 3, 4, 5, 6, 6, 7, 8, 9},
                new double[] {2, 2, 3, 3, 3, 4, 4, 5, 5, 5, 3, 4}));
        near(slope.slope(), 0.5);
        near(slope.low(), 0);
        near(slope.high(), 0.5);
    }

    @Test
    void leavesUndefinedWhatFewPointsCannotSay() {
        Growth one = Growth.of(new double[] {1}, new double[] {3});
        assertThat(one.slope()).isNull();
        assertThat(one.theilSen()).isNull();
        Growth two = Growth.of(new double[] {1, 3}, new double[] {3, 4});
        near(two.slope(), 0.5);
        assertThat(two.seSlope()).isNull();
        assertThat(Objects.requireNonNull(two.theilSen()).low()).isNull();
        assertThat(Growth.of(new double[] {2, 2, 2}, new double[] {1, 2, 3}).slope()).isNull();
    }

    @Test
    void isExactlyFlatOnAFlatSeries() {
        Growth flat = Growth.of(new double[] {1, 2, 3, 4, 5, 6}, new double[] {.1, .1, .1, .1, .1, .1});
        assertThat(flat.slope()).isEqualTo(0.0);
        assertThat(flat.mannKendallS()).isZero();
    }

    private static List<String[]> rows(String file) throws IOException {
        return Files.readAllLines(Path.of("src/test/resources/reference", file)).stream().skip(1)
                .map(line -> line.split(",")).toList();
    }

    private static void near(Double measured, double expected) {
        assertThat(measured).isCloseTo(expected, within(CLOSE));
    }
}
