package org.stepwell.block.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import java.util.Comparator;
import java.util.List;
import org.stepwell.block.BlockPicture;
import org.stepwell.block.BlockService;
import org.stepwell.core.rotation.MinutesLedger.Line;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;

/** Minutes of each child at the teacher table, fewest first. */
class LedgerPanel extends Div {
    LedgerPanel(BlockPicture picture) {
        Words texts = Words.of("block");
        Div inside = new Div(Parts.soft(texts.say(picture.ledger().isEmpty() ? "ledger.none" : "ledger.about")));
        if (!picture.ledger().isEmpty()) {
            NativeTableRow heads = new NativeTableRow();
            for (String head : List.of("child", "planned", "given", "absent", "owed")) {
                NativeTableHeaderCell cell = new NativeTableHeaderCell(texts.say("ledger." + head));
                cell.getElement().setAttribute("scope", "col");
                heads.add(cell);
            }
            NativeTableBody body = new NativeTableBody();
            Line none = new Line(0, 0, 0);
            picture.children().stream().sorted(Comparator.comparingInt((ChildRow c) ->
                    picture.ledger().getOrDefault(c.schoolKey(), none).given())).forEach(child -> {
                        Line line = picture.ledger().getOrDefault(child.schoolKey(), none);
                        NativeTableHeaderCell name = new NativeTableHeaderCell(child.label());
                        name.getElement().setAttribute("scope", "row");
                        NativeTableRow row = new NativeTableRow(name);
                        for (int minutes : new int[] {line.planned(), line.given(), line.absent(), line.owed()}) {
                            row.add(new NativeTableCell(String.valueOf(minutes)));
                        }
                        body.add(row);
                    });
            Div scroll = new Div(new NativeTable(new NativeTableHeader(heads), body));
            scroll.addClassName("scroll");
            inside.add(scroll);
        }
        add(new NativeDetails(texts.say("ledger", BlockService.LEDGER_DAYS), inside));
    }
}
