package org.stepwell.conference;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HomeNote;
import org.stepwell.core.wording.home.HomeNote.Part;
import org.stepwell.platform.pdf.PdfDocument;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.platform.ui.Words;
import org.w3c.dom.Element;

/**
 * The one page on paper.
 *
 * @param name given name of the child
 * @param className name of the class; may be empty
 * @param adult who signs
 * @param on day printed on it
 * @param draft marked as draft at the top
 * @param note what it says
 * @param otherNames names that must not stand on it, not even as the name of a month
 */
public record HomePage(String name, String className, String adult, LocalDate on, boolean draft, HomeNote note,
        Set<String> otherNames) {
    private static final int LINES_TO_WRITE_ON = 3;

    /** The PDF on a paper, in normal or large print (18 points, may run to a second sheet). */
    public byte[] pdf(Paper paper, boolean largePrint) {
        Words words = Words.of("conference", note.language());
        PdfDocument document = new PdfDocument(words.say("page-title"), note.language().code(), paper,
                style(largePrint ? 18 : 11.5));
        Element body = document.body();
        if (draft) {
            document.add(body, "p", "draft", words.say("draft-mark"));
        }
        document.add(body, "h1", "", words.say("page-title"));
        document.add(body, "p", "who", name);
        document.add(body, "p", "when", List.of(className, adult, date(words)).stream()
                .filter(text -> !text.isEmpty()).collect(Collectors.joining(" · ")));
        for (Part part : Part.values()) {
            section(document, words, part);
        }
        document.add(body, "h2", "", words.say("yours", name));
        for (int line = 0; line < LINES_TO_WRITE_ON; line++) {
            document.add(body, "div", "line", "\u00a0");
        }
        document.add(body, "p", "foot", words.say("page-foot"));
        return document.render();
    }

    private void section(PdfDocument document, Words words, Part part) {
        List<String> sentences = note.of(part);
        boolean picture = part == Part.GROWTH && note.firsts().size() > 1;
        if (sentences.isEmpty() && !picture) {
            return;
        }
        Element body = document.body();
        document.add(body, "h2", "", words.say("part." + part.name(), name));
        if (part == Part.CAN || part == Part.ASK) {
            Element list = document.add(body, "ul", "", "");
            sentences.forEach(sentence -> document.add(list, "li", "", sentence));
        } else {
            sentences.forEach(sentence -> document.add(body, "p", "", sentence));
        }
        if (picture) {
            growth(document, words);
        }
    }

    /** A row of dots per month; also readable as text, since a dot is a letter. */
    private void growth(PdfDocument document, Words words) {
        Map<YearMonth, Long> months = note.firsts().stream()
                .collect(Collectors.groupingBy(YearMonth::from, TreeMap::new, Collectors.counting()));
        document.add(document.body(), "p", "caption", words.say("firsts", name));
        Element table = document.add(document.body(), "table", "dots", "");
        months.forEach((month, count) -> {
            Element row = document.add(table, "tr", "", "");
            document.add(row, "th", "", month(month, words));
            document.add(row, "td", "", "\u25cf ".repeat(count.intValue()).strip());
        });
    }

    private String month(YearMonth month, Words words) {
        String text = DateTimeFormatter.ofPattern("LLLL", words.locale()).format(month);
        boolean taken = otherNames.stream().anyMatch(other -> other.equalsIgnoreCase(text));
        return taken ? String.valueOf(month.getMonthValue()) : text;
    }

    private String date(Words words) {
        boolean taken = otherNames.stream().anyMatch(other -> other.equalsIgnoreCase(
                DateTimeFormatter.ofPattern("LLLL", words.locale()).format(on)));
        return DateTimeFormatter.ofPattern(taken ? "M/d/yyyy" : note.language() == Language.SPANISH
                ? "d 'de' MMMM 'de' yyyy" : "MMMM d, yyyy", words.locale()).format(on);
    }

    private static String style(double points) {
        return String.format(Locale.ROOT, "body { font-size: %spt; line-height: 1.45 } "
                + "h1 { font-size: 1.7em; font-weight: normal; margin: 0; line-height: 1.2 } "
                + "h2 { font-size: 1.18em; font-weight: normal; margin: 1em 0 0.2em 0; padding: 0 0 0.1em 0; "
                + "border-bottom: 0.7pt solid #1b1b1b; page-break-after: avoid } "
                + "p { margin: 0.25em 0 } ul { margin: 0.2em 0; padding: 0 0 0 1.3em } li { margin: 0.15em 0 } "
                + ".who { font-size: 1.35em; margin: 0.1em 0 0 0 } .when { color: #444444; margin: 0 } "
                + ".draft { border: 0.7pt solid #1b1b1b; padding: 0.2em 0.6em; margin: 0 0 0.8em 0 } "
                + ".caption { margin-top: 0.5em } .dots { border-collapse: collapse } "
                + ".dots th { font-weight: normal; text-align: left; padding: 0 1em 0 0 } .dots td { padding: 0 } "
                + ".line { border-bottom: 0.5pt solid #777777; height: 2em } "
                + ".foot { margin-top: 1.4em; font-size: 0.85em; color: #444444 }", points);
    }
}
