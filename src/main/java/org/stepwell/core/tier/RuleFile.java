package org.stepwell.core.tier;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Rules as a file that can be read aloud: how measures are taken ({@code set}), what must be seen before anything is
 * said ({@code enough}, and {@code newcomer} for children who came later), and the moves ({@code rule}), each with what
 * it {@code needs}. Rules are asked in the order of the file; the first whose needs are all met speaks.
 *
 * @param name short name, quoted with every suggestion
 * @param version of this file
 * @param settings how the measures are taken
 * @param enough what must be seen before anything is said
 * @param newcomers what must be seen, instead or beside, of a child who came after the unit had begun
 * @param rules in order
 */
public record RuleFile(
        String name,
        String version,
        RuleSettings settings,
        List<Requirement> enough,
        List<Requirement> newcomers,
        List<Rule> rules) {

    /** Counts of days, as many schools do it. */
    public static final String CONVENTIONAL = "conventional";
    /** Chances from all looks. */
    public static final String WEIGHED = "weighed";
    /** What is used when nobody chose. */
    public static final String DEFAULT = WEIGHED;
    /** The files that come with the program, by name. */
    public static final List<String> SHIPPED = List.of(CONVENTIONAL, WEIGHED);

    /** Copies the lists. */
    public RuleFile {
        enough = List.copyOf(enough);
        newcomers = List.copyOf(newcomers);
        rules = List.copyOf(rules);
    }

    /**
     * One of the files that come with the program.
     *
     * @throws IllegalArgumentException naming those there are
     */
    public static RuleFile shipped(String name) {
        return read(shippedText(name), name + ".txt");
    }

    /**
     * The text of a shipped file, to copy and edit.
     *
     * @throws IllegalArgumentException naming those there are
     */
    public static String shippedText(String name) {
        if (!SHIPPED.contains(name)) {
            throw new IllegalArgumentException("rules \"" + name + "\" are not one of " + String.join(", ", SHIPPED));
        }
        String path = "/rules/" + name + ".txt";
        try (InputStream in = RuleFile.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is missing from the program");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Reads rules.
     *
     * @param text the file's text
     * @param name what to call the file in messages
     * @throws IllegalArgumentException naming every bad line and key, and what would be right
     */
    public static RuleFile read(String text, String name) {
        return new RuleText(text, name).read();
    }

    /**
     * The same rules with another threshold, under a version that says so.
     *
     * @param place {@code enough}, {@code newcomer}, or the id of a rule
     * @throws IllegalArgumentException when the place does not ask for the measure, or the threshold makes no sense
     */
    public RuleFile with(String place, Measure measure, double threshold) {
        if (!(threshold >= 0 && threshold <= measure.most())) {
            throw new IllegalArgumentException(
                    measure.code() + " " + threshold + " is not in 0 to " + (long) measure.most());
        }
        if (place.equals("enough") && measure == Measure.DUE_SKILLS && threshold < TierChances.FEWEST_DUE_SKILLS) {
            throw new IllegalArgumentException("there are no tiers before two skills are due");
        }
        boolean[] found = {false};
        List<Requirement> newEnough = place.equals("enough") ? changed(enough, measure, threshold, found) : enough;
        List<Requirement> newNewcomers =
                place.equals("newcomer") ? changed(newcomers, measure, threshold, found) : newcomers;
        List<Rule> newRules = new ArrayList<>();
        for (Rule rule : rules) {
            boolean here = rule.id().equals(place);
            List<Requirement> needs = here ? changed(rule.needs(), measure, threshold, found) : rule.needs();
            newRules.add(new Rule(rule.id(), rule.from(), rule.to(), needs));
        }
        if (!found[0]) {
            throw new IllegalArgumentException(
                    "rules " + name + " have no \"" + measure.code() + "\" under \"" + place + "\"");
        }
        String changedVersion = version + "+" + place + "." + measure.code() + "=" + threshold;
        return new RuleFile(name, changedVersion, settings, newEnough, newNewcomers, newRules);
    }

    private static List<Requirement> changed(
            List<Requirement> all, Measure measure, double threshold, boolean[] found) {
        List<Requirement> result = new ArrayList<>();
        for (Requirement one : all) {
            boolean hit = one.measure() == measure;
            found[0] |= hit;
            result.add(
                    hit
                            ? new Requirement(
                                    one.part(), measure, one.comparison(), threshold, one.reviews(), one.line())
                            : one);
        }
        return result;
    }

    /** What must be seen of this child before anything is said. */
    List<Requirement> enoughFor(ChildState state) {
        if (state.joined() == null) {
            return enough;
        }
        Stream<Requirement> usual = enough.stream()
                .filter(r -> newcomers.stream().noneMatch(n -> n.measure() == r.measure()));
        return Stream.concat(usual, newcomers.stream()).toList();
    }

    /** Rules that move from the tier, in order. */
    List<Rule> from(Tier tier) {
        return rules.stream().filter(r -> r.from().contains(tier)).toList();
    }
}
