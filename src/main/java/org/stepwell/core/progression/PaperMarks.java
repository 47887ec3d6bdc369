package org.stepwell.core.progression;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.Progression.Phrase;

/**
 * Marks made on a clipboard: letters for phrases, with the number asked before and a small p or m behind, as in {@code A 47Cp}.
 * The letters are those of the Table: the phrases of a skill in the order of its file, then the one every skill has.
 */
public final class PaperMarks {
    /** Code of what every skill has: tried and could not start. */
    public static final String NOT_YET = "not_yet";
    private static final Pattern MARK = Pattern.compile("(\\d[\\d/]*)?([A-Za-z])([pm]?)");

    private PaperMarks() {}

    /**
     * A phrase and its letter.
     *
     * @param letter A, B and so on
     * @param code of the phrase
     * @param step it stands for
     * @param text in the reader's language; empty for {@link #NOT_YET}
     */
    public record Lettered(String letter, String code, int step, String text) {}

    /**
     * A mark.
     *
     * @param phrase what was seen
     * @param task number asked; {@code null} when none was written
     * @param help {@code p} after a hint, {@code m} after it was shown, empty for none
     */
    public record Mark(Lettered phrase, @Nullable String task, String help) {}

    /** The phrases of a skill with their letters. */
    public static List<Lettered> letters(Progression progression, String skill, String language) {
        List<Lettered> all = new ArrayList<>();
        for (Phrase phrase : progression.phrases()) {
            if (phrase.skill().equals(skill) && phrase.kind() == Phrase.Kind.PHRASE && phrase.language().equals(language)
                    && phrase.step() != null) {
                all.add(new Lettered(letter(all.size()), phrase.code(), phrase.step(), phrase.text()));
            }
        }
        all.add(new Lettered(letter(all.size()), NOT_YET, 1, ""));
        return all;
    }

    private static String letter(int index) {
        return String.valueOf((char) ('A' + index));
    }

    /**
     * Reads what was typed for one child.
     *
     * @throws Refused naming the first mark that cannot be read, and the letters there are
     */
    public static List<Mark> read(String typed, List<Lettered> letters) {
        List<Mark> marks = new ArrayList<>();
        for (String word : typed.strip().split("[\\s,;]+")) {
            if (word.isEmpty()) {
                continue;
            }
            Matcher mark = MARK.matcher(word);
            int index = mark.matches() ? mark.group(2).toUpperCase(Locale.ROOT).charAt(0) - 'A' : letters.size();
            if (index >= letters.size()) {
                throw new Refused("paper.mark", word, letters.getFirst().letter(), letters.getLast().letter());
            }
            marks.add(new Mark(letters.get(index), mark.group(1), mark.group(3)));
        }
        return marks;
    }
}
