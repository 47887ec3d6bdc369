package org.stepwell.bench;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
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

/** Makes classrooms of a family from a seed. The same seed makes the same classroom on every machine. */
final class Simulator {
    private static final LocalDate MONDAY = LocalDate.parse("2026-01-05");
    private static final int WEEK = 5;

    private final Family family;
    private final SplittableRandom random;
    private final int days;
    private final int[] taughtFrom;
    private final int[] due;

    private Simulator(Family family, long seed) {
        this.family = family;
        this.random = new SplittableRandom(seed);
        this.days = family.weeks * WEEK;
        this.taughtFrom = new int[family.skills];
        this.due = new int[family.skills];
        for (int k = 0; k < family.skills; k++) {
            taughtFrom[k] = schoolDay(k * family.stride);
            due[k] = schoolDay(k * family.stride + family.lead);
        }
    }

    static Classroom classroom(Family family, long seed) {
        return new Simulator(family, seed).run();
    }

    private Classroom run() {
        int n = family.children;
        int[] pace = new int[n];
        int[][] step = new int[n][family.skills];
        boolean[] favored = new boolean[n];
        int[] illUntil = new int[n];
        List<List<Classroom.Event>> events = new ArrayList<>();
        List<List<Tier>> truth = new ArrayList<>();
        for (int c = 0; c < n; c++) {
            pace[c] = pick(family.paceWeight);
            for (int k = 0; k < family.skills; k++) {
                step[c][k] = pick(family.start(pace[c]));
            }
            favored[c] = random.nextDouble() < family.favored;
            illUntil[c] = -1;
            events.add(new ArrayList<>());
            truth.add(new ArrayList<>());
        }
        List<Look> looks = new ArrayList<>();
        List<LocalDate> reviews = new ArrayList<>();
        for (int day = 0; day < days; day++) {
            boolean away = away(day);
            List<List<Classroom.Note>> notes = new ArrayList<>();
            for (int c = 0; c < n; c++) {
                notes.add(new ArrayList<>());
                if (!away && day > illUntil[c] && random.nextDouble() < family.fallsIll) {
                    illUntil[c] = day + WEEK - 1;
                }
                boolean ill = day <= illUntil[c];
                for (int k = 0; k < family.skills; k++) {
                    if (away) {
                        step[c][k] -= step[c][k] > 0 && random.nextDouble() < family.forgetsPerBreakDay ? 1 : 0;
                    } else if (!ill && step[c][k] < 4) {
                        step[c][k] += random.nextDouble() < up(pace[c], step[c][k], k, day) ? 1 : 0;
                    }
                }
            }
            for (int c = 0; c < n; c++) {
                if (!away && day > illUntil[c]) {
                    sit(c, day, step, favored[c], notes, looks);
                }
            }
            for (int c = 0; c < n; c++) {
                events.get(c).add(new Classroom.Event(day, away, day <= illUntil[c], notes.get(c)));
            }
            if (day % WEEK == WEEK - 1) {
                reviews.add(date(day));
                for (int c = 0; c < n; c++) {
                    truth.get(c).add(tier(step[c], day));
                }
            }
        }
        List<Classroom.Child> children = new ArrayList<>();
        for (int c = 0; c < n; c++) {
            children.add(new Classroom.Child(id(c), truth.get(c), events.get(c)));
        }
        return new Classroom(looks, pacing(), calendar(), reviews, children);
    }

    private void sit(
            int child, int day, int[][] step, boolean favored, List<List<Classroom.Note>> notes, List<Look> looks) {
        double seen = family.favored == 0 ? family.seen : favored ? family.seen * 2 : family.seen * 0.35;
        if (random.nextDouble() >= seen) {
            return;
        }
        List<Integer> open = new ArrayList<>();
        for (int k = 0; k < family.skills; k++) {
            if (taughtFrom[k] <= day) {
                open.add(k);
            }
        }
        if (open.isEmpty()) {
            return;
        }
        int eye = pick(java.util.Arrays.stream(family.eyes).mapToDouble(e -> e.share).toArray());
        int skill = -1;
        int many = 1 + random.nextInt(2 * family.looksPerSitting - 1);
        for (int i = 0; i < many; i++) {
            boolean same = i > 0 && random.nextDouble() < 0.6;
            if (!same) {
                // the newest skills are looked at most
                int back = (int) (open.size() * random.nextDouble() * random.nextDouble());
                skill = open.get(open.size() - 1 - back);
            }
            Help help = help();
            int of = random.nextDouble() < family.wrongChild ? random.nextInt(family.children) : child;
            List<Classroom.Note> own = notes.get(child);
            Classroom.Note last = own.isEmpty() ? null : own.getLast();
            boolean repeat = same && last != null && last.skill() == skill && last.help() == help;
            int shown = repeat && random.nextDouble() < family.repeats
                    ? last.step()
                    : pick(family.noted(family.eyes[eye], help)[step[of][skill]]);
            own.add(new Classroom.Note(skill, eye, help, shown, repeat));
            looks.add(look(child, skill, day, looks.size(), shown, help, family.eyes[eye].name));
        }
    }

    private Help help() {
        double at = random.nextDouble();
        if (at < family.cubes) {
            return Help.CUBES;
        }
        if (at < family.cubes + family.prompt) {
            return Help.PROMPT;
        }
        return at < family.cubes + family.prompt + family.modelled ? Help.MODELLED : Help.NONE;
    }

    private Look look(int child, int skill, int day, int serial, int shown, Help help, String observer) {
        return new Look(
                new UUID(((long) day << 32) | 0x7000L, 0x8000_0000_0000_0000L | serial),
                date(day).atTime(LocalTime.of(9, 0).plusSeconds(serial % 7200)).atOffset(ZoneOffset.UTC),
                id(child),
                skillCode(skill),
                family.numbersWritten ? String.valueOf(11 + serial % 9) : null,
                shown + 1,
                help,
                serial % 6 == 0 ? Kind.EXIT_TASK : Kind.TABLE,
                observer,
                Set.of(),
                null,
                null,
                false,
                null);
    }

    /** Chance to go up on a school day. */
    double up(int pace, int step, int skill, int day) {
        return up(family, taughtFrom, pace, step, skill, day);
    }

    private static double up(Family family, int[] taughtFrom, int pace, int step, int skill, int day) {
        boolean taught = day >= taughtFrom[skill];
        boolean lost = skill == family.failedSkill && day < taughtFrom[skill] + family.teachesNothingDays;
        return taught && !lost ? Math.min(0.5, family.paceUp[pace] * family.shape[step]) : 0;
    }

    /** The same simulation's clock and plan, for the observer who knows them. */
    static Simulator planOf(Family family) {
        return new Simulator(family, 0);
    }

    private Tier tier(int[] step, int day) {
        int[] skills = dueOn(day);
        int[] steps = new int[skills.length];
        int[] expected = new int[skills.length];
        for (int i = 0; i < skills.length; i++) {
            steps[i] = step[skills[i]] + 1;
            expected[i] = expected(skills[i], day);
        }
        return TierChances.meant(steps, expected);
    }

    int[] dueOn(int day) {
        return java.util.stream.IntStream.range(0, family.skills)
                .filter(k -> due[k] <= day)
                .toArray();
    }

    int expected(int skill, int day) {
        boolean risen = family.risesAfter > 0 && day >= rises(skill);
        return family.firstExpected + (risen ? 1 : 0);
    }

    private int rises(int skill) {
        return schoolDay(skill * family.stride + family.lead + family.risesAfter);
    }

    private Pacing pacing() {
        List<PacingRow> rows = new ArrayList<>();
        for (int k = 0; k < family.skills; k++) {
            rows.add(new PacingRow(skillCode(k), date(taughtFrom[k]), date(due[k]), family.firstExpected));
            if (family.risesAfter > 0) {
                rows.add(new PacingRow(skillCode(k), null, date(rises(k)), family.firstExpected + 1));
            }
        }
        return new Pacing(rows);
    }

    private SchoolCalendar calendar() {
        List<SchoolCalendar.Break> breaks = new ArrayList<>();
        if (family.calendarGiven) {
            for (int week : family.breakWeeks) {
                LocalDate from = date(week * WEEK);
                breaks.add(new SchoolCalendar.Break(from, from.plusDays(4), "break"));
            }
        }
        return new SchoolCalendar(breaks);
    }

    private boolean away(int day) {
        return java.util.Arrays.stream(family.breakWeeks).anyMatch(w -> w == day / WEEK);
    }

    /** The weekday that is the n-th school day, counted from 0. */
    private int schoolDay(int n) {
        int day = 0;
        for (int left = n; ; day++) {
            if (!away(day) && left-- == 0) {
                return day;
            }
        }
    }

    private int pick(double[] weights) {
        double at = random.nextDouble();
        for (int i = 0; i < weights.length - 1; i++) {
            at -= weights[i];
            if (at < 0) {
                return i;
            }
        }
        return weights.length - 1;
    }

    static LocalDate date(int weekday) {
        return MONDAY.plusDays(7L * (weekday / WEEK) + weekday % WEEK);
    }

    static String id(int child) {
        return String.format(java.util.Locale.ROOT, "C%02d", child + 1);
    }

    static String skillCode(int skill) {
        return String.format(java.util.Locale.ROOT, "K%02d", skill + 1);
    }
}
