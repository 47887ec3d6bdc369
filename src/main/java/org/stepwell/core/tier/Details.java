package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Kind;

/**
 * What costs more to find out about a suggestion, and is asked for only when somebody reads it.
 *
 * @param weighty the looks that mattered most, heaviest first: each was left out in turn and the rules asked again
 * @param settled whether the answer is clear enough today
 * @param settle the fewest further looks that are likely to settle the answer, or, when it is settled, could change it;
 *     empty when a few looks will not
 * @param ask what to ask next at the table; empty when no skill is due
 */
public record Details(List<Weighty> weighty, boolean settled, Optional<Settle> settle, Optional<Ask> ask) {

    /**
     * A look and what the rules would say without it.
     *
     * @param look that was left out
     * @param chanceWithout chance of the suggested tier without it
     * @param verdictWithout verdict without it
     * @param suggestedWithout suggested tier without it
     * @param fitsWithout tier that fits best without it
     */
    public record Weighty(
            CountedLook look, double chanceWithout, Verdict verdictWithout, Tier suggestedWithout, Tier fitsWithout) {}

    /**
     * Further looks and what the rules would say after them.
     *
     * @param looks to make, in order, without objects or hints
     * @param reached the answer when each shows the step it is about
     * @param missed the answer when each falls one step short
     * @param likely chance by the model, over all mixtures of the two, that the answer is settled after them; when it
     *     is settled already, that they change it
     */
    public record Settle(List<Wanted> looks, Answer reached, Answer missed, double likely) {
        /** Copies the list. */
        public Settle {
            looks = List.copyOf(looks);
        }
    }

    /**
     * A look to make.
     *
     * @param skill on which
     * @param step the step it is about: the expected one, or the one above where more is in question
     * @param day a school day after the review
     * @param kind another kind of evidence where one is missing
     */
    public record Wanted(String skill, int step, LocalDate day, Kind kind) {}

    /**
     * What the rules would say.
     *
     * @param fits the tier that fits best then; it may differ from the suggested one where a move waits for another
     *     review or for the minimum stay
     * @param chance of the tier that fits best
     * @param settled whether the rules speak and that chance is clear
     */
    public record Answer(Verdict verdict, Tier suggested, Tier fits, double chance, boolean settled) {}

    /**
     * One question for the table.
     *
     * @param skill on which
     * @param expected the step to look for
     * @param number to ask for: one that the progression offers and that was not asked yet; {@code null} when none is
     * @param hideCubes objects were out on every day
     */
    public record Ask(String skill, int expected, @Nullable String number, boolean hideCubes) {}

    /** Copies the list. */
    public Details {
        weighty = List.copyOf(weighty);
    }
}
