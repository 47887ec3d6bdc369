package org.stepwell.conference;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.pdf.PdfDocument;
import org.stepwell.platform.ui.Words;
import org.w3c.dom.Element;

/** What every page for home has on paper: its head, lines to write on, its look. */
final class HomePaper {
    private static final int LINES_TO_WRITE_ON = 3;
    private static final double LARGE = 18;
    private static final double NORMAL = 11.5;

    private HomePaper() {
    }

    /**
     * The head of a page.
     *
     * @param name given name of the child
     * @param className name of the class; may be empty
     * @param adult who signs
     * @param date in words
     * @param draft whether it is marked as draft
     */
    record Head(String name, String className, String adult, String date, boolean draft) {}

    static void head(PdfDocument document, Words words, String title, Head head) {
        Element body = document.body();
        if (head.draft()) {
            document.add(body, "p", "draft", words.say("draft-mark"));
        }
        document.add(body, "h1", "", title);
        document.add(body, "p", "who", head.name());
        document.add(body, "p", "when", List.of(head.className(), head.adult(), head.date()).stream()
                .filter(text -> !text.isEmpty()).collect(Collectors.joining(" · ")));
    }

    /** Lines for the family to write on. */
    static void lines(PdfDocument document, String title) {
        Element body = document.body();
        document.add(body, "h2", "", title);
        for (int line = 0; line < LINES_TO_WRITE_ON; line++) {
            document.add(body, "div", "line", "\u00a0");
        }
    }

    /** A day in words; in figures where another child is called like the month. */
    static String date(LocalDate on, Language language, Set<String> otherNames) {
        Locale locale = language == Language.SPANISH ? Locale.forLanguageTag("es") : Locale.US;
        boolean taken = otherNames.stream().anyMatch(other -> other.equalsIgnoreCase(
                DateTimeFormatter.ofPattern("LLLL", locale).format(on)));
        return DateTimeFormatter.ofPattern(taken ? "M/d/yyyy" : language == Language.SPANISH
                ? "d 'de' MMMM 'de' yyyy" : "MMMM d, yyyy", locale).format(on);
    }

    static String style(boolean largePrint) {
        return String.format(Locale.ROOT, "body { font-size: %spt; line-height: 1.45 } "
                + "h1 { font-size: 1.7em; font-weight: normal; margin: 0; line-height: 1.2 } "
                + "h2 { font-size: 1.18em; font-weight: normal; margin: 1em 0 0.2em 0; padding: 0 0 0.1em 0; "
                + "border-bottom: 0.7pt solid #1b1b1b; page-break-after: avoid } "
                + "p { margin: 0.25em 0 } ul { margin: 0.2em 0; padding: 0 0 0 1.3em } li { margin: 0.15em 0 } "
                + ".who { font-size: 1.35em; margin: 0.1em 0 0 0 } .when { color: #444444; margin: 0 0 0.8em 0 } "
                + ".draft { border: 0.7pt solid #1b1b1b; padding: 0.2em 0.6em; margin: 0 0 0.8em 0 } "
                + ".caption { margin-top: 0.5em } .dots { border-collapse: collapse } "
                + ".dots th { font-weight: normal; text-align: left; padding: 0 1em 0 0 } .dots td { padding: 0 } "
                + ".line { border-bottom: 0.5pt solid #777777; height: 2em } .school { margin-top: 0.9em } "
                + ".sign { margin-top: 1.6em } "
                + ".foot { margin-top: 1.4em; font-size: 0.85em; color: #444444 }", largePrint ? LARGE : NORMAL);
    }
}
