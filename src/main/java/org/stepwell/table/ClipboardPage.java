package org.stepwell.table;

import java.util.List;
import org.stepwell.core.progression.PaperMarks.Lettered;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.pdf.PdfDocument;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.platform.ui.Words;
import org.w3c.dom.Element;

/**
 * A page for a clipboard: names, room for marks, and what the letters mean. No step, tier or past stands on it.
 *
 * @param className class
 * @param skill title of the skill
 * @param letters phrases with their letters
 * @param numbers worth asking, in order; may be empty
 * @param names of the children, in the order of the page
 */
record ClipboardPage(String className, String skill, List<Lettered> letters, List<String> numbers, List<String> names) {
    private static final int COLUMNS = 5;

    byte[] pdf(Language language) {
        Words words = Words.of("paper", language);
        PdfDocument document = new PdfDocument(words.say("page"), language.code(), Paper.LETTER,
                "body { font-size: 11pt; line-height: 1.3 } h1 { font-size: 1.4em; font-weight: normal; margin: 0 } "
                        + "p { margin: 0.2em 0 } table { border-collapse: collapse; width: 100%; margin: 0.4em 0 } "
                        + "th, td { border: 0.6pt solid #1b1b1b; padding: 0.22em 0.4em; text-align: left; "
                        + "font-weight: normal; width: 15% } th:first-child { width: 25% } .key { font-size: 0.9em }");
        Element body = document.body();
        document.add(body, "h1", "", words.say("page") + " · " + className);
        document.add(body, "p", "", words.say("page.day", skill));
        Element table = document.add(body, "table", "", "");
        Element head = document.add(table, "tr", "", "");
        document.add(head, "th", "", words.say("child"));
        for (int column = 0; column < COLUMNS; column++) {
            document.add(head, "th", "", column < numbers.size() ? numbers.get(column) : "\u00a0");
        }
        for (String name : names) {
            Element row = document.add(table, "tr", "", "");
            document.add(row, "th", "", name);
            for (int column = 0; column < COLUMNS; column++) {
                document.add(row, "td", "", "\u00a0");
            }
        }
        for (Lettered letter : letters) {
            document.add(body, "p", "key", letter.letter() + "  " + (letter.text().isEmpty() ? words.say("not-yet")
                    : letter.text()));
        }
        document.add(body, "p", "key", words.say("page.help"));
        return document.render();
    }
}
