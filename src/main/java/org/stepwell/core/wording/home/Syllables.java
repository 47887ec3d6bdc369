package org.stepwell.core.wording.home;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.stepwell.core.wording.Language;

/**
 * Counts the syllables of a word as it is read aloud. Spanish follows the rules of its spelling (vowels that part and
 * vowels that join); English has no such rules, so the count is by groups of vowels with the usual silent endings and
 * can be one off in rare words. Numbers count as their number words.
 */
final class Syllables {
    private static final int[] ENGLISH_ONES =
            {2, 1, 1, 1, 1, 1, 1, 2, 1, 1, 1, 3, 1, 2, 2, 2, 2, 3, 2, 2};
    private static final int[] ENGLISH_TENS = {0, 0, 2, 2, 2, 2, 2, 3, 2, 2};
    private static final int[] SPANISH_ONES =
            {2, 2, 1, 1, 2, 2, 1, 2, 2, 2, 1, 2, 2, 2, 3, 2, 3, 4, 4, 4};
    private static final int[] SPANISH_TWENTIES = {2, 4, 3, 3, 4, 4, 3, 4, 4, 4};
    private static final int[] SPANISH_TENS = {0, 0, 0, 2, 3, 3, 3, 3, 3, 3};
    private static final Pattern GROUP = Pattern.compile("[aeiouy]+");
    private static final Pattern PARTED = Pattern.compile("i[ao]$|ia[nl]|i[ao]s$|eo(?!p)|[iu]ou?s$|dia|io(?!n)|ui[nt]"
            + "|ying|eing$|iet$|(?<![qg])ua(?!g)|(?:[dr]ea|cereal)$");
    private static final Pattern SILENT =
            Pattern.compile("(?<=[^aeiouyl])e$|(?<=[aeiouy])le$|(?<=[aeiouy]l)e$|(?<=[^aeiouytd])ed$"
                    + "|(?<=[^aeiouyscxzh])es$|(?<=[^sc]h)es$|(?<=[aeiouy])e$|(?<=[^aeiouy]e)e$(?!.)");
    private static final Pattern INNER = Pattern.compile("(?<=[^aeiouyl])e(?=(ful|less|ly|ment|ments|fully)$)"
            + "|(?<=som)e(?=one$|thing$|times$)|(?<=on)e(?=self$)");
    private static final String STRONG = "aeoáéó";
    private static final String WEAK = "iuüíúy";

    private Syllables() {
    }

    /** Syllables of a word of letters or digits; at least 1. */
    static int of(String word, Language language) {
        String lower = Normalizer.normalize(word.toLowerCase(Locale.ROOT), Normalizer.Form.NFC);
        if (lower.chars().allMatch(c -> c >= '0' && c <= '9')) {
            return number(lower, language);
        }
        return Math.max(1, language == Language.SPANISH ? spanish(lower) : english(lower));
    }

    private static int number(String digits, Language language) {
        if (digits.length() > 3) {
            return digits.chars().map(c -> ones(c - '0', language)).sum();
        }
        int value = Integer.parseInt(digits);
        int below = value % 100;
        int hundreds = value / 100;
        int rest = below == 0 && hundreds > 0 ? 0 : below(below, language);
        if (hundreds == 0) {
            return rest;
        }
        if (language == Language.ENGLISH) {
            return ones(hundreds, language) + 2 + rest;
        }
        return (hundreds == 1 ? rest == 0 ? 1 : 2 : ones(hundreds, language) + 3) + rest;
    }

    private static int below(int value, Language language) {
        if (value < 20) {
            return ones(value, language);
        }
        int one = value % 10;
        if (language == Language.ENGLISH) {
            return ENGLISH_TENS[value / 10] + (one == 0 ? 0 : ENGLISH_ONES[one]);
        }
        if (value < 30) {
            return SPANISH_TWENTIES[one];
        }
        return SPANISH_TENS[value / 10] + (one == 0 ? 0 : 1 + SPANISH_ONES[one]);
    }

    private static int ones(int value, Language language) {
        return language == Language.ENGLISH ? ENGLISH_ONES[value] : SPANISH_ONES[value];
    }

    private static int english(String word) {
        String letters = Normalizer.normalize(word, Normalizer.Form.NFD).replaceAll("\\p{M}|[^a-z]", "");
        if (letters.length() <= 3) {
            return groups(letters.matches("[aeiou][^aeiouy]e") ? letters.substring(0, 2) : letters);
        }
        String spoken = INNER.matcher(letters).replaceAll("");
        spoken = SILENT.matcher(spoken).replaceAll("");
        Matcher parted = PARTED.matcher(spoken);
        int extra = 0;
        while (parted.find()) {
            extra++;
        }
        return groups(spoken) + extra;
    }

    private static int groups(String letters) {
        return (int) GROUP.matcher(letters).results().count();
    }

    private static int spanish(String word) {
        String letters = word.replaceAll("qu(?=[eiéí])", "q").replaceAll("gu(?=[eiéí])", "g").replace("h", "");
        int count = 0;
        char before = 0;
        for (int i = 0; i < letters.length(); i++) {
            char letter = letters.charAt(i);
            boolean vowel = vowel(letters, i);
            if (vowel && (before == 0 || parts(before, letter))) {
                count++;
            }
            before = vowel ? letter : 0;
        }
        return count;
    }

    private static boolean vowel(String letters, int at) {
        char letter = letters.charAt(at);
        if (letter == 'y') {
            return at == letters.length() - 1 || STRONG.indexOf(letters.charAt(at + 1)) < 0
                    && WEAK.indexOf(letters.charAt(at + 1)) < 0;
        }
        return STRONG.indexOf(letter) >= 0 || WEAK.indexOf(letter) >= 0;
    }

    /** Two strong vowels part, and so does a weak one that bears the accent beside a strong one. */
    private static boolean parts(char first, char second) {
        boolean bothStrong = STRONG.indexOf(first) >= 0 && STRONG.indexOf(second) >= 0;
        boolean accent = STRONG.indexOf(first) >= 0 && "íú".indexOf(second) >= 0
                || "íú".indexOf(first) >= 0 && STRONG.indexOf(second) >= 0;
        return bothStrong || accent;
    }
}
