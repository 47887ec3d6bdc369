package org.stepwell.platform.ui;

import com.vaadin.flow.component.UI;
import java.text.MessageFormat;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import org.stepwell.core.problem.Problem;
import org.stepwell.core.wording.Language;

/**
 * The texts of one feature's screens in the reader's language. They stand in {@code words/FEATURE.properties} (English)
 * and {@code words/FEATURE_es.properties} (Spanish), as patterns of {@link MessageFormat}.
 */
public final class Words {
    private static final ResourceBundle.Control ONLY_OUR_FILES =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    private final ResourceBundle texts;
    private final Language language;

    private Words(String feature, Language language) {
        Locale locale = language == Language.SPANISH ? Locale.forLanguageTag("es") : Locale.ROOT;
        this.texts = ResourceBundle.getBundle("words." + feature, locale, ONLY_OUR_FILES);
        this.language = language;
    }

    /**
     * The texts of a feature for whoever looks at the screen of this thread; English where no screen is open.
     *
     * @throws MissingResourceException when the feature has no file
     */
    public static Words of(String feature) {
        return new Words(feature, language());
    }

    /** The texts of a feature in a language of the caller's choice. */
    public static Words of(String feature, Language language) {
        return new Words(feature, language);
    }

    /** The reader's language: that of the screen of this thread; English where no screen is open. */
    public static Language language() {
        UI ui = UI.getCurrent();
        return ui != null && ui.getLocale().getLanguage().equals("es") ? Language.SPANISH : Language.ENGLISH;
    }

    /** The locale by which dates and numbers of the screen are written. */
    public Locale locale() {
        return language == Language.SPANISH ? Locale.forLanguageTag("es-US") : Locale.US;
    }

    /**
     * A text with its gaps filled.
     *
     * @param key  name of the text in the file
     * @param gaps what goes into {@code {0}}, {@code {1}}, ...; numbers are written by the reader's locale
     * @throws MissingResourceException when there is no text of that name
     */
    public String say(String key, Object... gaps) {
        return new MessageFormat(texts.getString(key), locale()).format(gaps);
    }

    /** What is wrong, in the reader's language. */
    public static String told(Problem problem) {
        return problem.in(of("shell").locale());
    }

    /** What an exception says is wrong, in the reader's language where it carries a problem. */
    public static String told(RuntimeException wrong) {
        return told(Problem.of(wrong));
    }

    /** Month and day: July 4, 4 de julio. */
    public String day(LocalDate day) {
        return day.format(DateTimeFormatter.ofPattern(language == Language.SPANISH ? "d 'de' MMMM" : "MMMM d",
                locale()));
    }

    /** Weekday, month and day, as a heading begins with them. */
    public String weekday(LocalDate day) {
        String words = day.format(DateTimeFormatter.ofPattern(
                language == Language.SPANISH ? "EEEE, d 'de' MMMM" : "EEEE, MMMM d", locale()));
        return words.substring(0, 1).toUpperCase(locale()) + words.substring(1);
    }

    /** A time of the school day as it is said: 9:05. */
    public static String time(LocalTime time) {
        return DateTimeFormatter.ofPattern("h:mm", Locale.ROOT).format(time);
    }

    /** Month, day and time of day, short: Jul 4, 9:05 AM. */
    public String moment(OffsetDateTime at) {
        return at.format(DateTimeFormatter.ofPattern(language == Language.SPANISH ? "d MMM, H:mm" : "MMM d, h:mm a",
                locale()));
    }
}
