package org.stepwell.core.tier;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Phrase;
import org.stepwell.core.progression.Progression.Skill;

/**
 * What is asked now would tell most: tried against every other step through the public reading of the evidence. The
 * numbers are those of practice for teens (common practice, no source).
 */
class AskNowTest {
    private static final List<String> SKILLS = List.of("A1", "A2", "A3");
    private static final Progression THREE = new Progression("three",
            SKILLS.stream().map(s -> new Skill(s, s, List.of(), List.of())).toList(),
            List.of(new Phrase("A1", "numbers", null, "en", "14 16 17 19", Phrase.Kind.HELP)));

    private static Map<String, AskNow> of(TwoSkills child) {
        ClassSetting two = child.setting();
        return new Reviewer(new ClassSetting(THREE, two.pacing(), two.calendar(), true), child.looks(),
                RuleFile.shipped(RuleFile.DEFAULT), Parameters.shipped()).askNow(TwoSkills.CHILD, TwoSkills.TODAY);
    }

    @Test
    void asksHigherOfAChildWhoWasSeenHigher() {
        int before = 0;
        for (int step = 1; step <= 5; step++) {
            int asked = of(new TwoSkills().days(List.of(3, 5, 9, 11), List.of(step, step, step, step))).get("A1").step();
            assertThat(asked).as("seen at " + step).isBetween(2, 5).isGreaterThanOrEqualTo(before)
                    .isBetween(step, step + 1);
            before = asked;
            if (step == 5) {
                assertThat(asked).isEqualTo(5);
            }
        }
    }

    @Test
    void hidesWhatWasOutOnEveryDay() {
        TwoSkills child = new TwoSkills().days(List.of(3, 5, 9, 11), List.of(3, 3, 3, 3), l -> l.help(Help.CUBES));
        assertThat(of(child).get("A1").step()).as("step 3 with objects says at least 3").isGreaterThanOrEqualTo(4);
    }

    @Test
    void beginsInTheMiddleWhereNothingWasSeen() {
        Map<String, AskNow> asked = of(new TwoSkills().look("A2", 3, 5, l -> l));
        assertThat(asked.keySet()).containsExactlyElementsOf(SKILLS);
        assertThat(asked.get("A1").step()).isEqualTo(3);
        assertThat(asked.get("A3")).as("neither due nor seen").isEqualTo(new AskNow(3, List.of()));
    }

    @Test
    void offersNumbersNeverAskedFirstAndTheLongestAgoNext() {
        assertThat(of(new TwoSkills()).get("A1").numbers()).containsExactly("14", "16", "17", "19");
        TwoSkills child = new TwoSkills().look("A1", 3, 3, l -> l.task("16")).look("A1", 5, 3, l -> l.task("14"))
                .look("A1", 6, 3, l -> l.task("88"));
        assertThat(of(child).get("A1").numbers()).containsExactly("17", "19", "16", "14");
        assertThat(of(child).get("A2").numbers()).isEmpty();
    }
}
