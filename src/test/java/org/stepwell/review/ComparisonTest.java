package org.stepwell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.wording.Language;
import org.stepwell.review.SealedReview.Line;

class ComparisonTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);
    private static final UUID ANA = new UUID(1, 1);
    private static final UUID BEN = new UUID(1, 2);
    private static final UUID CAI = new UUID(1, 3);
    private static final UUID DOA = new UUID(1, 4);

    private static Line line(UUID child, Tier to, Tier suggested, String verdict, @Nullable LocalDate until,
            Integer... looks) {
        return new Line(child, Tier.ON_LEVEL, to, suggested, verdict, until == null ? "keep" : "defer", until, "", "T.",
                "", looks.length, 1, 0.8, "weighed 3", Set.copyOf(List.of(looks).stream().map(ComparisonTest::id).toList()));
    }

    private static UUID id(int look) {
        return new UUID(2, look);
    }

    private static Look look(int id, String skill, @Nullable UUID replaces, boolean withdrawn) {
        return new Look(id(id), OffsetDateTime.parse("2026-03-04T09:40:00-06:00"), "c1", skill, "13", withdrawn ? null : 2,
                Help.NONE, Kind.TABLE, "teacher", Set.of(), null, replaces, withdrawn, null);
    }

    private static SealedReview review(LocalDate week, Line... lines) {
        return new SealedReview(UUID.randomUUID(), week, week.plusDays(4), "T.", Instant.EPOCH, true, List.of(lines),
                Map.of());
    }

    @Test
    void saysWhoChangedWhoStayedOnWhatAndWhoCameAndWent() {
        SealedReview then = review(MONDAY, line(ANA, Tier.ON_LEVEL, Tier.ON_LEVEL, "stay", null, 1),
                line(BEN, Tier.ON_LEVEL, Tier.ON_LEVEL, "stay", null, 2), line(DOA, Tier.SUPPORT, Tier.SUPPORT, "move", null));
        SealedReview now = review(MONDAY.plusWeeks(1), line(ANA, Tier.SUPPORT, Tier.SUPPORT, "move", null, 1, 3, 4, 5, 6),
                line(BEN, Tier.ON_LEVEL, Tier.ON_LEVEL, "stay", null, 2), line(CAI, Tier.ON_LEVEL, Tier.ON_LEVEL, "stay",
                        null, 9));
        Comparison compared = Comparison.of(then, now, List.of(look(1, "T05", null, false), look(3, "T05", null, false),
                look(4, "T07", null, false), look(5, "T05", id(4), false), look(6, "T05", id(3), true)));

        assertThat(compared.came()).containsExactly(CAI);
        assertThat(compared.went()).containsExactly(DOA);
        assertThat(compared.children().getFirst().added()).as("one replaced, one taken back").isEqualTo(Map.of("T05", 1));
        assertThat(compared.children().getLast().changed()).isFalse();
        ComparisonText text = new ComparisonText(Language.ENGLISH, Map.of(ANA, "Ana", BEN, "Ben", CAI, "Cai"));
        assertThat(text.sentences(compared)).containsExactly(
                "Ana: decided then: On level; decided now: Support. The looks said then: stay, On level; now: a move to"
                        + " Support. One look was added: T05 (1).",
                "Stayed, without a new look: Ben.", "Only in this review: Cai.", "Only in the review before: ….");
    }

    @Test
    void whatWasPutOffAndTooFewLooksAreChangesToo() {
        SealedReview then = review(MONDAY, line(ANA, Tier.ON_LEVEL, Tier.ON_LEVEL, "stay", null),
                line(BEN, Tier.ON_LEVEL, Tier.ON_LEVEL, "not_enough", null));
        SealedReview now = review(MONDAY.plusWeeks(1),
                line(ANA, Tier.ON_LEVEL, Tier.ON_LEVEL, "stay", MONDAY.plusWeeks(3)),
                line(BEN, Tier.ON_LEVEL, Tier.ON_LEVEL, "stay", null));
        Comparison compared = Comparison.of(then, now, List.of());
        assertThat(compared.children().getFirst().decidedOtherwise()).isTrue();
        assertThat(compared.children().getFirst().suggestedOtherwise()).isFalse();
        assertThat(compared.children().getLast().decidedOtherwise()).isFalse();
        assertThat(compared.children().getLast().suggestedOtherwise()).isTrue();
        assertThat(new ComparisonText(Language.SPANISH, Map.of(BEN, "Ben")).sentences(compared).getLast())
                .contains("se vio demasiado poco", "No se añadió ninguna observación");
    }
}
