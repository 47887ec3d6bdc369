package org.stepwell.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import org.stepwell.core.evidence.ChildPicture;
import org.stepwell.core.evidence.EvidenceFilter;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.TierChances;

/** The most probable tier by the filter, without any brake: what the estimates alone are worth. */
final class ChanceDecider implements Decider {
    private final EvidenceFilter filter;

    ChanceDecider(EvidenceFilter filter) {
        this.filter = filter;
    }

    @Override
    public String name() {
        return "most_probable";
    }

    @Override
    public List<Call> decide(Classroom room, Classroom.Child child, RoomEvidence evidence) {
        List<Call> calls = new ArrayList<>();
        for (int review = 0; review < room.reviews().size(); review++) {
            LocalDate day = room.reviews().get(review);
            ChildPicture picture = filter.picture(
                    child.id(), evidence.looks(child.id(), review), room.pacing(), evidence.calendar(review), day);
            double[] odds = odds(picture, room.pacing().dueOn(day));
            int best = odds[1] >= odds[0] && odds[1] >= odds[2] ? 1 : odds[0] >= odds[2] ? 0 : 2;
            calls.add(new Call(Tier.values()[best], odds[best]));
        }
        return calls;
    }

    private static double[] odds(ChildPicture picture, SortedMap<String, Integer> due) {
        int[] expected = due.values().stream().mapToInt(Integer::intValue).toArray();
        double[] odds = new double[3];
        for (ChildPicture.Branch branch : picture.branches()) {
            double[][] chances =
                    due.keySet().stream().map(branch.chances()::get).toArray(double[][]::new);
            double[] own = TierChances.of(chances, expected);
            for (int t = 0; t < 3; t++) {
                odds[t] += branch.weight() * own[t];
            }
        }
        return odds;
    }
}
