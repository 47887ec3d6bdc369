package org.stepwell.tier;

import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import org.stepwell.core.evidence.ChildPicture;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.ClassReview;
import org.stepwell.roster.ChildRow;

/**
 * A class on a day, as one adult may see it.
 *
 * @param day today at the school
 * @param unitTitle unit in hand; empty when there is none
 * @param progression its skills and words
 * @param due due skills with the step now expected
 * @param children by name
 * @param review what the rules say about each of them
 * @param looks all looks the picture rests on
 */
public record ClassPicture(LocalDate day, String unitTitle, Progression progression,
        SortedMap<String, Integer> due, List<OneChild> children, ClassReview review, List<Look> looks) {

    /** One child: what the evidence says and which support runs. */
    public record OneChild(ChildRow row, ChildPicture picture, ChildState state) {
        /** Whether the teacher has decided about the child on this day. */
        public boolean decided(LocalDate day) {
            return state.reviews().contains(day);
        }
    }
}
