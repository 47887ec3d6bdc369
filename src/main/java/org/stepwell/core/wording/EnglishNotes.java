package org.stepwell.core.wording;

import java.util.List;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.Note;

/** Notes and cautions in English. */
final class EnglishNotes {
    private EnglishNotes() {}

    static String note(Note note, EnglishPhrases words) {
        return switch (note) {
            case Note.TooFewDue n -> n.due() == 1
                    ? "Only 1 skill is due; tiers begin when two are."
                    : "No skill is due; tiers begin when two are.";
            case Note.NotSeenLately n -> (n.lastSeen() == null
                            ? "Not seen yet."
                            : "Not seen since " + words.date(n.lastSeen()) + ".")
                    + (n.help() ? " Help goes on." : "") + " One fresh look on " + n.skill() + ".";
            case Note.Provisional n -> "New since " + words.date(n.joined()) + ", so provisional: "
                    + looks(n.looks()) + " on " + days(n.days())
                    + (n.notCounted() > 0 ? "; " + n.notCounted() + " more did not count: sit apart next time." : ".");
            case Note.HardlySeen n -> n.looks() == 0
                    ? "Not seen in " + n.schoolDays() + " school days. First at the table on the next school day."
                    : "Hardly seen: " + looks(n.looks()) + " in " + n.schoolDays()
                            + " school days. First at the table on the next school day.";
            case Note.HelpNotGiven n -> "Help was not given as planned: " + n.dose().given() + " of "
                    + n.dose().planned() + " sessions"
                    + (n.dose().missedBySchool() > 0 ? ", " + n.dose().missedBySchool() + " missed by the school" : "")
                    + (n.dose().missedByChild() > 0 ? ", " + n.dose().missedByChild() + " by absence" : "")
                    + (n.dose().missedBySchool() > n.dose().missedByChild()
                            ? ". Mend the schedule; more help stays open."
                            : ". Too few to tell from; more help stays open.");
            case Note.RequestOpen n -> n.kind() == ChildState.OpenRequest.Kind.EVALUATION
                    ? "The request for an evaluation of " + words.date(n.on())
                            + " is open: answer it. Nothing here is a reason to wait."
                    : "A concern of " + words.date(n.on()) + " is open: answer it. Nothing here is a reason to wait.";
            case Note.CubesHide n -> words.list(n.skills()) + ": at least step " + n.atLeast()
                    + ". No look without cubes yet: hide the cubes twice.";
            case Note.ObserversDiffer n -> n.skill() + ": two adults see different things: " + n.a() + " step "
                    + n.stepA() + numbers(n.tasksA().stream().toList()) + ", " + n.b() + " step " + n.stepB()
                    + numbers(n.tasksB().stream().toList()) + ". "
                    + (n.tasksB().isEmpty()
                            ? "Watch one together."
                            : "Two kinds of number: watch one " + n.tasksB().last() + " together.");
            case Note.CheckDisagrees n -> "Unit check and looks tell different things: " + n.right() + " of "
                    + n.items() + " items right, " + n.daysMeeting() + " of " + n.days()
                    + " days at the expected step. The check alone moves nobody.";
            case Note.NothingAbove n -> n.skill() + ": step " + n.step() + " on " + days(n.days())
                    + "; step " + (n.step() + 1)
                    + " was never seen. Accept showing or drawing, or ask in the home language.";
            case Note.Growing n -> n.skill() + ": growing (steps "
                    + words.list(n.steps().stream().map(String::valueOf).toList()) + "), short of the expected "
                    + n.expected() + ".";
            case Note.BarRose n -> n.skill() + ": the expected step rose from " + n.before() + " to " + n.now() + " on "
                    + words.date(n.on()) + ". The bar moved, not the child.";
            case Note.KeystoneMissed n -> "Table time for " + n.skill() + ": step " + n.step() + ", expected "
                    + n.expected() + "; " + words.list(n.neededBy()) + " rest on it.";
            case Note.ButNot n -> "Ready for more in " + words.list(n.ahead()) + ". Look at " + n.behind() + ": step "
                    + n.step() + ", expected " + n.expected() + "."
                    + (n.mirrorWritten() ? " Mirror writing is not counted." : "");
            case Note.ClassDip n -> words.dip(
                    new org.stepwell.core.tier.ClassDip(n.skill(), n.children(), n.of()));
        };
    }

    static String caution(Caution caution) {
        return switch (caution) {
            case WAITING_IS_NO_REASON -> "Waiting for more looks is no reason to delay a referral or an evaluation.";
            case LESSON_FIRST -> "Many of the class are in the same place: look at the lesson first.";
            case ONE_CHECK_MOVES_NOBODY -> "A single unit check never moves a child by itself.";
            case OBSERVERS_DIFFER -> "Adults may see different things: see who looked.";
            case WAYS_OF_SHOWING -> "An explanation without words may be a matter of language, speech or hand: "
                    + "showing and drawing count.";
            case MISSING_IS_NOT_ZERO -> "Absent or new: what was not seen is not a zero.";
            case YOU_DECIDE -> "A suggestion from limited observations; you decide.";
            case SEE_THE_COUNTS -> "See how many looks, on how many days, and how old the newest is.";
            case NOT_A_LABEL -> "A tier is help for now, not a label; it is not shown to children.";
            case FEW_POINTS_NO_SLOPE -> "Growth drawn from fewer than 8 points is uncertain.";
        };
    }

    private static String looks(int n) {
        return n + (n == 1 ? " look" : " looks");
    }

    private static String days(int n) {
        return n + (n == 1 ? " day" : " days");
    }

    private static String numbers(List<String> tasks) {
        return tasks.isEmpty() ? "" : " (" + String.join(", ", tasks) + ")";
    }
}
