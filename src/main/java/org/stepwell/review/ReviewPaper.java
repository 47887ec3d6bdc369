package org.stepwell.review;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.stepwell.core.tier.Verdict;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.pdf.PdfDocument;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.platform.ui.Words;
import org.stepwell.review.SealedReview.Line;
import org.w3c.dom.Element;

/**
 * A closed review on paper, for the school's own file.
 *
 * @param printed what goes on it
 * @param language of the page
 */
record ReviewPaper(ReviewService.Printed printed, Language language) {
    private static final String STYLE = "body { font-size: 10.5pt; line-height: 1.4 } "
            + "h1 { font-size: 1.6em; font-weight: normal; margin: 0 } "
            + "h2 { font-size: 1.15em; font-weight: normal; margin: 1em 0 0.2em 0; border-bottom: 0.7pt solid #1b1b1b } "
            + "p { margin: 0.25em 0 } .soft { color: #444444 } .foot { margin-top: 1.4em; font-size: 0.85em } "
            + "table { border-collapse: collapse; width: 100% } "
            + "th, td { font-weight: normal; text-align: left; vertical-align: top; padding: 0.25em 0.6em 0.25em 0; "
            + "border-bottom: 0.4pt solid #999999 } tr { page-break-inside: avoid }";

    byte[] pdf() {
        SealedReview review = printed.review();
        Map<UUID, String> labels = printed.labels();
        Words words = Words.of("weekly", language);
        Words parts = Words.of("parts", language);
        PdfDocument document = new PdfDocument(words.say("title"), language.code(), Paper.LETTER, STYLE);
        Element body = document.body();
        document.add(body, "h1", "", words.say("title"));
        document.add(body, "p", "", printed.className() + " · " + words.say("week", dated(words, review.week())));
        document.add(body, "p", "soft", words.say("sealed", review.by(), dated(words, review.on())));
        if (!review.intact()) {
            document.add(body, "p", "", words.say("sealed.broken"));
        }
        document.add(body, "h2", "", words.say("close.changes"));
        if (review.changes().isEmpty()) {
            document.add(body, "p", "", words.say("close.none"));
        }
        review.changes().forEach(line -> document.add(body, "p", "", change(words, parts, line)));
        table(document, body, words, parts);
        review.later().forEach((child, count) -> document.add(body, "p", "", words.say("sealed.later",
                labels.getOrDefault(child, "…"), count)));
        compared(document, body);
        document.add(body, "p", "soft", words.say("paper.versions", review.children().stream().map(Line::versions).distinct()
                .collect(Collectors.joining("; "))));
        statements(document, body, words);
        document.add(body, "p", "foot", words.say("page-foot"));
        return document.render();
    }

    /** With the year: it is filed. */
    private static String dated(Words words, LocalDate day) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG).withLocale(words.locale()).format(day);
    }

    private void table(PdfDocument document, Element body, Words words, Words parts) {
        Element table = document.add(body, "table", "", "");
        Element head = document.add(table, "tr", "", "");
        for (String column : List.of("paper.child", "paper.decided", "paper.looks")) {
            document.add(head, "th", "soft", words.say(column));
        }
        for (Line line : printed.review().children()) {
            Element row = document.add(table, "tr", "", "");
            document.add(row, "th", "", printed.labels().getOrDefault(line.childId(), "…"));
            Element chosen = document.add(row, "td", "", "");
            document.add(chosen, "p", "", words.say("paper." + line.choice(), tier(parts, line.to()),
                    line.until() == null ? "" : words.day(line.until())));
            document.add(chosen, "p", "soft", line.reason().isEmpty() ? line.by() : line.reason() + " (" + line.by() + ")");
            Element looks = document.add(row, "td", "", "");
            document.add(looks, "p", "", words.say("compare.verdict." + line.verdict(), tier(parts, line.suggested())));
            document.add(looks, "p", "soft", words.say("paper.rested", line.looks(), line.days())
                    + (line.verdict().equals(Verdict.NOT_ENOUGH.code()) ? "" : " " + words.say("paper.fits",
                            Math.round(Math.min(0.94, line.chance()) * 10))));
        }
    }

    private void compared(PdfDocument document, Element body) {
        Comparison compared = printed.compared();
        if (compared != null) {
            ComparisonText text = new ComparisonText(language, printed.labels());
            document.add(body, "h2", "", text.title(compared));
            text.sentences(compared).forEach(sentence -> document.add(body, "p", "", sentence));
        }
    }

    private void statements(PdfDocument document, Element body, Words words) {
        if (!printed.statements().isEmpty()) {
            document.add(body, "h2", "", words.say("statements"));
            printed.statements().forEach((child, said) -> said.forEach(statement -> document.add(body, "p", "",
                    words.say("statement", printed.labels().getOrDefault(child, "…"), words.day(statement.on()),
                            statement.words()))));
        }
    }

    private String change(Words words, Words parts, Line line) {
        String change = words.say("sealed.line", printed.labels().getOrDefault(line.childId(), "…"), tier(parts, line.from()),
                tier(parts, line.to())) + (line.reason().isEmpty() ? "" : " " + line.reason());
        return line.teller().isEmpty() ? change : words.say("sealed.teller", change, line.teller());
    }

    private static String tier(Words parts, org.stepwell.core.tier.Tier tier) {
        return parts.say("tier." + tier.code());
    }
}
