package org.stepwell.bench;

import java.util.List;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.stepwell.core.evidence.Help;

/**
 * How one kind of classroom of {@link OtherSimulator} comes about. No rule and no parameter was chosen in sight of results
 * on these: they are kept to see what the figures on the reported families are worth elsewhere.
 */
final class OtherFamily {
    final String name;
    int children = 22;
    int days = 30;
    int skills = 6;
    int stride = 3;
    int lead = 7;
    int firstExpected = 3;
    int risesAfter = 10;
    int reviewEvery = 5;
    /** Ability at the start, and growth per day taught; a step is about one unit. */
    double startMean = 0.6;

    double startSpread = 0.9;
    double growth = 0.075;
    double growthSpread = 0.6;
    /** Growth slows down: half of the early growth is left after so many days; 0 = it does not. */
    double slowsAfter = 25;

    double error = 0.55;
    double bias = 0;
    double slip = 0.04;
    double promptLift = 0.5;
    double modelledLift = 0.9;
    /** Chance per day that a child is seen, and looks at each visit. */
    double seen = 0.25;

    int looksPerVisit = 2;
    boolean evenAttention = true;
    boolean fridaysOnly = false;
    boolean numbersWritten = false;
    double copies = 0;
    double cubes = 0.25;
    double prompt = 0.1;
    double modelled = 0.05;
    /** Every fifth child comes on this day; 0 = all are there from the start. */
    int lateArrival = 0;

    private OtherFamily(String name) {
        this.name = name;
    }

    static OtherFamily of(String name, Consumer<OtherFamily> changes) {
        OtherFamily family = new OtherFamily(name);
        changes.accept(family);
        return family;
    }

    static List<OtherFamily> all() {
        return List.of(
                of("threshold_plain", f -> {}),
                of("neighbours_copied", f -> f.copies = 0.12),
                of("fridays_only", f -> {
                    f.fridaysOnly = true;
                    f.seen = 0.6;
                }),
                of("class_of_eight", f -> {
                    f.children = 8;
                    f.seen = 0.45;
                }),
                of("class_of_thirty", f -> {
                    f.children = 30;
                    f.seen = 0.16;
                }),
                of("ten_days", f -> {
                    f.days = 10;
                    f.skills = 3;
                    f.stride = 1;
                    f.lead = 2;
                    f.risesAfter = 0;
                    f.seen = 0.4;
                    f.startMean = 1.2;
                }),
                of("sixty_days", f -> {
                    f.days = 60;
                    f.skills = 10;
                    f.stride = 5;
                    f.lead = 9;
                    f.risesAfter = 15;
                }),
                of("uneven_attention", f -> f.evenAttention = false),
                of("late_arrivals", f -> f.lateArrival = 10),
                of("mild_eye", f -> f.bias = 0.4),
                of("stern_eye", f -> f.bias = -0.4),
                of("four_numbers_written", f -> f.numbersWritten = true));
    }

    double ease(int taught) {
        return slowsAfter == 0 ? 1 : slowsAfter / (slowsAfter + taught);
    }

    int taughtFrom(int skill) {
        return skill * stride;
    }

    int due(int skill) {
        return skill * stride + lead;
    }

    int[] dueOn(int day) {
        return IntStream.range(0, skills).filter(k -> due(k) <= day).toArray();
    }

    int expected(int skill, int day) {
        return firstExpected + (risesAfter > 0 && day >= due(skill) + risesAfter ? 1 : 0);
    }

    int arrives(int child) {
        return lateArrival > 0 && child % 5 == 0 ? lateArrival : 0;
    }

    double lift(Help help) {
        return help == Help.PROMPT ? promptLift : help == Help.MODELLED ? modelledLift : 0;
    }

    Help help(double at) {
        if (at < cubes) {
            return Help.CUBES;
        }
        if (at < cubes + prompt) {
            return Help.PROMPT;
        }
        return at < cubes + prompt + modelled ? Help.MODELLED : Help.NONE;
    }
}
