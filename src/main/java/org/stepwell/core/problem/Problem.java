package org.stepwell.core.problem;

import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.ResourceBundle.Control;

/**
 * Something that cannot be taken, said in the reader's language only where it reaches a reader: a command says it in
 * English, a screen in the language of the screen.
 *
 * @param key name of the text in {@code words/problem.properties}
 * @param gaps what stands in {@code {0}}, {@code {1}}, ...; a problem among them is said in the same language
 */
public record Problem(String key, List<Object> gaps) {
    private static final Control ONLY_OUR_FILES = Control.getNoFallbackControl(Control.FORMAT_PROPERTIES);

    /** Copies the gaps. */
    public Problem {
        gaps = List.copyOf(gaps);
    }

    /** A problem of that name with its gaps filled. */
    public static Problem of(String key, Object... gaps) {
        return new Problem(key, List.of(gaps));
    }

    /** What an exception says: its problem, or its own words where it carries none. */
    public static Problem of(RuntimeException thrown) {
        return thrown instanceof Refused refused ? refused.problem() : of("words", String.valueOf(thrown.getMessage()));
    }

    /**
     * In Spanish for any Spanish locale, else in English. Numbers are written plain, as in the file they are about.
     *
     * @throws java.util.MissingResourceException when there is no text of that name
     */
    public String in(Locale locale) {
        Locale language = locale.getLanguage().equals("es") ? Locale.forLanguageTag("es") : Locale.ROOT;
        Object[] said = gaps.stream().map(gap -> gap instanceof Problem within ? within.in(locale) : gap.toString())
                .toArray();
        return new MessageFormat(ResourceBundle.getBundle("words.problem", language, ONLY_OUR_FILES).getString(key),
                locale).format(said);
    }

    /** In English. */
    @Override
    public String toString() {
        return in(Locale.ROOT);
    }
}
