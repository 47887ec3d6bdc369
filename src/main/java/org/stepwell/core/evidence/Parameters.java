package org.stepwell.core.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * The numbers behind the estimates: growth, slips, help. Read from a text file in which each one stands with its
 * meaning, its reason and its range.
 *
 * @param version name of this set, quoted with every suggestion
 * @param paces the parallel assumptions, at least one
 * @param upShape how much harder each next step is: the pace is multiplied by it for going up from steps 1-4
 * @param untaughtUp chance per school day to go up while the skill is not taught, 0-0.05
 * @param untaughtDown chance per school day to go down while the skill is not taught, 0-0.05
 * @param breakDown chance per weekday of a break to go down, 0-0.1
 * @param silenceDays school days without a look at the skill after which growth is no longer assumed, 1-250
 * @param below how steeply the chance to show a lower step than the true one falls with each step, 0.01-0.9
 * @param above the same for a higher one, without help
 * @param aboveWithCubes the same with objects out
 * @param aboveWithPrompt the same after a hint
 * @param aboveWithModel the same after the way was shown
 * @param lookWeight weight of any look, for what the model does not know, 0.1-1
 * @param promptWeight further weight of a look after a hint, 0-1
 * @param modelledWeight further weight of a look after the way was shown, 0-1
 * @param substituteWeight further weight of a look by an adult who does not know the class, 0-1
 * @param checkWeight further weight of an item of a unit check, 0-1
 * @param notYetWeight further weight of a look at a child who could not start, 1-3
 * @param sittingShare how much looks of one day at one skill tell the same thing: 0 not at all, 1 entirely
 * @param staleDays school days after which a skill counts as not seen lately, 1-60
 * @param leadDays school days before the unit from which looks speak for a pace, 0-60
 */
public record Parameters(
        String version,
        List<Pace> paces,
        List<Double> upShape,
        double untaughtUp,
        double untaughtDown,
        double breakDown,
        int silenceDays,
        double below,
        double above,
        double aboveWithCubes,
        double aboveWithPrompt,
        double aboveWithModel,
        double lookWeight,
        double promptWeight,
        double modelledWeight,
        double substituteWeight,
        double checkWeight,
        double notYetWeight,
        double sittingShare,
        int staleDays,
        int leadDays) {

    /** Where the shipped file lies on the classpath. */
    public static final String SHIPPED = "/rules/parameters.txt";

    /**
     * One assumption on how a child learns.
     *
     * @param weight how common it is before anything was seen, above 0; weights add up to 1
     * @param up chance per school day to go up one step while the skill is taught, 0-0.5
     * @param start chances of steps 1-5 when the class begins with the skill, adding up to 1
     */
    public record Pace(double weight, double up, List<Double> start) {
        /** Copies the list. */
        public Pace {
            start = List.copyOf(start);
        }
    }

    /** Copies the lists. */
    public Parameters {
        paces = List.copyOf(paces);
        upShape = List.copyOf(upShape);
    }

    /** The shipped set. */
    public static Parameters shipped() {
        try (InputStream in = Parameters.class.getResourceAsStream(SHIPPED)) {
            if (in == null) {
                throw new IllegalStateException(SHIPPED + " is missing from the program");
            }
            return read(new String(in.readAllBytes(), StandardCharsets.UTF_8), SHIPPED);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Reads a set.
     *
     * @param text the file's text
     * @param name what to call the file in messages
     * @throws IllegalArgumentException naming every bad line and key, and what would be right
     */
    public static Parameters read(String text, String name) {
        ParameterText file = new ParameterText(text, name);
        String version = file.word("version");
        double[] weights = file.numbers("pace.weight", 1, 9, 0.001, 1);
        int count = weights.length;
        double[] ups = file.numbers("pace.up", count, count, 0, 0.5);
        List<Pace> paces = new java.util.ArrayList<>();
        file.sumsToOne("pace.weight", weights);
        for (int i = 0; i < count; i++) {
            String key = "start." + (i + 1);
            double[] start = file.numbers(key, 5, 5, 0.0001, 1);
            file.sumsToOne(key, start);
            paces.add(new Pace(weights[i], i < ups.length ? ups[i] : 0, boxed(start)));
        }
        double[] shape = file.numbers("up.shape", 4, 4, 0, 2);
        Parameters parameters = new Parameters(
                version,
                paces,
                boxed(shape),
                file.number("untaught.up", 0, 0.05),
                file.number("untaught.down", 0, 0.05),
                file.number("break.down", 0, 0.1),
                file.whole("silence.days", 1, 250),
                file.number("shown.below", 0.01, 0.9),
                file.number("shown.above", 0.01, 0.9),
                file.number("shown.above.cubes", 0.01, 0.9),
                file.number("shown.above.prompt", 0.01, 0.9),
                file.number("shown.above.modelled", 0.01, 0.9),
                file.number("weight.look", 0.1, 1),
                file.number("weight.prompt", 0, 1),
                file.number("weight.modelled", 0, 1),
                file.number("weight.substitute", 0, 1),
                file.number("weight.check", 0, 1),
                file.number("weight.not_yet", 1, 3),
                file.number("sitting.share", 0, 1),
                file.whole("stale.days", 1, 60),
                file.whole("lead.days", 0, 60));
        file.finish();
        return parameters;
    }

    private static List<Double> boxed(double[] values) {
        return java.util.Arrays.stream(values).boxed().toList();
    }
}
