package org.stepwell.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.stepwell.cli.PairText.Pair;

class PairTextTest {
    @Test
    void readsPairs() {
        assertThat(PairText.read("A:B,C:D", Set.of("A", "B", "C", "D")))
                .containsExactly(new Pair("A", "B"), new Pair("C", "D"));
        assertThat(PairText.read("A:B, C : D", Set.of("A", "B", "C", "D")))
                .containsExactly(new Pair("A", "B"), new Pair("C", "D"));
    }

    @Test
    void takesTheOnlyReadingThatNamesKnownIds() {
        assertThat(PairText.read("a:1:b,2", Set.of("a:1", "b,2"))).containsExactly(new Pair("a:1", "b,2"));
        assertThat(PairText.read("Lo, Ana:Ruiz, Bo,x:y", Set.of("Lo, Ana", "Ruiz, Bo", "x", "y")))
                .containsExactly(new Pair("Lo, Ana", "Ruiz, Bo"), new Pair("x", "y"));
    }

    @Test
    void refusesWhatCanBeReadInTwoWaysAndTakesItWithBackslashes() {
        Set<String> known = Set.of("a", "a:b", "b:c", "c");
        assertThatThrownBy(() -> PairText.read("a:b:c", known)).hasMessageContaining("several ways");
        assertThat(PairText.read("a\\:b:c", known)).containsExactly(new Pair("a:b", "c"));
        assertThat(PairText.read("x\\\\:\\,y", Set.of("x\\", ",y"))).containsExactly(new Pair("x\\", ",y"));
    }

    @Test
    void keepsUnknownIdsToBeNamed() {
        assertThat(PairText.read("A:Q", Set.of("A"))).containsExactly(new Pair("A", "Q"));
    }

    @Test
    void refusesWhatIsNoPair() {
        for (String text : new String[] {"A", "A:", ":A", "A:B,", "A:B:C", ""}) {
            assertThatThrownBy(() -> PairText.read(text, Set.of("A", "B", "C"))).as(text)
                    .hasMessageContaining("no list of pairs");
        }
    }
}
