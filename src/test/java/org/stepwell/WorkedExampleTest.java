package org.stepwell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.ChildPicture;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.Reviewer;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.observation.ObservationCsv;
import org.stepwell.pacing.PacingCsv;

/**
 * The worked example of DEVELOPERS.md: its files are read from the page, its numbers are computed afresh and must stand
 * on the page to the last digit. A failure shows the line that would be right.
 */
class WorkedExampleTest {
    private static final LocalDate FIRST_TAP = LocalDate.of(2026, 3, 2);
    private static final LocalDate REVIEW = LocalDate.of(2026, 3, 13);
    private static final int MIDDLE = 1;

    private String page = "";
    private List<Look> looks = List.of();
    private ClassSetting setting = new ClassSetting(new Progression("p", List.of(), List.of()),
            new Pacing(List.of()), new SchoolCalendar(List.of()));
    private Reviewer reviewer = new Reviewer(setting, looks, RuleFile.shipped(RuleFile.DEFAULT), Parameters.shipped());
    private final SuggestionWording words =
            new SuggestionWording(Language.ENGLISH, new Progression("p", List.of(), List.of()));

    @BeforeEach
    void readsThePage() throws IOException {
        String all = Files.readString(Path.of("DEVELOPERS.md"));
        int from = all.indexOf("### One tap, in numbers");
        page = all.substring(from, all.indexOf("\n## ", from));
        looks = ObservationCsv.read(block("observations")).rows();
        Pacing pacing = new Pacing(PacingCsv.read(block("pacing")).rows());
        setting = new ClassSetting(new Progression("p", List.of(), List.of()), pacing,
                new SchoolCalendar(List.of()), true);
        reviewer = new Reviewer(setting, looks, RuleFile.shipped(RuleFile.DEFAULT), Parameters.shipped());
        assertThat(looks).hasSize(4);
    }

    private byte[] block(String name) {
        String start = "```csv " + name + "\n";
        int from = page.indexOf(start) + start.length();
        return page.substring(from, page.indexOf("```", from)).getBytes(StandardCharsets.UTF_8);
    }

    private void stands(String line) {
        assertThat(page).contains("\n" + line + "\n").doesNotContain("| ? |");
    }

    private static String row(String name, double... values) {
        return "| " + name + " | " + Arrays.stream(values).mapToObj(v -> String.format(Locale.ROOT, "%.4f", v))
                .collect(Collectors.joining(" | ")) + " |";
    }

    /** By plain arithmetic on the numbers of the parameter file, without the filter; then the filter agrees. */
    @Test
    void theFirstTapStepByStep() throws IOException {
        Properties given = new Properties();
        try (var in = Files.newBufferedReader(Path.of("src/main/resources/rules/parameters.txt"))) {
            given.load(in);
        }
        double[] start = numbers(given, "start.2");
        double up = numbers(given, "pace.up")[MIDDLE];
        double[] shape = numbers(given, "up.shape");
        double[] later = new double[5];
        for (int s = 0; s < 5; s++) {
            double rises = s < 4 ? start[s] * up * shape[s] : 0;
            later[s] += start[s] - rises;
            if (s < 4) {
                later[s + 1] += rises;
            }
        }
        double below = numbers(given, "shown.below")[0];
        double above = numbers(given, "shown.above")[0];
        double weight = numbers(given, "weight.look")[0];
        double[] factor = new double[5];
        for (int s = 1; s <= 5; s++) {
            double all = 0;
            for (int shown = 1; shown <= 5; shown++) {
                all += Math.pow(shown < s ? below : above, Math.abs(shown - s));
            }
            factor[s - 1] = Math.pow(Math.pow(2 < s ? below : above, Math.abs(2 - s)) / all, weight);
        }
        double largest = DoubleStream.of(factor).max().orElseThrow();
        double[] after = new double[5];
        for (int s = 0; s < 5; s++) {
            factor[s] /= largest;
            after[s] = later[s] * factor[s];
        }
        double sum = DoubleStream.of(after).sum();
        for (int s = 0; s < 5; s++) {
            after[s] /= sum;
        }
        stands(row("start", start));
        stands(row("after one day", later));
        stands(row("factor of \"step 2\"", factor));
        stands(row("after the look", after));
        ChildPicture then = reviewer.picture("c1", FIRST_TAP);
        assertThat(then.branches().get(MIDDLE).chances().get("T05")).containsExactly(after, within(1e-12));
    }

    private static double[] numbers(Properties given, String key) {
        String text = String.valueOf(given.getProperty(key)).replaceFirst("#.*", "").strip();
        return Arrays.stream(text.split("\\s+")).mapToDouble(Double::parseDouble).toArray();
    }

    @Test
    void whatAllTapsSayOnTheDayOfTheReview() {
        ChildPicture picture = reviewer.picture("c1", REVIEW);
        stands(row("weight of the pace", picture.branches().stream().mapToDouble(ChildPicture.Branch::weight).toArray()));
        for (String skill : List.of("T05", "T07")) {
            stands(row(skill, picture.skills().get(skill).chances().stream().mapToDouble(p -> p).toArray()));
        }
    }

    /** The chance of support by plain arithmetic: both of two skills below the expected step, pace by pace. */
    @Test
    void theTiersAndWhatTheRulesMakeOfThem() {
        Suggestion said = reviewer.review(List.of(ChildState.start("c1")), REVIEW).suggestions().getFirst();
        double support = 0;
        for (ChildPicture.Branch branch : reviewer.picture("c1", REVIEW).branches()) {
            Map<String, double[]> chances = branch.chances();
            support += branch.weight() * (chances.get("T05")[0] + chances.get("T05")[1])
                    * (chances.get("T07")[0] + chances.get("T07")[1]);
        }
        assertThat(said.chances().support()).isCloseTo(support, within(1e-12));
        stands(row("chance", said.chances().support(), said.chances().onLevel(), said.chances().extension()));
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < said.conditions().size(); i++) {
            Condition one = said.conditions().get(i);
            SuggestionWording.ConditionWords told = words.conditions(said).get(i);
            rows.add("| " + one.required().measure().code() + " | " + told.measured() + " | " + told.required() + " | "
                    + (told.met() ? "yes" : "no") + " |");
        }
        stands(String.join("\n", rows));
    }

    @Test
    void theWordsThatTheTeacherReads() {
        Suggestion said = reviewer.review(List.of(ChildState.start("c1")), REVIEW).suggestions().getFirst();
        String oneLine = page.replaceAll("\\s*\n", " ");
        assertThat(oneLine).contains("\"" + words.headline(said) + ". " + words.reason(said) + "\"");
        assertThat(oneLine).contains(
                "\"" + words.settle(said, reviewer.details(ChildState.start("c1"), REVIEW)) + "\"");
    }
}
