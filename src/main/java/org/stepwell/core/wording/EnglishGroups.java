package org.stepwell.core.wording;

import java.util.List;
import org.stepwell.core.grouping.SeatReason;

/** Groups in English. Small numbers are words and no word is one letter, as ids of children may be either. */
final class EnglishGroups implements GroupPhrases {
    private static final List<String> NUMBERS = List.of("zero", "one", "two", "three", "four", "five", "six", "seven",
            "eight", "nine", "ten");

    private static String number(int count) {
        return count < NUMBERS.size() ? NUMBERS.get(count) : "many";
    }

    @Override
    public String next(String skill, int step) {
        return step == 0 ? skill + " is next, from the beginning." : skill + " is next, from step " + number(step)
                + " on.";
    }

    @Override
    public String next(String skill) {
        return skill + " is next; the first tasks at the table show where to begin.";
    }

    @Override
    public String notSeen() {
        return "Not seen yet; the first tasks at the table show where to begin.";
    }

    @Override
    public String others(SeatReason reason) {
        if (reason.others() == 0) {
            return "Nobody else sits there.";
        }
        if (reason.focus() == null) {
            return "This table had room.";
        }
        if (reason.sameFocus() == 0) {
            return "Nobody else at the table works on it.";
        }
        String same = reason.sameFocus() == reason.others() ? "Everybody at the table works on it"
                : reason.sameFocus() == 1 ? "One other at the table works on it"
                : capital(number(reason.sameFocus())) + " others at the table work on it";
        return same + (reason.near() == reason.sameFocus() ? ", from nearly the same step." : ".");
    }

    private static String capital(String word) {
        return Character.toUpperCase(word.charAt(0)) + word.substring(1);
    }

    @Override
    public String company(SeatReason.Company company) {
        return switch (company) {
            case UNKNOWN -> "";
            case NEW -> "The company is mostly new.";
            case KNOWN -> "The company is mostly the same as last time.";
        };
    }

    @Override
    public String kept(SeatReason.Kept kept) {
        return switch (kept) {
            case COMPANY -> "Wishes about company are kept.";
            case PLACE -> "The place was fixed.";
            case TIME -> "The turn at the table fits the time away.";
            case SECOND_ADULT -> "The second adult meets this group.";
        };
    }

    @Override
    public List<String> bare() {
        return List.of("This table had room.", "Sizes are even.", "Fits best.", "Placed.");
    }

    @Override
    public String list(List<String> words) {
        return words.size() < 2 ? String.join("", words)
                : String.join(", ", words.subList(0, words.size() - 1)) + " and " + words.getLast();
    }

    @Override
    public String apart(String one, String other) {
        return one + " and " + other + " apart";
    }

    @Override
    public String together(String one, String other) {
        return one + " and " + other + " together";
    }

    @Override
    public String inGroup(String child, int group) {
        return child + " in group " + group;
    }

    @Override
    public String away(String child, int rotation) {
        return child + " away in rotation " + rotation;
    }

    @Override
    public String withSecondAdult(String child) {
        return child + " with the second adult";
    }

    @Override
    public String unknown(String child) {
        return child + " is named in a wish and is not in the class.";
    }

    @Override
    public String noSuchGroup(String wish, int groups) {
        return wish + " cannot be: the groups are 1 to " + groups + ".";
    }

    @Override
    public String apartFromItself(String child) {
        return child + " is to be apart from " + child + "; name two children.";
    }

    @Override
    public String both(String one, String other, String through) {
        return one + " and " + other + " are to be both together and apart"
                + (through.isEmpty() ? "." : "; what puts them together: " + through + ".");
    }

    @Override
    public String tooLong(String children, int count, int places) {
        return children + " are all to be together: " + count + " children, and the largest group has " + places
                + (places == 1 ? " place." : " places.");
    }

    @Override
    public String twoPlaces(String wishes) {
        return "Not both can be: " + wishes + ".";
    }

    @Override
    public String apartInOnePlace(String one, String other, int group) {
        return one + " and " + other + " are to be apart, and both are to sit in group " + group + ".";
    }

    @Override
    public String noPlace(String children, String wishes) {
        return "No group is left for " + children + ": " + wishes + ".";
    }

    @Override
    public String tooFull(String children, int count, int places) {
        return children + " are all to sit in one group: " + count + " children, and the largest group has " + places
                + (places == 1 ? " place." : " places.");
    }

    @Override
    public String tooManyApart(String children, int groups) {
        return children + " cannot all be apart from each other in " + groups + (groups == 1 ? " group." : " groups.");
    }

    @Override
    public String notAll(String wishes) {
        return "These wishes cannot all be kept; leaving out any one of them mends it: " + wishes + ".";
    }

    @Override
    public String noneFound(String wishes) {
        return "No groups were found that keep all of these wishes, though not every way was tried; leave one out: "
                + wishes + ".";
    }
}
