package org.stepwell.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiFunction;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.TierChances;

/** What teachers use when nothing better is at hand. The floor. */
final class ThumbRules {
    private ThumbRules() {}

    static List<Decider> all() {
        return List.of(
                rule("last_mark", ThumbRules::lastMark),
                rule("mean_of_three", ThumbRules::meanOfThree),
                rule("step_seen_twice", ThumbRules::seenTwice));
    }

    private static Decider rule(String name, BiFunction<Decider.Sight, Tier, Tier> rule) {
        return new Decider() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public List<Call> decide(Classroom room, Classroom.Child child, RoomEvidence evidence) {
                List<Call> calls = new ArrayList<>();
                Tier tier = Tier.ON_LEVEL;
                for (int review = 0; review < room.reviews().size(); review++) {
                    Sight sight = evidence.sight(child.id(), review);
                    tier = sight.due().size() < 2 ? tier : rule.apply(sight, tier);
                    calls.add(new Call(tier, 0));
                }
                return calls;
            }
        };
    }

    private static Tier lastMark(Decider.Sight sight, Tier now) {
        return sight.looks().isEmpty() ? now : byGap(gap(sight, sight.looks().getLast()), 0, 1);
    }

    private static Tier meanOfThree(Decider.Sight sight, Tier now) {
        int n = sight.looks().size();
        if (n < 3) {
            return now;
        }
        double sum = 0;
        for (CountedLook look : sight.looks().subList(n - 3, n)) {
            sum += gap(sight, look);
        }
        return byGap(sum / 3, -0.5, 0.5);
    }

    private static Tier byGap(double gap, double support, double extension) {
        return gap < support ? Tier.SUPPORT : gap >= extension ? Tier.EXTENSION : Tier.ON_LEVEL;
    }

    private static double gap(Decider.Sight sight, CountedLook look) {
        int expected = sight.due().get(look.skill());
        return look.step() >= 5 ? Math.max(1, 5 - expected) : look.step() - expected;
    }

    private static Tier seenTwice(Decider.Sight sight, Tier now) {
        Map<String, int[]> counts = new TreeMap<>();
        for (CountedLook look : sight.looks()) {
            counts.computeIfAbsent(look.skill(), s -> new int[6])[look.step()]++;
        }
        List<Integer> steps = new ArrayList<>();
        List<Integer> expected = new ArrayList<>();
        counts.forEach((skill, count) -> {
            for (int step = 5; step >= 1; step--) {
                if (count[step] >= 2) {
                    steps.add(step);
                    expected.add(sight.due().get(skill));
                    return;
                }
            }
        });
        return steps.size() < 2 ? now : TierChances.meant(ints(steps), ints(expected));
    }

    private static int[] ints(List<Integer> values) {
        return values.stream().mapToInt(Integer::intValue).toArray();
    }
}
