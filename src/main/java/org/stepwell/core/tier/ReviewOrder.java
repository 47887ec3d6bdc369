package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * In which order a class is gone through in a review: first who changed or is uncertain, then who was hardly seen, then
 * a few quiet cases on which the teacher's own call comes before the suggestion (one tap for all the rest breeds
 * stamping), then the rest. Common practice, no source.
 *
 * @param think a move is suggested, the verdict is another than last time, two adults differ, or a request is open
 * @param look too little was seen to say anything
 * @param quiet nothing changes, and the teacher is asked before the suggestion is shown
 * @param rest nothing changes
 */
public record ReviewOrder(List<String> think, List<String> look, List<String> quiet, List<String> rest) {
    /** How many quiet cases a review asks for. */
    public static final int QUIET_CASES = 3;

    /** Copies the lists. */
    public ReviewOrder {
        think = List.copyOf(think);
        look = List.copyOf(look);
        quiet = List.copyOf(quiet);
        rest = List.copyOf(rest);
    }

    /**
     * Orders a class.
     *
     * @param review what the rules say
     * @param before verdict of each child in the last review; children without one are missing
     * @param open children with a concern or a request that nobody has answered
     * @param seed the same seed chooses the same quiet cases, so that an interrupted review goes on as it was
     */
    public static ReviewOrder of(ClassReview review, Map<String, Verdict> before, List<String> open, long seed) {
        List<String> moves = new ArrayList<>();
        List<String> think = new ArrayList<>();
        List<String> look = new ArrayList<>();
        List<String> calm = new ArrayList<>();
        for (Suggestion one : review.suggestions()) {
            Verdict last = before.getOrDefault(one.child(), one.verdict());
            if (one.verdict() == Verdict.MOVE) {
                moves.add(one.child());
            } else if (open.contains(one.child()) || one.cautions().contains(Caution.OBSERVERS_DIFFER)
                    || one.verdict() == Verdict.STAY && last != Verdict.STAY) {
                think.add(one.child());
            } else {
                (one.verdict() == Verdict.NOT_ENOUGH ? look : calm).add(one.child());
            }
        }
        moves.addAll(think);
        List<String> drawn = new ArrayList<>(calm);
        Collections.sort(drawn);
        Collections.shuffle(drawn, new Random(seed));
        List<String> quiet = drawn.subList(0, Math.min(QUIET_CASES, drawn.size()));
        List<String> rest = calm.stream().filter(child -> !quiet.contains(child)).toList();
        return new ReviewOrder(moves, look, quiet, rest);
    }
}
