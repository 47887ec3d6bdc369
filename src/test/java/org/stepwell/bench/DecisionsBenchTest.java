package org.stepwell.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.stepwell.core.tier.RuleFile;

class DecisionsBenchTest {
    private static final Pattern LINE = Pattern.compile(
            "\\{\"name\":\"[a-z_.0-9]+\",\"value\":(-?[0-9.]+|null),\"unit\":\"[^\"]+\",\"against\":\"[^\"]+\","
                    + "\"ratio\":(-?[0-9.]+|null)}");

    private static String run(long seed) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream table = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
        DecisionsBench.run(DecisionsBench.Set.REPORTED, seed, true, 2, new PrintStream(out, true, StandardCharsets.UTF_8), table);
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void printsOneLineOfJsonPerMeasureAndTheSameForTheSameSeed() {
        String lines = run(3);
        assertThat(lines.lines()).isNotEmpty().allMatch(line -> LINE.matcher(line).matches());
        assertThat(run(3)).isEqualTo(lines);
        assertThat(run(4)).isNotEqualTo(lines);
        assertThat(Families.reported()).hasSizeGreaterThanOrEqualTo(10);
    }

    @Test
    void theCeilingIsAboveTheFloor() {
        String lines = run(3);
        double ideal = value(lines, "decisions.plain.ideal.balanced_accuracy");
        for (Decider thumb : ThumbRules.all()) {
            assertThat(value(lines, "decisions.plain." + thumb.name() + ".balanced_accuracy"))
                    .isLessThan(ideal);
        }
    }

    @Test
    void bothShippedRuleFilesAreScoredInEveryFamily() {
        String lines = run(3);
        for (Family family : Families.reported()) {
            for (String rules : RuleFile.SHIPPED) {
                assertThat(value(lines, "decisions." + family.name + "." + rules + ".balanced_accuracy"))
                        .isBetween(0.0, 1.0);
            }
        }
        assertThat(lines).contains("decisions.all.weighed.mean_of_ideal");
    }

    @Test
    void anotherSeedDrawsOtherFamilies() {
        assertThat(drawn(3)).isEqualTo(drawn(3)).contains("decisions.ladder_30.weighed.", "decisions.ability_39.weighed.");
        assertThat(DrawnFamilies.ladder(30).seen).isNotEqualTo(DrawnFamilies.ladder(31).seen);
        assertThat(DrawnFamilies.ability(30).growth).isNotEqualTo(DrawnFamilies.ability(31).growth);
    }

    private static String drawn(long seed) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream table = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
        DecisionsBench.run(DecisionsBench.Set.DRAWN, seed, true, 1, new PrintStream(out, true, StandardCharsets.UTF_8), table);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static double value(String lines, String name) {
        Matcher matcher = Pattern.compile("\"name\":\"" + Pattern.quote(name) + "\",\"value\":([0-9.]+)")
                .matcher(lines);
        assertThat(matcher.find()).as(name).isTrue();
        return Double.parseDouble(matcher.group(1));
    }
}
