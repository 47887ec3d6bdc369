package org.stepwell.conference;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.stepwell.conference.Schedule.Arrival;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.pdf.PdfDocument;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.platform.pdf.PdfFiles;
import org.stepwell.platform.ui.Words;
import org.w3c.dom.Element;

/**
 * The schedule of talks on paper, for the adults of the class.
 *
 * @param className name of the class
 * @param adult who prints it
 * @param schedule the schedule
 * @param labels names of the children
 * @param without names of those without a time
 */
public record SchedulePaper(String className, String adult, Schedule schedule, Map<UUID, String> labels,
        List<String> without) {
    private static final String STYLE = "body { font-size: 11pt; line-height: 1.35 } h1 { font-size: 1.6em; "
            + "font-weight: normal; margin: 0 } h2 { font-size: 1.2em; font-weight: normal; margin: 1.2em 0 0.3em 0; "
            + "page-break-after: avoid } table { width: 100%; border-collapse: collapse } th { font-weight: normal; "
            + "text-align: left; color: #444444; padding: 0 0.6em 0.2em 0 } td { border-top: 0.5pt solid #777777; "
            + "padding: 0.45em 0.6em 0.45em 0 } tr { page-break-inside: avoid } .time { width: 7em } "
            + ".lang { width: 6em } .write { width: 36% } .when { color: #444444; margin: 0 }";

    /** The PDF in a language on a paper. */
    public byte[] pdf(Language language, Paper paper) {
        Words words = Words.of("schedule", language);
        PdfDocument document = new PdfDocument(words.say("title"), language.code(), paper, STYLE);
        Element body = document.body();
        document.add(body, "h1", "", words.say("title"));
        document.add(body, "p", "when", className + " · " + adult);
        if (schedule.slots().isEmpty()) {
            document.add(body, "p", "", words.say("none"));
        }
        schedule.slots().stream().map(Slot::day).distinct().forEach(day -> day(document, words, day));
        if (!without.isEmpty()) {
            document.add(body, "h2", "", words.say("without"));
            document.add(body, "p", "", String.join(", ", without));
        }
        return document.render();
    }

    /**
     * Notes of several children or households in one PDF, each on sheets of its own and in its own language.
     *
     * @param language of the document as a whole
     */
    static byte[] notes(List<HomePage> pages, Language language, Paper paper, boolean largePrint) {
        String title = Words.of("conference", language).say("page-title");
        if (pages.isEmpty()) {
            PdfDocument none = new PdfDocument(title, language.code(), paper, STYLE);
            none.add(none.body(), "p", "", Words.of("schedule", language).say("notes-none"));
            return none.render();
        }
        return PdfFiles.joined(pages.stream().map(page -> page.pdf(paper, largePrint)).toList(), title, language.code());
    }

    private void day(PdfDocument document, Words words, LocalDate day) {
        document.add(document.body(), "h2", "", words.weekday(day));
        Element table = document.add(document.body(), "table", "", "");
        Element head = document.add(document.add(table, "thead", "", ""), "tr", "", "");
        document.add(head, "th", "time", words.say("time"));
        document.add(head, "th", "", words.say("who"));
        document.add(head, "th", "lang", words.say("copy"));
        document.add(head, "th", "write", words.say("write"));
        Element rows = document.add(table, "tbody", "", "");
        schedule.slots().stream().filter(slot -> slot.day().equals(day)).forEach(slot -> {
            Element row = document.add(rows, "tr", "", "");
            document.add(row, "td", "", Words.time(slot.start()) + "–" + Words.time(slot.end()));
            document.add(row, "td", "", who(slot, words));
            document.add(row, "td", "", slot.childId() == null ? "" : slot.language() == Language.SPANISH ? "Español"
                    : "English");
            Arrival arrival = schedule.of(slot);
            document.add(row, "td", "", arrival == Arrival.OPEN ? "" : words.say("arrival." + arrival.name()));
        });
    }

    private String who(Slot slot, Words words) {
        UUID child = slot.childId();
        if (child == null) {
            return words.say(slot.pause() ? "pause" : "free");
        }
        String label = labels.getOrDefault(child, words.say("left"));
        boolean two = schedule.slots().stream().anyMatch(s -> child.equals(s.childId()) && s.household() == 2);
        return two ? words.say("household", label, slot.household()) : label;
    }
}
