package org.stepwell.core.tier;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.LookMaker;
import org.stepwell.core.evidence.Parameters;

/**
 * What is claimed about further looks and about left-out ones is true: the claimed looks are made, or the look is taken
 * out of the history, and the rules are asked afresh through the front door.
 */
class DetailsTest {
    private static final long SEED = 4242;
    private static final int CHILDREN = 60;

    private record Asked(String rules, TwoSkills child, ChildState state, Suggestion said, Details details) {}

    private final List<Asked> asked = asked();

    private static List<Asked> asked() {
        SplittableRandom random = new SplittableRandom(SEED);
        List<Asked> all = new ArrayList<>();
        for (int i = 0; i < CHILDREN; i++) {
            TwoSkills child = new TwoSkills().expecting(3 + i % 2);
            if (i % 3 == 0) {
                child.inSupport(4 + random.nextInt(12));
            }
            int base = 1 + random.nextInt(4);
            int looks = 1 + random.nextInt(12);
            for (int n = 0; n < looks; n++) {
                int step = Math.max(1, Math.min(5, base + random.nextInt(3) - 1));
                Help help = random.nextInt(3) == 0 ? Help.CUBES : Help.NONE;
                Kind kind = random.nextBoolean() ? Kind.TABLE : Kind.EXIT_TASK;
                String skill = TwoSkills.SKILLS.get(random.nextInt(2));
                child.look(skill, weekday(random), step, l -> l.help(help).kind(kind));
            }
            String rules = RuleFile.SHIPPED.get(i / 2 % 2);
            Reviewer reviewer = child.reviewer(rules);
            Suggestion said = reviewer.review(List.of(child.state()), TwoSkills.TODAY).suggestions().getFirst();
            all.add(new Asked(
                    rules, child, child.state(), said, reviewer.details(child.state(), TwoSkills.TODAY)));
        }
        return all;
    }

    private static int weekday(SplittableRandom random) {
        return random.nextInt(2) == 0 ? 2 + random.nextInt(5) : 9 + random.nextInt(5);
    }

    private static Suggestion again(Asked one, List<Look> looks, ChildState state, LocalDate day) {
        return new Reviewer(one.child().setting(), looks, RuleFile.shipped(one.rules()), Parameters.shipped())
                .review(List.of(state), day)
                .suggestions()
                .getFirst();
    }

    @Test
    void whatIsClaimedToSettleTheAnswerDoes() {
        int claims = 0;
        int notSettledBefore = 0;
        Set<String> sentences = new HashSet<>();
        for (Asked one : asked) {
            if (one.details().settle().isEmpty()) {
                continue;
            }
            Details.Settle settle = one.details().settle().get();
            claims++;
            notSettledBefore += one.details().settled() ? 0 : 1;
            LocalDate then = settle.looks().getLast().day();
            sentences.add(settle.looks().size() + " " + settle.looks().getFirst().skill());
            for (boolean reached : new boolean[] {true, false}) {
                List<Look> more = new ArrayList<>(one.child().looks());
                for (Details.Wanted wanted : settle.looks()) {
                    int step = reached ? wanted.step() : Math.max(1, wanted.step() - 1);
                    more.add(LookMaker.look(TwoSkills.CHILD, wanted.skill(), wanted.day(), step)
                            .kind(wanted.kind())
                            .make());
                }
                Suggestion later =
                        again(one, more, one.state().reviewed(TwoSkills.TODAY, one.state().tier()), then);
                Details.Answer claimed = reached ? settle.reached() : settle.missed();
                String where = "seed " + SEED + " " + one.rules() + " " + one.said() + " " + settle;
                assertEquals(claimed.verdict(), later.verdict(), where);
                assertEquals(claimed.suggested(), later.suggested(), where);
                assertEquals(claimed.fits(), later.chances().likeliest(), where);
                assertEquals(claimed.chance(), later.chances().of(claimed.fits()), 1e-9, where);
                assertEquals(
                        claimed.settled(),
                        later.verdict() != Verdict.NOT_ENOUGH && claimed.chance() >= 0.75,
                        where);
            }
            if (!one.details().settled()) {
                assertTrue(settle.reached().settled() || settle.missed().settled());
                assertTrue(settle.likely() >= 0.5 && settle.likely() <= 1 + 1e-9, settle.toString());
            }
        }
        assertTrue(claims >= CHILDREN / 3, claims + " claims");
        assertTrue(notSettledBefore >= 10, notSettledBefore + " open answers");
        assertTrue(sentences.size() >= 4, "the claim differs from child to child: " + sentences);
    }

    @Test
    void theLookLeftOutIsTheRightOne() {
        int compared = 0;
        for (Asked one : asked) {
            List<Details.Weighty> told = one.details().weighty();
            List<Details.Weighty> slow = new ArrayList<>();
            for (Look look : one.child().looks()) {
                List<Look> rest = new ArrayList<>(one.child().looks());
                rest.remove(look);
                Suggestion without = again(one, rest, one.state(), TwoSkills.TODAY);
                double chance = without.chances().of(one.said().suggested());
                for (Details.Weighty weighty : told) {
                    if (weighty.look().look().equals(look)) {
                        compared++;
                        assertEquals(chance, weighty.chanceWithout(), 1e-12, one.toString());
                        assertEquals(without.verdict(), weighty.verdictWithout());
                        assertEquals(without.suggested(), weighty.suggestedWithout());
                        slow.add(weighty);
                    }
                }
                if (told.stream().noneMatch(w -> w.look().look().equals(look)) && !told.isEmpty()) {
                    Details.Weighty least = told.getLast();
                    boolean changes = changes(one, without.verdict(), without.suggested());
                    boolean leastChanges = changes(one, least.verdictWithout(), least.suggestedWithout());
                    assertTrue(leastChanges || !changes, "a look that changes the answer comes first");
                    if (changes == leastChanges) {
                        assertTrue(
                                shift(one, chance) <= shift(one, least.chanceWithout()) + 1e-12,
                                "seed " + SEED + ": heavier than what is told: " + look);
                    }
                }
            }
            assertEquals(Math.min(3, one.child().looks().size()), slow.size());
        }
        assertTrue(compared > 100, compared + " looks compared");
    }

    private static boolean changes(Asked one, Verdict verdict, Tier suggested) {
        return verdict != one.said().verdict() || suggested != one.said().suggested();
    }

    private static double shift(Asked one, double chanceWithout) {
        return Math.abs(chanceWithout - one.said().chance());
    }

    @Test
    void theQuestionForTheTableIsOnADueSkillAndHidesCubesThatWereAlwaysOut() {
        TwoSkills cubes = new TwoSkills()
                .days(List.of(9, 10, 11, 12), List.of(3, 3, 3, 3), l -> l.help(Help.CUBES));
        Details.Ask ask = cubes.reviewer(RuleFile.WEIGHED)
                .details(cubes.state(), TwoSkills.TODAY)
                .ask()
                .orElseThrow();
        assertTrue(TwoSkills.SKILLS.contains(ask.skill()));
        assertTrue(ask.hideCubes());
        assertEquals(4, ask.expected());
        TwoSkills free = new TwoSkills().days(List.of(9, 10), List.of(3, 3));
        assertFalse(free.reviewer(RuleFile.WEIGHED)
                .details(free.state(), TwoSkills.TODAY)
                .ask()
                .orElseThrow()
                .hideCubes());
    }
}
