package org.stepwell.core.tier;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RuleFileTest {

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void theShippedFilesLoadUnderTheirNames(String name) {
        RuleFile rules = RuleFile.shipped(name);
        assertEquals(name, rules.name());
        assertFalse(rules.version().isEmpty());
        assertTrue(rules.rules().stream().anyMatch(r -> r.to() == Tier.SUPPORT));
    }

    @Test
    void theDefaultIsOneOfThem() {
        assertTrue(RuleFile.SHIPPED.contains(RuleFile.DEFAULT));
    }

    @Test
    void anUnknownNameIsToldWithThoseThereAre() {
        IllegalArgumentException told =
                assertThrows(IllegalArgumentException.class, () -> RuleFile.shipped("strict"));
        assertEquals("rules \"strict\" are not one of conventional, weighed", told.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void brakesStandOnlyOnMovesThatTakeHelpAway(String name) {
        for (Rule rule : RuleFile.shipped(name).rules()) {
            boolean minimumStay =
                    rule.needs().stream().anyMatch(r -> r.measure() == Measure.SCHOOL_DAYS_IN_TIER);
            boolean freshLooks = rule.needs().stream().anyMatch(r -> r.measure() == Measure.LOOKS_SINCE_REVIEW);
            boolean takesHelpAway = rule.from().contains(Tier.SUPPORT);
            assertTrue(minimumStay || !takesHelpAway, rule.id());
            assertTrue(freshLooks || !takesHelpAway, rule.id());
            assertFalse(rule.givesHelp() && (minimumStay || freshLooks), rule.id());
        }
    }

    @Test
    void takingHelpAwayNeedsAClearerChanceAndTwoReviews() {
        List<Rule> rules = RuleFile.shipped(RuleFile.WEIGHED).rules();
        Requirement more = lead(rules, "more_help");
        Requirement less = lead(rules, "less_help");
        assertEquals(1, more.reviews());
        assertEquals(2, less.reviews());
        assertTrue(less.threshold() > more.threshold());
    }

    private static Requirement lead(List<Rule> rules, String id) {
        return rules.stream().filter(r -> r.id().equals(id)).findFirst().orElseThrow().needs().getFirst();
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void everyMoveNeedsThreeDifferentNumbers(String name) {
        for (Rule rule : RuleFile.shipped(name).rules()) {
            assertTrue(
                    rule.needs().stream()
                            .anyMatch(r -> r.measure() == Measure.DIFFERENT_NUMBERS && r.threshold() == 3),
                    rule.id());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "needs skills_below more than 0.5 at 2 reviews | needs skils_below more than 0.5"
                        + " | skils_below is not a known measure",
                "enough looks at least 6 | enough looks at least six | looks \"six\" is not a number",
                "enough looks at least 6 | enough looks at least -1 | looks -1 is not in 0 to 1000",
                "judged sessions_given at least 0.6 | judged sessions_given at least 60"
                        + " | sessions_given 60 is not in 0 to 1",
                "set signal.days = 4 | set signal.days = 4.5 | signal.days must be a whole number",
                "set dip.share = 0.3333333333333333 | set dip.part = 0.3 | dip.part is not a known key",
                "rule more_help from on_level to support | rule more_help from level to support | tier \"level\"",
                "rule more_help from on_level to support | rule more_help to support"
                        + " | is not of the form: rule NAME from TIER to TIER",
                "enough looks at least 6 | enough looks over 6 | is not of the form: MEASURE at least",
                "enough days at least 3 | enough looks at least 3 | looks was already asked for here",
            })
    void aBadLineIsToldWithItsNumberAndKey(String good, String bad, String told) {
        String text = RuleFile.shippedText(RuleFile.CONVENTIONAL);
        assertTrue(text.contains(good), good);
        int line = text.substring(0, text.indexOf(good)).split("\n", -1).length;
        IllegalArgumentException thrown = assertThrows(
                IllegalArgumentException.class,
                () -> RuleFile.read(text.replaceFirst(java.util.regex.Pattern.quote(good), bad), "mine.txt"));
        assertTrue(thrown.getMessage().startsWith("mine.txt:\n"), thrown.getMessage());
        assertTrue(thrown.getMessage().contains("line " + line + ": "), line + " in " + thrown.getMessage());
        assertTrue(thrown.getMessage().contains(told), thrown.getMessage());
    }

    @Test
    void allProblemsAreToldTogether() {
        IllegalArgumentException thrown = assertThrows(
                IllegalArgumentException.class, () -> RuleFile.read("name = mine\nenough cats at least 2\n", "mine"));
        for (String part : List.of("key version is missing", "line 2: cats", "there is no rule", "window.days")) {
            assertTrue(thrown.getMessage().contains(part), part + " in " + thrown.getMessage());
        }
    }

    @Test
    void tiersBeforeTwoDueSkillsAreRefused() {
        String text = RuleFile.shippedText(RuleFile.WEIGHED).replace("enough due_skills at least 2", "");
        IllegalArgumentException thrown =
                assertThrows(IllegalArgumentException.class, () -> RuleFile.read(text, "mine"));
        assertTrue(thrown.getMessage().contains("enough due_skills at least 2 is missing"), thrown.getMessage());
    }

    @Test
    void aThresholdCanBeTriedUnderItsOwnVersion() {
        RuleFile tried = RuleFile.shipped(RuleFile.WEIGHED).with("more_help", Measure.CHANCE_SUPPORT, 0.9);
        Requirement changed = tried.rules().getFirst().needs().getFirst();
        assertEquals(0.9, changed.threshold());
        assertTrue(tried.version().endsWith("+more_help.chance_support=0.9"), tried.version());
        assertThrows(
                IllegalArgumentException.class,
                () -> RuleFile.shipped(RuleFile.WEIGHED).with("more_help", Measure.KINDS, 2));
    }
}
