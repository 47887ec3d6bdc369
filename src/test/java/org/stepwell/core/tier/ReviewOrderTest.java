package org.stepwell.core.tier;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ReviewOrderTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 6);

    private static Suggestion says(String child, Verdict verdict, Caution... cautions) {
        return new Suggestion(child, DAY, Tier.ON_LEVEL, verdict == Verdict.MOVE ? Tier.SUPPORT : Tier.ON_LEVEL, verdict,
                new TierChances(0.2, 0.6, 0.2), 6, 3, DAY, Suggestion.STAY, List.of(), List.of(), List.of(), List.of(),
                null, null, List.of(cautions), new Suggestion.Versions("weighed", "1", "1"));
    }

    private static ClassReview of(Suggestion... suggestions) {
        return new ClassReview(DAY, List.of(suggestions), List.of());
    }

    @Test
    void movesComeFirstThenWhoChangedOrIsAskedAbout() {
        ReviewOrder order = ReviewOrder.of(of(says("asked", Verdict.NOT_ENOUGH), says("changed", Verdict.STAY),
                says("differ", Verdict.STAY, Caution.OBSERVERS_DIFFER), says("hardly", Verdict.NOT_ENOUGH),
                says("mover", Verdict.MOVE)), Map.of("changed", Verdict.MOVE), List.of("asked"), 1);
        assertThat(order.think()).containsExactly("mover", "asked", "changed", "differ");
        assertThat(order.look()).containsExactly("hardly");
        assertThat(order.quiet()).isEmpty();
        assertThat(order.rest()).isEmpty();
    }

    @Test
    void threeQuietCasesAreDrawnAndStayTheSameWhenTheReviewGoesOn() {
        Suggestion[] calm = IntStream.range(0, 12).mapToObj(i -> says("c%02d".formatted(i), Verdict.STAY))
                .toArray(Suggestion[]::new);
        ReviewOrder first = ReviewOrder.of(of(calm), Map.of(), List.of(), 42);
        assertThat(first.quiet()).hasSize(ReviewOrder.QUIET_CASES).doesNotHaveDuplicates();
        assertThat(ReviewOrder.of(of(calm), Map.of(), List.of(), 42)).isEqualTo(first);
        TreeSet<String> drawn = new TreeSet<>();
        for (long seed = 0; seed < 60; seed++) {
            drawn.addAll(ReviewOrder.of(of(calm), Map.of(), List.of(), seed).quiet());
        }
        assertThat(drawn).as("every child comes up in some week").hasSize(12);
    }

    @Test
    void everyChildStandsExactlyOnce() {
        List<Suggestion> all = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            all.add(says("c%02d".formatted(i), Verdict.values()[i % 3]));
        }
        ReviewOrder order = ReviewOrder.of(of(all.toArray(Suggestion[]::new)), Map.of(), List.of("c01"), 7);
        assertThat(Stream.of(order.think(), order.look(), order.quiet(), order.rest()).flatMap(List::stream))
                .containsExactlyInAnyOrderElementsOf(all.stream().map(Suggestion::child).toList());
    }
}
