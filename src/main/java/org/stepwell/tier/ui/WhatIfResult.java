package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Comparator;
import java.util.List;
import org.stepwell.core.check.Share;
import org.stepwell.core.tier.WhatIf;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.tier.WhatIfService.Found;

/** Who would have moved when, beside what was decided; counts first, lists below. */
class WhatIfResult extends Div {
    private static final double TEN = 10;

    private final transient Words texts = Words.of("whatif");
    private final transient Found found;
    private final transient SuggestionWording words;

    WhatIfResult(Found found, SuggestionWording words) {
        this.found = found;
        this.words = words;
        add(new H2(texts.say("found")));
        add(new Paragraph(counts("found.tried", found.tried())), new Paragraph(counts("found.usual", found.usual())));
        alike();
        add(new H2(texts.say("moves")));
        List<WhatIf.Line> moves = found.tried().moves();
        add(moves.isEmpty() ? Parts.soft(texts.say("moves.none")) : table(moves));
        List<WhatIf.Line> others = found.tried().onlyDecided();
        add(new NativeDetails(texts.say("others", others.size()),
                others.isEmpty() ? Parts.soft(texts.say("others.none")) : table(others)));
        add(Parts.soft(texts.say("caution")));
    }

    private String counts(String key, WhatIf one) {
        int children = (int) one.moves().stream().map(WhatIf.Line::child).distinct().count();
        return texts.say(key, one.rules() + " " + one.version(), one.moves().size(), children, found.days().size(),
                found.names().size());
    }

    private void alike() {
        Share alike = found.tried().standAlike();
        Double low = alike.low95();
        Double high = alike.high95();
        if (low != null && high != null) {
            add(new Paragraph(texts.say("alike", alike.hits(), alike.of(), TEN * low, TEN * high)));
        }
    }

    private Component table(List<WhatIf.Line> lines) {
        NativeTableRow head = new NativeTableRow();
        for (String column : List.of("table.day", "table.child", "table.tried", "table.decided", "table.why")) {
            head.add(header(texts.say(column), "col"));
        }
        NativeTableBody body = new NativeTableBody();
        lines.stream().sorted(Comparator.comparing(WhatIf.Line::day).thenComparing(l -> name(l.child())))
                .forEach(line -> body.add(row(line)));
        Div scroll = new Div(new NativeTable(new NativeTableHeader(head), body));
        scroll.addClassName("scroll");
        scroll.getElement().setAttribute("tabindex", "0").setAttribute("role", "region")
                .setAttribute("aria-label", texts.say("moves"));
        return scroll;
    }

    private NativeTableRow row(WhatIf.Line line) {
        String tried = line.moves()
                ? texts.say("moved", Parts.word(line.before()), Parts.word(line.after()))
                : texts.say("stayed", Parts.word(line.after()));
        String decided = line.decided() == null ? texts.say("undecided")
                : line.decidedMove()
                        ? texts.say("moved", Parts.word(line.decidedBefore()), Parts.word(line.decided()))
                        : texts.say("stayed", Parts.word(line.decided()));
        return new NativeTableRow(new NativeTableCell(texts.day(line.day())), header(name(line.child()), "row"),
                new NativeTableCell(tried), new NativeTableCell(decided),
                new NativeTableCell(words.reason(line.said())));
    }

    private String name(String child) {
        return found.names().getOrDefault(child, child);
    }

    private static NativeTableHeaderCell header(String words, String scope) {
        NativeTableHeaderCell cell = new NativeTableHeaderCell(words);
        cell.getElement().setAttribute("scope", scope);
        return cell;
    }
}
