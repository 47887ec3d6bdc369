package org.stepwell.conference;

import java.time.LocalDate;
import java.util.Set;
import org.stepwell.core.wording.home.HelpLetter;
import org.stepwell.platform.pdf.PdfDocument;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.platform.ui.Words;
import org.w3c.dom.Element;

/**
 * A letter about extra help on paper.
 *
 * @param name given name of the child
 * @param className name of the class; may be empty
 * @param adult who signs
 * @param on day printed on it
 * @param draft marked as draft at the top
 * @param letter what it says
 * @param otherNames names that must not stand on it, not even as the name of a month
 */
public record LetterPage(String name, String className, String adult, LocalDate on, boolean draft, HelpLetter letter,
        Set<String> otherNames) {

    /** The PDF on a paper, in normal or large print (18 points, may run to a second sheet). */
    public byte[] pdf(Paper paper, boolean largePrint) {
        Words words = Words.of("conference", letter.language());
        PdfDocument document = new PdfDocument(words.say("letter.page-title"), letter.language().code(), paper,
                HomePaper.style(largePrint));
        Element body = document.body();
        HomePaper.head(document, words, words.say("letter.page-title"), new HomePaper.Head(name, className, adult,
                HomePaper.date(on, letter.language(), otherNames), draft));
        letter.lines().forEach(line -> document.add(body, "p", "", line));
        letter.school().lines().filter(line -> !line.isBlank()).forEach(line -> document.add(body, "p", "school", line));
        document.add(body, "p", "sign", words.say("letter.signed", adult));
        HomePaper.lines(document, words.say("yours", name));
        document.add(body, "p", "foot", words.say("letter.foot"));
        return document.render();
    }
}
