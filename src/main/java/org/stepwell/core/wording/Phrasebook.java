package org.stepwell.core.wording;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.ClassDip;
import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.Note;
import org.stepwell.core.tier.Requirement;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;

/**
 * The sentences of one language. Each says only what it is handed. Every one of them must bear being read by the
 * child's parents: no label, no verdict on the child, chances as counts.
 */
interface Phrasebook {
    /** Month and day, without the year. */
    String date(LocalDate day);

    /** The word for the tier in force. */
    String tier(Tier tier);

    /** What a tier gives, as a thing that looks can fit. */
    String gives(Tier tier);

    /** The move from one tier to another, as a thing that can be suggested. */
    String move(Tier from, Tier to);

    /** The word for the verdict. */
    String verdict(Verdict verdict);

    /** A whole number of cases out of ten, in words that never claim certainty. */
    String cases(double chance);

    /** The looks fit this in so many cases. */
    String fits(Tier tier, double chance);

    /** Counts of days speak for the move, at so many reviews. */
    String daysSpeak(Tier from, Tier to, int reviews);

    /** All items of the unit check right, and the days agree. */
    String checkSpeaks();

    /** The move fits, but something is open. */
    String heldBack(Tier from, Tier to, String open);

    /** What is open: this condition. */
    String open(Condition condition, @Nullable LocalDate notBefore);

    /** Nothing changes. */
    String goesOn(Tier tier);

    /** How many of the skills with a signal reach the expected step on their last days, and how many fall short. */
    String daysTell(int meeting, int below, int skills);

    /** Too little: these minimums are short. */
    String notEnough(int looks, List<Suggestion.Missing> missing);

    /** What a note says. */
    String note(Note note);

    /** What a caution says. */
    String caution(Caution caution);

    /** What stands above the suggestions of a class. */
    String dip(ClassDip dip);

    /** The name of a measure. */
    String measure(Measure measure);

    /** Compared how, with what. */
    String required(Requirement requirement);

    /** What was measured. */
    String measured(Condition condition);

    /** What the rules would say after further looks. */
    String answer(Tier current, Details.Answer answer);

    /** These looks would settle or change it. */
    String settle(Details.Settle settle, boolean already, String reached, String missed);

    /** A few looks will not settle it, or not change it. */
    String notSettled(boolean already);

    /** A look that mattered, and what would be without it. */
    String weighty(CountedLook look, Tier suggested, double chanceWithout, @Nullable String changed);

    /** No single look changes the number of cases; these weigh most. */
    String noneDecides(List<CountedLook> heaviest, Tier suggested, double chance);

    /** What to ask next at the table; the words to look for may be missing. */
    String ask(Details.Ask ask, @Nullable String lookFor);

    /** A kind of help. */
    String help(Help help);

    /** A kind of evidence. */
    String kind(Kind kind);

    /** One, two and three. */
    String list(Collection<String> words);
}
