package org.stepwell.core.wording.home;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.WordGuard.Kind;

class WordGuardTest {
    private final WordGuard english = WordGuard.of(Language.ENGLISH);
    private final WordGuard spanish = WordGuard.of(Language.SPANISH);

    private static List<String> words(WordGuard guard, String text, Kind kind) {
        return guard.find(text, Set.of("Devika"), Set.of("Mark", "José"), Set.of("T05")).stream()
                .filter(found -> found.kind() == kind).map(WordGuard.Found::text).toList();
    }

    @Test
    void findsWordsThatStayAtSchoolInAnyForm() {
        assertThat(words(english, "She STRUGGLED in the low groups; failing, at-risk, at step 4 of T05. Can't.",
                Kind.BLOCKED)).containsExactly("STRUGGLED", "low groups", "failing", "at-risk", "step 4", "T05", "Can't");
        assertThat(words(spanish, "Está atrasada, no   sabe. Nivel 3. Débiles. Sus compañeros.", Kind.BLOCKED))
                .containsExactly("atrasada", "no   sabe", "Nivel 3", "Débiles", "Sus compañeros");
    }

    @Test
    void findsAccentsWrittenOrLeftOut() {
        assertThat(words(spanish, "aún aun estimación estimacion", Kind.WARNED)).containsExactly("aún", "aun");
        assertThat(words(spanish, "estimación estimacion", Kind.BLOCKED)).hasSize(2);
        assertThat(words(spanish, "estimacio\u0301n", Kind.BLOCKED)).hasSize(1);
    }

    @Test
    void warnsOfJargonAndLeavesInnocentWordsAlone() {
        assertThat(words(english, "She should just use strategies.", Kind.WARNED))
                .containsExactly("should", "just", "strategies");
        assertThat(english.find("Stillness, Adjust, lonely, steps up the stairs, update", Set.of(), Set.of(), Set.of()))
                .isEmpty();
    }

    @Test
    void findsAnotherChildsNameAsAWordWithACapital() {
        assertThat(words(english, "With Mark. Marked. mark it. Jose and José too.", Kind.CLASSMATE))
                .containsExactly("Mark", "Jose", "José");
    }

    @Test
    void theChildsOwnNameIsExempt() {
        assertThat(english.find("Smart counted.", Set.of("Ana Smart"), Set.of("Smart"), Set.of())).isEmpty();
        assertThat(english.find("a smart way", Set.of("Ana Smart"), Set.of(), Set.of())).hasSize(1);
    }
}
