package org.stepwell.bench;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.TierChances;

/**
 * Classrooms that come about in another way than those of {@link Simulator}: abilities are continuous and grow with the
 * days taught, a step is how many thresholds the ability has passed, and what is noted is the ability on that day with a
 * normal error. The same seed makes the same classroom on every machine.
 */
final class OtherSimulator {
    private static final LocalDate MONDAY = LocalDate.parse("2026-09-07");
    private static final int WEEK = 5;
    private static final double[] THRESHOLDS = {0, 1, 2, 3.2};

    private final OtherFamily family;
    private final SplittableRandom random;

    private OtherSimulator(OtherFamily family, long seed) {
        this.family = family;
        this.random = new SplittableRandom(seed);
    }

    /** A classroom and the child each record was made by. */
    static Classroom classroom(OtherFamily family, long seed) {
        return new OtherSimulator(family, seed).run();
    }

    /** One child as it comes: a general ability, what each skill starts from, and how it grows per day taught. */
    record Nature(double growth, double[] start) {
        double ability(OtherFamily family, int skill, int day) {
            int taught = Math.max(0, day + 1 - family.taughtFrom(skill));
            return start[skill] + growth * taught * family.ease(taught);
        }
    }

    static Nature nature(OtherFamily family, SplittableRandom random) {
        double general = normal(random);
        double growth = family.growth * StrictMath.exp(family.growthSpread * (0.6 * general + 0.8 * normal(random)));
        double[] start = new double[family.skills];
        for (int k = 0; k < start.length; k++) {
            start[k] = family.startMean + family.startSpread * (0.75 * general + 0.66 * normal(random));
        }
        return new Nature(growth, start);
    }

    /** The step of an ability, 0-4. */
    static int step(double ability) {
        int step = 0;
        while (step < THRESHOLDS.length && ability > THRESHOLDS[step]) {
            step++;
        }
        return step;
    }

    /** The chance that an adult notes the step (0-4) at this ability, help by help. */
    static double noted(OtherFamily family, double ability, Help help, int step) {
        double shown = ability + family.bias + family.lift(help);
        boolean hidden = help == Help.CUBES;
        if (hidden && step > 2) {
            return 0;
        }
        double below = step == 0 ? 0 : below(THRESHOLDS[step - 1], shown, family.error);
        double upTo = step == 4 || hidden && step == 2 ? 1 : below(THRESHOLDS[step], shown, family.error);
        return (1 - family.slip) * (upTo - below) + family.slip / (hidden ? 3 : 5);
    }

    /** Logistic in place of the normal distribution: heavier tails, and the same bytes everywhere. */
    private static double below(double threshold, double mean, double error) {
        return 1 / (1 + StrictMath.exp((mean - threshold) * 1.702 / error));
    }

    private Classroom run() {
        List<Nature> natures = new ArrayList<>();
        List<List<Classroom.Event>> events = new ArrayList<>();
        List<List<Tier>> truth = new ArrayList<>();
        double[] attention = new double[family.children];
        for (int c = 0; c < family.children; c++) {
            natures.add(nature(family, random));
            events.add(new ArrayList<>());
            truth.add(new ArrayList<>());
            attention[c] = family.evenAttention ? 1 : -StrictMath.log(1 - random.nextDouble());
        }
        List<Look> looks = new ArrayList<>();
        List<LocalDate> reviews = new ArrayList<>();
        for (int day = 0; day < family.days; day++) {
            for (int c = 0; c < family.children; c++) {
                List<Classroom.Note> notes = day < family.arrives(c) ? List.of() : sit(c, day, natures, attention[c]);
                for (Classroom.Note note : notes) {
                    looks.add(look(c, day, looks.size(), note));
                }
                events.get(c).add(new Classroom.Event(day, false, false, notes));
            }
            if (day % family.reviewEvery == family.reviewEvery - 1) {
                reviews.add(date(day));
                for (int c = 0; c < family.children; c++) {
                    truth.get(c).add(tier(family, natures.get(c), day));
                }
            }
        }
        List<Classroom.Child> children = new ArrayList<>();
        for (int c = 0; c < family.children; c++) {
            children.add(new Classroom.Child(id(c), truth.get(c), events.get(c)));
        }
        return new Classroom(looks, pacing(), new SchoolCalendar(List.of()), reviews, children);
    }

    private List<Classroom.Note> sit(int child, int day, List<Nature> natures, double attention) {
        List<Classroom.Note> notes = new ArrayList<>();
        boolean table = !family.fridaysOnly || day % WEEK == WEEK - 1;
        if (!table || random.nextDouble() >= Math.min(1, family.seen * attention)) {
            return notes;
        }
        List<Integer> open = new ArrayList<>();
        for (int k = 0; k < family.skills; k++) {
            if (family.taughtFrom(k) <= day) {
                open.add(k);
            }
        }
        for (int i = 0; i < family.looksPerVisit && !open.isEmpty(); i++) {
            int skill = open.get(Math.max(0, open.size() - 1 - random.nextInt(Math.min(3, open.size()))));
            Help help = family.help(random.nextDouble());
            int of = random.nextDouble() < family.copies ? random.nextInt(family.children) : child;
            double ability = natures.get(of).ability(family, skill, day);
            notes.add(new Classroom.Note(skill, 0, help, drawn(ability, help), i > 0));
        }
        return notes;
    }

    private int drawn(double ability, Help help) {
        double at = random.nextDouble();
        for (int s = 0; s < 4; s++) {
            at -= noted(family, ability, help, s);
            if (at < 0) {
                return s;
            }
        }
        return help == Help.CUBES ? 2 : 4;
    }

    static Tier tier(OtherFamily family, Nature nature, int day) {
        int[] due = family.dueOn(day);
        int[] steps = new int[due.length];
        int[] expected = new int[due.length];
        for (int i = 0; i < due.length; i++) {
            steps[i] = step(nature.ability(family, due[i], day)) + 1;
            expected[i] = family.expected(due[i], day);
        }
        return TierChances.meant(steps, expected);
    }

    private Look look(int child, int day, int serial, Classroom.Note note) {
        return new Look(
                new UUID(((long) day << 32) | 0x7000L, 0x8000_0000_0000_0000L | serial),
                date(day).atTime(LocalTime.of(10, 0).plusSeconds(serial % 7200)).atOffset(ZoneOffset.UTC),
                id(child),
                Simulator.skillCode(note.skill()),
                family.numbersWritten ? String.valueOf(11 + serial % 4) : null,
                note.step() + 1,
                note.help(),
                Kind.TABLE,
                "teacher",
                Set.of(),
                null,
                null,
                false,
                null);
    }

    private Pacing pacing() {
        List<PacingRow> rows = new ArrayList<>();
        for (int k = 0; k < family.skills; k++) {
            rows.add(new PacingRow(
                    Simulator.skillCode(k), date(family.taughtFrom(k)), date(family.due(k)), family.firstExpected));
            if (family.risesAfter > 0) {
                rows.add(new PacingRow(
                        Simulator.skillCode(k), null, date(family.due(k) + family.risesAfter),
                        family.firstExpected + 1));
            }
        }
        return new Pacing(rows);
    }

    /** Sum of twelve: near enough to a normal number, and the same on every machine. */
    private static double normal(SplittableRandom random) {
        double sum = -6;
        for (int i = 0; i < 12; i++) {
            sum += random.nextDouble();
        }
        return sum;
    }

    private static LocalDate date(int weekday) {
        return MONDAY.plusDays(7L * (weekday / WEEK) + weekday % WEEK);
    }

    private static String id(int child) {
        return String.format(Locale.ROOT, "D%02d", child + 1);
    }
}
