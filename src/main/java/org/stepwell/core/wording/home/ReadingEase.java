package org.stepwell.core.wording.home;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.stepwell.core.wording.Language;

/**
 * How easy a text is to read, by counts.
 *
 * @param sentences number of sentences, at least 1 where there is a word
 * @param words number of words, a number written in digits being one
 * @param syllables number of syllables as read aloud
 */
public record ReadingEase(int sentences, int words, int syllables) {
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\d]+(?:['’][\\p{L}]+)*");
    private static final Pattern TITLES = Pattern.compile("\\b(Ms|Mr|Mrs|Dr|Sr|Sra|Srta|Dra)\\.");
    private static final Pattern END = Pattern.compile("[.!?…:]+|\\n");

    /** Counts a text. Line ends and colons end a sentence; titles before a name do not. */
    public static ReadingEase of(String text, Language language) {
        String spoken = TITLES.matcher(text).replaceAll("$1");
        int sentences = 0;
        int words = 0;
        int syllables = 0;
        for (String sentence : END.split(spoken)) {
            int before = words;
            Matcher word = WORD.matcher(sentence);
            while (word.find()) {
                words++;
                syllables += Syllables.of(word.group(), language);
            }
            sentences += words > before ? 1 : 0;
        }
        return new ReadingEase(sentences, words, syllables);
    }

    /**
     * Grade by Kincaid, Fishburne, Rogers and Chissom 1975 (Research Branch Report 8-75): 0.39 words per sentence + 11.8
     * syllables per word - 15.59. Made for English. {@code NaN} for an empty text.
     */
    public double fleschKincaidGrade() {
        return 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
    }

    /** Reading ease by Flesch 1948: 206.835 - 1.015 words per sentence - 84.6 syllables per word. Made for English. */
    public double fleschEase() {
        return 206.835 - 1.015 * words / sentences - 84.6 * syllables / words;
    }

    /**
     * Ease by Fernández Huerta 1959 for Spanish, with the second term as words per sentence (the reading that makes the
     * formula hold, Law 2011): 206.84 - 60 syllables per word - 1.02 words per sentence. 70 to 80 is read as the
     * sixth year of school, higher is easier.
     */
    public double fernandezHuerta() {
        return 206.84 - 60.0 * syllables / words - 1.02 * words / sentences;
    }

    /**
     * Ease by Szigriszt Pazos 1993 for Spanish, read on the INFLESZ scale of Barrio Cantalejo 2008 (65 to 80 fairly
     * easy, above 80 very easy): 206.835 - 62.3 syllables per word - words per sentence.
     */
    public double szigrisztPazos() {
        return 206.835 - 62.3 * syllables / words - 1.0 * words / sentences;
    }

    /** At most grade 6 in English; at least fairly easy (65) on the INFLESZ scale in Spanish. */
    public boolean easyEnough(Language language) {
        return words == 0 || (language == Language.SPANISH ? szigrisztPazos() >= 65 : fleschKincaidGrade() <= 6.0);
    }
}
