package org.stepwell.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Look;
import org.stepwell.review.SealedReview.Line;

/**
 * A closed review beside the one closed before it: for whom the suggestion or the decision is another one, who stayed, and
 * which looks came in between.
 *
 * @param before Monday of the week of the earlier review
 * @param children those in both, in the order of the later one
 * @param came children only in the later one
 * @param went children only in the earlier one
 */
public record Comparison(LocalDate before, List<Pair> children, List<UUID> came, List<UUID> went) {
    /** Copies the lists. */
    public Comparison {
        children = List.copyOf(children);
        came = List.copyOf(came);
        went = List.copyOf(went);
    }

    /**
     * One child in both reviews.
     *
     * @param then line of the earlier review
     * @param now line of the later one
     * @param added looks the later one knew and the earlier one did not, by skill code; without those taken back since
     */
    public record Pair(Line then, Line now, Map<String, Integer> added) {
        /** Copies the map, by skill. */
        public Pair {
            added = java.util.Collections.unmodifiableMap(new TreeMap<>(added));
        }

        /** Whether another tier was decided, or put off where it was decided, or the other way round. */
        public boolean decidedOtherwise() {
            return then.to() != now.to() || (then.until() == null) != (now.until() == null);
        }

        /** Whether the looks said something else. */
        public boolean suggestedOtherwise() {
            return then.suggested() != now.suggested() || !then.verdict().equals(now.verdict());
        }

        /** Whether anything but the looks changed. */
        public boolean changed() {
            return decidedOtherwise() || suggestedOtherwise();
        }

        /** How many looks were added. */
        public int looks() {
            return added.values().stream().mapToInt(Integer::intValue).sum();
        }
    }

    /**
     * Compares two reviews of a class.
     *
     * @param looks all looks of the class as they are now; those neither reviewed nor with a step and skill are left out
     */
    static Comparison of(SealedReview earlier, SealedReview later, Collection<Look> looks) {
        Map<UUID, Line> then = earlier.children().stream().collect(Collectors.toMap(Line::childId, Function.identity()));
        Map<UUID, String> skills = counting(looks);
        List<Pair> pairs = new ArrayList<>();
        List<UUID> came = new ArrayList<>();
        for (Line now : later.children()) {
            Line line = then.remove(now.childId());
            if (line == null) {
                came.add(now.childId());
            } else {
                pairs.add(new Pair(line, now, added(line, now, skills)));
            }
        }
        List<UUID> went = earlier.children().stream().map(Line::childId).filter(then::containsKey).toList();
        return new Comparison(earlier.week(), pairs, came, went);
    }

    private static Map<UUID, String> counting(Collection<Look> looks) {
        var gone = looks.stream().map(Look::replaces).filter(id -> id != null).collect(Collectors.toSet());
        return looks.stream().filter(look -> look.skill() != null && look.step() != null && !look.withdrawn()
                && !gone.contains(look.id())).collect(Collectors.toMap(Look::id, Comparison::skill, (a, b) -> a));
    }

    private static String skill(Look look) {
        @Nullable String skill = look.skill();
        return skill == null ? "" : skill;
    }

    private static Map<String, Integer> added(Line then, Line now, Map<UUID, String> skills) {
        Map<String, Integer> added = new TreeMap<>();
        now.lookIds().stream().filter(id -> !then.lookIds().contains(id) && skills.containsKey(id))
                .forEach(id -> added.merge(skills.get(id), 1, Integer::sum));
        return added;
    }
}
