package org.stepwell.core.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stepwell.core.grouping.Contradiction;
import org.stepwell.core.grouping.Contradiction.Kind;
import org.stepwell.core.grouping.SeatReason;
import org.stepwell.core.grouping.SeatReason.Company;
import org.stepwell.core.grouping.SeatReason.Kept;
import org.stepwell.core.grouping.Wish;

class GroupingWordingTest {
    private static final Pattern TIERS = Pattern.compile("(?iu)\\b(tier|support|on.level|extension|low|high|behind|"
            + "apoyo|nivel|extensión|bajo|alto|refuerzo)\\b");

    private static List<SeatReason> all() {
        List<SeatReason> all = new ArrayList<>();
        for (Company company : Company.values()) {
            for (int same = 0; same <= 4; same++) {
                for (Integer step : new Integer[] {null, 0, 1, 2, 3, 4, 5}) {
                    all.add(new SeatReason("me", "T05", step, 4, same, Math.min(same, 2), company,
                            EnumSet.allOf(Kept.class)));
                }
            }
            all.add(new SeatReason("me", null, null, 0, 0, 0, company, Set.of()));
            all.add(new SeatReason("me", null, null, 3, 0, 0, company, Set.of()));
        }
        return all;
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void aReasonNamesNoTierAndHoldsNoSingleLetterOrDigit(Language language) {
        for (SeatReason reason : all()) {
            String words = new GroupingWording(language).reason(reason, UnaryOperator.identity(), List.of());
            assertThat(words).doesNotContainPattern(TIERS).contains(reason.focus() == null ? "" : "T05")
                    .doesNotContainPattern("(?U)(?<!\\w)\\w(?!\\w)").endsWith(".");
        }
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void noOtherChildIsNamedWhateverItsIdIs(Language language) {
        List<String> others = List.of("step", "Table", "is", "T05", "me first", "mostly new", "paso", "mesa", "es",
                "a", "1", "three");
        for (SeatReason reason : all()) {
            String words = new GroupingWording(language).reason(reason, UnaryOperator.identity(), others);
            assertThat(words).isNotBlank();
            for (String other : others) {
                assertThat(words).doesNotContainPattern("(?iU)(?<!\\w)" + Pattern.quote(other) + "(?!\\w)");
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void everyContradictionNamesItsChildrenInBothLanguages(Kind kind) {
        List<Wish> wishes = List.of(new Wish.Apart("Ana", "Leo"), new Wish.Together("Ana", "Leo"),
                new Wish.InGroup("Ana", 1), new Wish.InGroup("Leo", 2), new Wish.AwayAt("Ana", 2),
                new Wish.WithSecondAdult("Leo"));
        Contradiction it = new Contradiction(kind, kind == Kind.UNKNOWN_CHILD || kind == Kind.APART_FROM_ITSELF
                ? List.of("Ana") : List.of("Ana", "Leo"), wishes, 2);
        String english = new GroupingWording(Language.ENGLISH).contradiction(it, UnaryOperator.identity());
        String spanish = new GroupingWording(Language.SPANISH).contradiction(it, UnaryOperator.identity());
        assertThat(english).contains(it.children()).isNotEqualTo(spanish);
        assertThat(spanish).contains(it.children());
    }

    @Test
    void bothTogetherAndApartIsSaidInPlainWords() {
        assertThat(new GroupingWording(Language.ENGLISH).contradiction(new Contradiction(Kind.BOTH,
                List.of("A", "B"), List.of(new Wish.Together("A", "B"), new Wish.Apart("A", "B")), 0),
                UnaryOperator.identity())).isEqualTo("A and B are to be both together and apart.");
    }
}
