package org.stepwell.core.wording;

import java.util.List;
import org.stepwell.core.grouping.SeatReason;

/** The sentences about groups in one language. None of them is about how able a child is. */
interface GroupPhrases {
    /** What the child works on next and from where. */
    String next(String skill, int step);

    /** What the child works on next; where from is not known. */
    String next(String skill);

    /** Nothing is known yet. */
    String notSeen();

    /** How many of the others work on the same. */
    String others(SeatReason reason);

    /** New or known company. */
    String company(SeatReason.Company company);

    /** A kind of wish that was kept. */
    String kept(SeatReason.Kept kept);

    /** Sentences that say next to nothing, for when all others would name a child. */
    List<String> bare();

    /** One, two and three. */
    String list(List<String> words);

    /** A wish, short. */
    String apart(String one, String other);

    /** A wish, short. */
    String together(String one, String other);

    /** A wish, short. */
    String inGroup(String child, int group);

    /** A wish, short. */
    String away(String child, int rotation);

    /** A wish, short. */
    String withSecondAdult(String child);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String unknown(String child);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String noSuchGroup(String wish, int groups);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String apartFromItself(String child);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}; through may be empty. */
    String both(String one, String other, String through);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String tooLong(String children, int count, int places);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String twoPlaces(String wishes);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String apartInOnePlace(String one, String other, int group);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String noPlace(String children, String wishes);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String tooFull(String children, int count, int places);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String tooManyApart(String children, int groups);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String notAll(String wishes);

    /** See {@link org.stepwell.core.grouping.Contradiction.Kind}. */
    String noneFound(String wishes);
}
