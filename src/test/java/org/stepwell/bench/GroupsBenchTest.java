package org.stepwell.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class GroupsBenchTest {
    private static int[][] prices(int children, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int[][] price = new int[children][children];
        for (int i = 0; i < children; i++) {
            for (int j = 0; j < i; j++) {
                price[i][j] = random.nextInt(30);
                price[j][i] = price[i][j];
            }
        }
        return price;
    }

    /** Tries every group for every child. */
    private static int tried(int[][] price, int[] group, int next, int groups) {
        int children = price.length;
        if (next == children) {
            int sum = 0;
            int[] size = new int[groups];
            for (int i = 0; i < children; i++) {
                size[group[i]]++;
                for (int j = 0; j < i; j++) {
                    sum += group[i] == group[j] ? price[i][j] : 0;
                }
            }
            for (int s : size) {
                if (s < children / groups || s > (children + groups - 1) / groups) {
                    return Integer.MAX_VALUE;
                }
            }
            return sum;
        }
        int best = Integer.MAX_VALUE;
        for (int g = 0; g < groups; g++) {
            group[next] = g;
            best = Math.min(best, tried(price, group, next + 1, groups));
        }
        return best;
    }

    @Test
    void theExactPriceIsTheLeastOfAllTried() {
        for (int children = 3; children <= 9; children++) {
            for (int groups = 1; groups <= 3; groups++) {
                int[][] price = prices(children, 7L * children + groups);
                assertThat(ExactGroups.least(price, groups)).isEqualTo(tried(price, new int[children], 0, groups));
            }
        }
    }

    @Test
    void noSharingOutIsCheaperThanTheBound() {
        for (long seed = 0; seed < 5; seed++) {
            int[][] price = prices(15, seed);
            long bound = GroupsBound.of(price, 30);
            int exact = ExactGroups.least(price, 3);
            assertThat(bound).isBetween(exact * 9L / 10, (long) exact);
        }
    }
}
