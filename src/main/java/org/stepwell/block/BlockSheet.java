package org.stepwell.block;

import java.util.List;
import java.util.Objects;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.rotation.DayPlan.Turn;
import org.stepwell.core.rotation.Station;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.pdf.PdfDocument;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.platform.ui.Words;
import org.w3c.dom.Element;

/**
 * The block on paper: for the wall, or for a substitute with what has to lie ready. No step, tier, skill or history.
 *
 * @param picture the block of the day, with set-up, groups and rotations
 * @param className name of the class
 * @param forSubstitute with stations, materials and a word to the substitute
 */
record BlockSheet(BlockPicture picture, String className, boolean forSubstitute) {

    /** The PDF on Letter paper. */
    byte[] pdf(Language language) {
        Words words = Words.of("block", language);
        String title = words.say(forSubstitute ? "sheet.substitute" : "sheet.title");
        PdfDocument document = new PdfDocument(title, language.code(), Paper.LETTER, style(forSubstitute ? 11 : 15));
        Element body = document.body();
        List<Turn> turns = Objects.requireNonNull(picture.plan()).turns();
        BlockPattern pattern = Objects.requireNonNull(picture.pattern());
        document.add(body, "h1", "", title);
        document.add(body, "p", "when", words.say("sheet.when", className, words.weekday(picture.day()),
                turns.isEmpty() ? "" : Words.time(turns.getFirst().starts()) + "–"
                        + Words.time(turns.getLast().ends())));
        document.add(body, "h2", "", words.say("sheet.groups"));
        for (int group : picture.numbers()) {
            document.add(body, "p", "", words.say("at-table", group, String.join(", ", picture.names(group))));
        }
        if (forSubstitute && !picture.absent().isEmpty()) {
            document.add(body, "p", "", words.say("sheet.away", String.join(", ", picture.children().stream()
                    .filter(c -> picture.absent().contains(c.schoolKey())).map(c -> c.label()).toList())));
        }
        document.add(body, "h2", "", words.say("title"));
        board(document, words, turns, pattern.stations());
        if (forSubstitute) {
            stations(document, words, pattern.stations());
            document.add(body, "p", "", words.say("sheet.please"));
        }
        return document.render();
    }

    private void board(PdfDocument document, Words words, List<Turn> turns, List<Station> stations) {
        Element table = document.add(document.body(), "table", "", "");
        Element head = document.add(table, "tr", "", "");
        document.add(head, "th", "", "\u00a0");
        for (int i = 0; i < turns.size(); i++) {
            document.add(head, "th", "", words.say("rotation", i + 1) + " · " + Words.time(turns.get(i).starts()));
        }
        for (int group : picture.numbers()) {
            Element row = document.add(table, "tr", "", "");
            document.add(row, "th", "", words.say("group", group));
            for (Turn turn : turns) {
                document.add(row, "td", "", turn.stationOf(group).isEmpty() ? "\u00a0"
                        : stations.get(turn.stationOf(group).getAsInt()).name());
            }
        }
    }

    private static void stations(PdfDocument document, Words words, List<Station> stations) {
        Element table = document.add(document.body(), "table", "", "");
        Element head = document.add(table, "tr", "", "");
        for (String key : List.of("sheet.station", "sheet.materials", "sheet.adult")) {
            document.add(head, "th", "", words.say(key));
        }
        for (Station station : stations) {
            Element row = document.add(table, "tr", "", "");
            for (String text : List.of(station.name(), station.materials(), station.adult())) {
                document.add(row, "td", "", text.isEmpty() ? "\u00a0" : text);
            }
        }
    }

    private static String style(int points) {
        return "body { font-size: " + points + "pt; line-height: 1.4 } h1 { font-size: 1.6em; font-weight: normal; "
                + "margin: 0 } h2 { font-size: 1.1em; font-weight: normal; margin: 0.9em 0 0.2em 0 } p { margin: 0.2em 0 } "
                + ".when { color: #444444 } table { border-collapse: collapse; width: 100%; margin: 0.4em 0 } "
                + "th, td { border: 0.6pt solid #1b1b1b; padding: 0.25em 0.4em; text-align: left; vertical-align: top; "
                + "font-weight: normal }";
    }
}
