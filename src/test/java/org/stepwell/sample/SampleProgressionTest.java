package org.stepwell.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.progression.Progression;

class SampleProgressionTest {
    private final Progression progression = SampleClass.progression();

    @Test
    void hasTwelveSkillsInOrder() {
        assertEquals(
                IntStream.rangeClosed(1, 12).mapToObj("T%02d"::formatted).toList(),
                progression.skills().stream().map(Progression.Skill::code).toList());
    }

    @Test
    void everyNeedNamesAnotherSkillOfTheProgressionAndAStep() {
        Set<String> codes = progression.titles().keySet();
        for (Progression.Skill skill : progression.skills()) {
            for (Progression.Need need : skill.needs()) {
                assertTrue(codes.contains(need.skill()) && !need.skill().equals(skill.code()), skill.code());
                assertTrue(need.step() >= 1 && need.step() <= 5, skill.code());
                assertTrue(need.beforeStep() >= 1 && need.beforeStep() <= 5, skill.code());
            }
        }
    }

    /** Takes away skills whose needs are all taken away already (Kahn 1962) until nothing moves: all must go. */
    @Test
    void theGraphHasNoCircle() {
        Set<String> gone = new HashSet<>();
        Deque<Progression.Skill> left = new ArrayDeque<>(progression.skills());
        for (int tries = left.size() * left.size(); tries > 0 && !left.isEmpty(); tries--) {
            Progression.Skill skill = left.poll();
            if (skill.needs().stream().allMatch(n -> gone.contains(n.skill()))) {
                gone.add(skill.code());
            } else {
                left.add(skill);
            }
        }
        assertEquals(List.of(), left.stream().map(Progression.Skill::code).toList());
    }

    @ParameterizedTest
    @CsvSource({
        "T02, T01.2, 1", "T03, T02.3, 1", "T03, T05.3, 5", "T04, T02.4, 1", "T05, T04.2, 1", "T06, T05.2, 3",
        "T06, T05.2, 5", "T07, T04.3, 1", "T07, T01.3, 1", "T08, T05.3, 1", "T08, T07.3, 1", "T09, T08.3, 1",
        "T09, T01.4, 1", "T10, T08.3, 1", "T10, T04.4, 1", "T11, T08.3, 1", "T12, T07.3, 1", "T12, T08.3, 1"
    })
    void needsWhatThePractitionersListSays(String skill, String need, int beforeStep) {
        String[] place = need.split("\\.");
        assertTrue(progression
                .skill(skill)
                .orElseThrow()
                .needs()
                .contains(new Progression.Need(beforeStep, place[0], Integer.parseInt(place[1]))));
    }

    @Test
    void needsNothingBeyondThatList() {
        assertEquals(18, progression.skills().stream().mapToInt(s -> s.needs().size()).sum());
    }

    @Test
    void everyStepOfEverySkillHasWordsInBothLanguages() {
        Set<String> missing = new TreeSet<>();
        for (Progression.Skill skill : progression.skills()) {
            for (int step = 1; step <= 5; step++) {
                for (String language : List.of("en", "es")) {
                    if (words(skill.code(), step, language).isEmpty()) {
                        missing.add(skill.code() + "." + step + " " + language);
                    }
                }
            }
        }
        assertEquals(Set.of(), missing);
    }

    @Test
    void everyEnglishTextHasASpanishOneWithTheSameCodeStepAndKind() {
        assertEquals(places("en"), places("es"));
    }

    @Test
    void noCodeOfASkillIsDoubled() {
        Map<String, Long> counts = progression.phrases().stream()
                .filter(p -> p.kind() != Progression.Phrase.Kind.HELP)
                .collect(Collectors.groupingBy(
                        p -> p.skill() + " " + p.code() + " " + p.language(), Collectors.counting()));
        assertEquals(Set.of(), counts.entrySet().stream()
                .filter(e -> e.getValue() > 1)
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet()));
    }

    @Test
    void everyCodeIsInSnakeCaseAndEverySkillIsKnown() {
        for (Progression.Phrase phrase : progression.phrases()) {
            assertTrue(phrase.code().matches("[a-z0-9]+(_[a-z0-9]+)*"), phrase.code());
            assertTrue(progression.skill(phrase.skill()).isPresent(), phrase.skill());
            assertFalse(phrase.text().isBlank(), phrase.code());
        }
    }

    @Test
    void objectsBelongToTheTaskAtSixPlacesOnly() {
        Set<String> places = new TreeSet<>();
        for (Progression.Skill skill : progression.skills()) {
            for (int step = 1; step <= 5; step++) {
                if (progression.objectsBelong(skill.code(), step)) {
                    places.add(skill.code() + "." + step);
                }
            }
        }
        assertEquals(Set.of("T02.4", "T02.5", "T04.5", "T06.3", "T06.5", "T09.5"), places);
    }

    @Test
    void errorTagsSayNoStep() {
        List<Progression.Phrase> errors = progression.phrases().stream()
                .filter(p -> p.kind() == Progression.Phrase.Kind.ERROR)
                .toList();
        assertFalse(errors.isEmpty());
        assertTrue(errors.stream().allMatch(p -> p.step() == null));
    }

    private List<String> words(String skill, int step, String language) {
        return progression.phrases().stream()
                .filter(p -> p.kind() == Progression.Phrase.Kind.PHRASE)
                .filter(p -> p.skill().equals(skill) && p.language().equals(language))
                .filter(p -> p.step() != null && p.step() == step)
                .map(Progression.Phrase::text)
                .toList();
    }

    private List<String> places(String language) {
        return progression.phrases().stream()
                .filter(p -> p.language().equals(language))
                .map(p -> p.skill() + " " + p.code() + " " + p.step() + " " + p.kind())
                .sorted()
                .toList();
    }
}
