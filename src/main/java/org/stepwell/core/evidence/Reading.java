package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;

/**
 * The evidence on one child as read on one day, ready to be asked: what does it say, what would it say without one
 * look, what if further looks came. Each question costs one skill followed again, not all of them.
 */
public final class Reading {
    private static final int STEPS = 5;

    private final EvidenceFilter filter;
    private final String child;
    private final Pacing pacing;
    private final SchoolCalendar calendar;
    private final LocalDate day;
    private final @Nullable LocalDate paceFrom;
    private final SortedMap<String, Track> tracks;

    private Reading(
            EvidenceFilter filter,
            String child,
            Pacing pacing,
            SchoolCalendar calendar,
            LocalDate day,
            @Nullable LocalDate paceFrom,
            SortedMap<String, Track> tracks) {
        this.filter = filter;
        this.child = child;
        this.pacing = pacing;
        this.calendar = calendar;
        this.day = day;
        this.paceFrom = paceFrom;
        this.tracks = tracks;
    }

    static Reading of(
            EvidenceFilter filter,
            String child,
            Collection<CountedLook> looks,
            Pacing pacing,
            SchoolCalendar calendar,
            LocalDate day) {
        SortedMap<String, List<CountedLook>> bySkill = new TreeMap<>();
        pacing.skills().forEach(skill -> bySkill.put(skill, new ArrayList<>()));
        for (CountedLook look : looks) {
            if (!look.day().isAfter(day)) {
                bySkill.computeIfAbsent(look.skill(), s -> new ArrayList<>()).add(look);
            }
        }
        LocalDate paceFrom = pacing.unitStart(day, calendar)
                .map(s -> calendar.minusSchoolDays(s, filter.parameters().leadDays()))
                .orElse(null);
        Reading empty = new Reading(filter, child, pacing, calendar, day, paceFrom, new TreeMap<>());
        bySkill.forEach((skill, own) -> empty.tracks.put(skill, empty.follow(skill, own)));
        return empty;
    }

    private Track follow(String skill, List<CountedLook> looks) {
        List<CountedLook> sorted = new ArrayList<>(looks);
        sorted.sort(EffectiveLooks.BY_TIME);
        return Track.follow(
                filter, sorted, new Track.Frame(pacing.taughtFrom(skill, calendar), paceFrom, calendar, day));
    }

    /** What the evidence says. */
    public ChildPicture picture() {
        double[] weights = paceWeights();
        SortedMap<String, SkillEstimate> skills = new TreeMap<>();
        List<Map<String, double[]>> chances = new ArrayList<>();
        for (int b = 0; b < weights.length; b++) {
            chances.add(new HashMap<>());
        }
        tracks.forEach((skill, track) -> {
            for (int b = 0; b < weights.length; b++) {
                chances.get(b).put(skill, track.beliefs()[b].chances());
            }
            skills.put(skill, estimate(skill, track, weights));
        });
        List<ChildPicture.Branch> branches = new ArrayList<>();
        for (int b = 0; b < weights.length; b++) {
            branches.add(new ChildPicture.Branch(weights[b], chances.get(b)));
        }
        return new ChildPicture(child, day, skills, branches);
    }

    /**
     * The looks that count, of all skills, oldest first.
     */
    public List<CountedLook> looks() {
        return tracks.values().stream()
                .flatMap(t -> t.looks().stream())
                .sorted(EffectiveLooks.BY_TIME)
                .toList();
    }

    /**
     * What the evidence would say without one look.
     *
     * @throws IllegalArgumentException when the look is not among those that count
     */
    public ChildPicture without(UUID lookId) {
        for (Map.Entry<String, Track> entry : tracks.entrySet()) {
            List<CountedLook> rest = entry.getValue().looksWithout(lookId);
            if (rest.size() < entry.getValue().looks().size()) {
                return replaced(Map.of(entry.getKey(), rest)).picture();
            }
        }
        throw new IllegalArgumentException("look " + lookId + " is not among those that count for " + child);
    }

    /**
     * What the evidence would say if further looks came up to this day.
     *
     * @param more looks dated up to the day of this reading; later ones have no effect
     */
    public Reading with(Collection<CountedLook> more) {
        Map<String, List<CountedLook>> changed = new TreeMap<>();
        for (CountedLook look : more) {
            if (!look.day().isAfter(day)) {
                changed.computeIfAbsent(look.skill(), s -> new ArrayList<>(looksAt(s)))
                        .add(look);
            }
        }
        return replaced(changed);
    }

    /** The same evidence with further looks, read on another day. */
    public Reading with(Collection<CountedLook> more, LocalDate otherDay) {
        List<CountedLook> all = new ArrayList<>(looks());
        all.addAll(more);
        return of(filter, child, all, pacing, calendar, otherDay);
    }

    /**
     * The chance of each step to be shown by one more look today.
     *
     * @param skill one paced or seen
     * @param help the help it would be given with; {@link Help#CUBES} stands for objects beyond the task, which show
     *     no step above 3
     * @return five chances, index 0 = step 1, adding up to 1
     * @throws IllegalArgumentException when the skill is neither paced nor seen
     */
    public double[] nextLook(String skill, Help help) {
        Track track = tracks.get(skill);
        if (track == null) {
            throw new IllegalArgumentException("skill " + skill + " is neither paced nor seen");
        }
        double[] weights = paceWeights();
        double[][] shown = filter.likelihoods().shown(help);
        double[] next = new double[STEPS];
        for (int b = 0; b < weights.length; b++) {
            double[] chances = track.beliefs()[b].chances();
            for (int s = 0; s < STEPS; s++) {
                for (int o = 0; o < STEPS; o++) {
                    next[help == Help.CUBES ? Math.min(o, 2) : o] += weights[b] * chances[s] * shown[s][o];
                }
            }
        }
        return next;
    }

    private List<CountedLook> looksAt(String skill) {
        Track track = tracks.get(skill);
        return track == null ? List.of() : track.looks();
    }

    private Reading replaced(Map<String, List<CountedLook>> changed) {
        SortedMap<String, Track> copy = new TreeMap<>(tracks);
        changed.forEach((skill, looks) -> copy.put(skill, follow(skill, looks)));
        return new Reading(filter, child, pacing, calendar, day, paceFrom, copy);
    }

    private double[] paceWeights() {
        List<Parameters.Pace> paces = filter.parameters().paces();
        double[] log = new double[paces.size()];
        double largest = Double.NEGATIVE_INFINITY;
        for (int b = 0; b < log.length; b++) {
            log[b] = StrictMath.log(paces.get(b).weight());
            for (Track track : tracks.values()) {
                log[b] += track.beliefs()[b].logEvidence();
            }
            largest = Math.max(largest, log[b]);
        }
        double sum = 0;
        for (int b = 0; b < log.length; b++) {
            log[b] = StrictMath.exp(log[b] - largest);
            sum += log[b];
        }
        for (int b = 0; b < log.length; b++) {
            log[b] /= sum;
        }
        return log;
    }

    private SkillEstimate estimate(String skill, Track track, double[] weights) {
        List<CountedLook> valid =
                track.looks().stream().filter(CountedLook::valid).toList();
        LocalDate last = valid.isEmpty() ? null : valid.getLast().day();
        boolean stale = last != null
                && calendar.schoolDaysBetween(last, day) > filter.parameters().staleDays();
        int days = (int) valid.stream().map(CountedLook::day).distinct().count();
        return new SkillEstimate(skill, chances(track, weights), valid.size(), days, last, stale);
    }

    /** Chances over all paces; none at all when nothing was seen. */
    private static List<Double> chances(Track track, double[] weights) {
        if (track.looks().isEmpty()) {
            return List.of();
        }
        double[] mixed = new double[STEPS];
        for (int b = 0; b < weights.length; b++) {
            double[] own = track.beliefs()[b].chances();
            for (int s = 0; s < STEPS; s++) {
                mixed[s] += weights[b] * own[s];
            }
        }
        double sum = 0;
        for (double value : mixed) {
            sum += value;
        }
        List<Double> result = new ArrayList<>();
        for (double value : mixed) {
            result.add(value / sum);
        }
        return result;
    }
}
