package org.stepwell.core.rotation;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.DayPlan.Turn;

/** What becomes of a block when minutes are lost: an assembly, a drill, a late bus. Common practice, no source. */
public enum LostTime {
    /** Everything still to come begins later; the block ends later. */
    SHIFT,
    /** The block ends when planned; what is left is shared by the rotations still to come. */
    SHORTEN,
    /** The block ends when planned; whole rotations go, those first whose group at the teacher table is owed least. */
    DROP;

    /** A rotation shorter than this, minutes, is none; our own choice. */
    public static final int SHORTEST = 3;

    /**
     * The plan after the loss. What is over stays as it was; a rotation that runs stands still and goes on.
     *
     * @param plan as it stands
     * @param change minutes between rotations
     * @param from when the loss begins
     * @param lost minutes lost, 1 to 120
     * @param owed minutes owed by number of the group; a group that is missing is owed none
     * @throws Refused when nothing is left to move, or too little to shorten
     */
    public DayPlan after(DayPlan plan, int change, LocalTime from, int lost, Map<Integer, Double> owed) {
        if (lost < 1 || lost > 120) {
            throw new Refused("block.lost", lost);
        }
        List<Turn> over = plan.turns().stream().filter(t -> !t.ends().isAfter(from)).toList();
        List<Turn> ahead = plan.turns().subList(over.size(), plan.turns().size());
        if (ahead.isEmpty()) {
            throw new Refused("block.over");
        }
        LocalTime last = this == SHIFT && plan.ends().isAfter(from) ? plan.ends() : from;
        if (last.toSecondOfDay() / 60 + lost >= 24 * 60) {
            throw new Refused("block.late");
        }
        Turn first = ahead.getFirst();
        boolean runs = first.starts().isBefore(from);
        int done = runs ? Math.clamp(DayPlan.between(first.starts(), from) - first.paused(), 0, first.minutes()) : 0;
        LocalTime again = from.plusMinutes(lost);
        List<Turn> left = switch (this) {
            case SHIFT -> ahead;
            case SHORTEN -> shorter(ahead, done, DayPlan.between(again, plan.ends()), change);
            case DROP -> fewer(ahead, runs, done, DayPlan.between(again, plan.ends()), change, owed);
        };
        boolean goesOn = runs && (this != DROP || !left.isEmpty() && left.getFirst() == first);
        List<Turn> turns = new ArrayList<>(over);
        if (!goesOn && done >= SHORTEST) {
            turns.add(new Turn(first.starts(), done, first.paused(), first.stations()));
        }
        LocalTime next = first.starts().isAfter(again) ? first.starts() : again;
        for (Turn turn : left) {
            Turn timed = goesOn && turn == left.getFirst() ? new Turn(first.starts(), turn.minutes(), first.paused() + lost, turn.stations())
                    : new Turn(next, turn.minutes(), 0, turn.stations());
            turns.add(timed);
            next = timed.ends().plusMinutes(change);
        }
        return new DayPlan(turns);
    }

    /** Minutes shared as equally as whole minutes can be, the earlier ones first; what was done already counts. */
    private static List<Turn> shorter(List<Turn> ahead, int done, int minutes, int change) {
        int work = minutes - change * (ahead.size() - 1);
        int each = Math.floorDiv(work, ahead.size());
        if (each < SHORTEST) {
            throw new Refused("block.short", Math.max(0, minutes), ahead.size());
        }
        List<Turn> turns = new ArrayList<>();
        int rest = work - each * ahead.size();
        for (int i = 0; i < ahead.size(); i++) {
            Turn turn = ahead.get(i);
            int own = Math.min(turn.minutes() - (i == 0 ? done : 0), each + (i < rest ? 1 : 0));
            turns.add(new Turn(turn.starts(), own + (i == 0 ? done : 0), turn.paused(), turn.stations()));
        }
        return turns;
    }

    private static List<Turn> fewer(List<Turn> ahead, boolean runs, int done, int minutes, int change,
            Map<Integer, Double> owed) {
        List<Turn> left = new ArrayList<>(ahead);
        while (!left.isEmpty() && needed(left, runs && left.getFirst() == ahead.getFirst() ? done : 0, change) > minutes) {
            left.remove(left.stream().min(Comparator.comparingDouble((Turn t) -> t.atTeacher().isEmpty()
                    ? Double.NEGATIVE_INFINITY : owed.getOrDefault(t.atTeacher().getAsInt(), 0.0))
                    .thenComparing(Comparator.comparing(Turn::starts).reversed())).orElseThrow());
        }
        return left;
    }

    private static int needed(List<Turn> left, int done, int change) {
        return left.stream().mapToInt(Turn::minutes).sum() - done + change * (left.size() - 1);
    }
}
