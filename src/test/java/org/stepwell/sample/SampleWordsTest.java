package org.stepwell.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.SuggestionWording;

/** Laws that hold for every sentence said about every child of the sample class, under both rule files. */
class SampleWordsTest {
    private static final Pattern NUMBER = Pattern.compile("\\d+");
    private static final Pattern SKILL = Pattern.compile("\\bT\\d\\d\\b");
    private static final List<SampleReview> REVIEWS =
            RuleFile.SHIPPED.stream().map(SampleReview::new).toList();

    /** Words that label a child or claim more than looks can tell. */
    private static final List<String> NEVER_SAID = List.of(
            "%", "probab", "at risk", "behind", "ahead of", "struggl", "weak", "slow", "deficit", "disab", "fail",
            "unable", "average", "percent", "gifted", "smart", "en riesgo", "atrasad", "retraso", "débil", "fracas",
            "incapaz", "promedio", "lento", "null");

    private static List<String> reasons(SuggestionWording words, Suggestion said) {
        List<String> all = new ArrayList<>(words.notes(said));
        all.add(words.reason(said));
        all.add(words.headline(said));
        all.add(words.missing(said));
        all.addAll(words.chances(said));
        words.conditions(said).forEach(c -> all.add(c.name() + ": " + c.measured() + " / " + c.required()));
        said.cautions().forEach(c -> all.add(words.caution(c)));
        return all;
    }

    private static List<String> details(SuggestionWording words, Suggestion said, Details details) {
        List<String> all = new ArrayList<>(words.weighty(said, details));
        all.add(words.settle(said, details));
        all.add(words.ask(details));
        return all;
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void noSentenceLabelsAChild(Language language) {
        for (SampleReview review : REVIEWS) {
            SuggestionWording words = new SuggestionWording(language, review.setting.progression());
            for (ChildState state : review.states) {
                Suggestion said = review.review.of(state.child()).orElseThrow();
                List<String> all = reasons(words, said);
                all.addAll(details(words, said, review.reviewer.details(state, review.day)));
                for (String sentence : all) {
                    for (String word : NEVER_SAID) {
                        assertFalse(sentence.toLowerCase(Locale.ROOT).contains(word), word + " in: " + sentence);
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void noReasonHoldsANumberOrASkillThatIsNotInTheEvidence(Language language) {
        for (SampleReview review : REVIEWS) {
            SuggestionWording words = new SuggestionWording(language, review.setting.progression());
            for (Suggestion said : review.review.suggestions()) {
                Set<Integer> known = numbers(said.toString());
                for (Tier tier : Tier.values()) {
                    known.add((int) StrictMath.rint(10 * said.chances().of(tier)));
                }
                known.add(10);
                said.missing().forEach(m -> known.add(m.more()));
                if (said.skills().stream().anyMatch(s -> s.step() > 0)) {
                    said.skills().forEach(s -> known.add(s.step() + 1));
                }
                List<String> sentences = new ArrayList<>(words.notes(said));
                sentences.add(words.reason(said));
                for (String sentence : sentences) {
                    String bare = SKILL.matcher(sentence).replaceAll("");
                    for (int n : numbers(bare)) {
                        assertTrue(known.contains(n) || n <= said.skills().size(), n + " in: " + sentence);
                    }
                    Matcher skill = SKILL.matcher(sentence);
                    while (skill.find()) {
                        assertTrue(said.toString().contains(skill.group()), skill.group() + " in: " + sentence);
                    }
                }
            }
        }
    }

    private static Set<Integer> numbers(String text) {
        Set<Integer> all = new TreeSet<>();
        Matcher matcher = NUMBER.matcher(text);
        while (matcher.find()) {
            if (matcher.group().length() < 9) {
                all.add(Integer.parseInt(matcher.group()));
            }
        }
        return all;
    }

    @Test
    void bothLanguagesSayTheSameNumbers() {
        SampleReview review = REVIEWS.getFirst();
        SuggestionWording english = new SuggestionWording(Language.ENGLISH, review.setting.progression());
        SuggestionWording spanish = new SuggestionWording(Language.SPANISH, review.setting.progression());
        for (Suggestion said : review.review.suggestions()) {
            assertEquals(numbers(english.reason(said)), numbers(spanish.reason(said)), english.reason(said));
            assertEquals(english.conditions(said).size(), spanish.conditions(said).size());
        }
    }

    @Test
    void everyCautionHasItsSentenceInBothLanguages() {
        SuggestionWording english = REVIEWS.getFirst().english;
        SuggestionWording spanish =
                new SuggestionWording(Language.SPANISH, REVIEWS.getFirst().setting.progression());
        Set<String> all = new TreeSet<>();
        for (Caution caution : Caution.values()) {
            all.add(english.caution(caution));
            all.add(spanish.caution(caution));
        }
        assertEquals(2 * Caution.values().length, all.size());
    }
}
