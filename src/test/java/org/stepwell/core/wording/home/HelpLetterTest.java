package org.stepwell.core.wording.home;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.stepwell.core.wording.Language;

/** What a letter must tell: 34 CFR 300.309(b) and 300.311. The sentences are the house's own; common practice, no source. */
class HelpLetterTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 6);

    private static HelpLetter.Facts facts(String givenBy, int perWeek, LocalDate from, Set<String> others) {
        return new HelpLetter.Facts("Devika", from, givenBy, perWeek, 20, LocalDate.of(2026, 4, 10),
                Optional.of("Put out 15 beans."), TODAY, others);
    }

    @Test
    void saysSinceWhenWithWhomHowOftenWhenTheyHearAndWhatTheyMayAsk() {
        assertThat(HelpLetter.draft(facts("Ms. Okoro", 4, LocalDate.of(2026, 3, 2), Set.of()), Language.ENGLISH).lines())
                .containsExactly("Since March 2, Devika works in a small group with Ms. Okoro.",
                        "They meet four days a week for 20 minutes.", "On April 10 we will tell you how it is going.",
                        "Put out 15 beans.", "What do you see at home when Devika counts?",
                        "You may ask the school for an evaluation at any time.");
        assertThat(HelpLetter.draft(facts("la maestra Okoro", 4, LocalDate.of(2026, 3, 2), Set.of()), Language.SPANISH)
                .lines()).containsExactly("Desde el 2 de marzo, Devika trabaja en un grupo pequeño con la maestra Okoro.",
                        "Se reúnen cuatro días a la semana, 20 minutos cada vez.", "El 10 de abril le diremos cómo va.",
                        "Put out 15 beans.", "¿Qué ve usted en casa cuando Devika cuenta?",
                        "Puede pedir una evaluación a la escuela en cualquier momento.");
    }

    @Test
    void tellsOfHelpThatIsYetToBeginAndOfOddNumbersOfSessions() {
        HelpLetter letter = HelpLetter.draft(facts("Ms. Okoro", 1, LocalDate.of(2026, 3, 9), Set.of()), Language.ENGLISH);
        assertThat(letter.lines()).startsWith("From March 9 on, Devika will work in a small group with Ms. Okoro.",
                "They meet one day a week for 20 minutes.");
        assertThat(HelpLetter.draft(facts("Ms. Okoro", 8, TODAY, Set.of()), Language.ENGLISH).lines())
                .contains("They meet 8 times a week for 20 minutes.");
        assertThat(HelpLetter.draft(facts("Ms. Okoro", 1, TODAY, Set.of()), Language.SPANISH).lines())
                .contains("Se reúnen un día a la semana, 20 minutos cada vez.");
    }

    @Test
    void holdsNoWordThatStaysAtSchoolAndNoOtherChildsNameNotEvenAsAMonth() {
        for (Language language : Language.values()) {
            HelpLetter letter = HelpLetter.draft(facts("Ms. Okoro", 5, LocalDate.of(2026, 3, 2), Set.of("April", "Marisol")),
                    language);
            assertThat(WordGuard.of(language).find(letter.text(), List.of("Devika", "Okoro"), Set.of("April", "Marisol"),
                    List.of("T05"))).isEmpty();
            assertThat(letter.text()).doesNotContain("April");
        }
    }

    @Test
    void theSchoolsOwnWordsComeLast() {
        HelpLetter letter = new HelpLetter(Language.ENGLISH, List.of("One."), "Ask us.");
        assertThat(letter.text()).isEqualTo("One.\nAsk us.");
    }
}
