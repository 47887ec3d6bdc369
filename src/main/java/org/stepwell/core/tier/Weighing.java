package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;

/** Finds the looks that mattered most, by leaving each out in turn and asking the rules again. */
final class Weighing {
    private static final int TOLD = 3;

    private record Weighed(Details.Weighty look, boolean changes, double shift) {}

    private Weighing() {}

    static List<Details.Weighty> of(
            RuleFile rules, ChildState state, Sight now, Judgement said, IntFunction<@Nullable Sight> earlier) {
        double chance = now.chances().of(said.tier());
        List<Weighed> all = new ArrayList<>();
        for (CountedLook look : now.looks()) {
            UUID id = look.look().id();
            Sight rest = now.without(id);
            Judgement without = Judgement.of(rules, state, rest, back -> {
                Sight then = earlier.apply(back);
                return then == null ? null : then.without(id);
            });
            double chanceWithout = rest.chances().of(said.tier());
            boolean changes = without.verdict() != said.verdict() || without.tier() != said.tier();
            all.add(new Weighed(
                    new Details.Weighty(
                            look,
                            chanceWithout,
                            without.verdict(),
                            without.tier(),
                            rest.chances().likeliest()),
                    changes,
                    Math.abs(chanceWithout - chance)));
        }
        return all.stream()
                .sorted(Comparator.comparing((Weighed w) -> !w.changes())
                        .thenComparing(w -> -w.shift())
                        .thenComparing(w -> w.look().look().look().id().toString()))
                .limit(TOLD)
                .map(Weighed::look)
                .toList();
    }
}
