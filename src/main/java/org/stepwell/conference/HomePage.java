package org.stepwell.conference;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
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

    /** The PDF on a paper, in normal or large print (18 points, may run to a second sheet). */
    public byte[] pdf(Paper paper, boolean largePrint) {
        Words words = Words.of("conference", note.language());
        PdfDocument document = new PdfDocument(words.say("page-title"), note.language().code(), paper,
                HomePaper.style(largePrint));
        Element body = document.body();
        HomePaper.head(document, words, words.say("page-title"), new HomePaper.Head(name, className, adult,
                HomePaper.date(on, note.language(), otherNames), draft));
        for (Part part : Part.values()) {
            section(document, words, part);
        }
        HomePaper.lines(document, words.say("yours", name));
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
}
