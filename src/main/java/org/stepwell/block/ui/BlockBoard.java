package org.stepwell.block.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.Objects;
import org.stepwell.block.BlockPicture;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.rotation.DayPlan.Turn;
import org.stepwell.platform.ui.Words;

/** Groups against rotations: who is at which station when. The clock marks the column that runs. */
class BlockBoard extends Div {
    private final Words texts = Words.of("block");

    BlockBoard(BlockPicture picture, BlockPattern pattern) {
        List<Turn> turns = Objects.requireNonNull(picture.plan()).turns();
        add(new H2(picture.running() == null ? texts.say("board.planned")
                : texts.say("board.runs", turns.isEmpty() ? "" : Words.time(turns.getFirst().starts()))));
        NativeTableRow heads = new NativeTableRow(head("", "", "col"));
        for (int i = 0; i < turns.size(); i++) {
            NativeTableHeaderCell cell = head(texts.say("rotation", i + 1),
                    Words.time(turns.get(i).starts()) + "–" + Words.time(turns.get(i).ends()), "col");
            cell.getElement().setAttribute("data-turn", String.valueOf(i));
            heads.add(cell);
        }
        NativeTableBody body = new NativeTableBody();
        for (int group : picture.numbers()) {
            NativeTableRow row = new NativeTableRow(head(texts.say("group", group),
                    String.join(", ", picture.names(group)), "row"));
            for (int i = 0; i < turns.size(); i++) {
                row.add(cell(pattern, turns.get(i), group, i));
            }
            body.add(row);
        }
        NativeTable table = new NativeTable(new NativeTableHeader(heads), body);
        table.addClassName("block-board");
        Div scroll = new Div(table);
        scroll.addClassName("scroll");
        scroll.getElement().setAttribute("tabindex", "0").setAttribute("role", "region")
                .setAttribute("aria-label", texts.say("title"));
        add(scroll);
    }

    private static NativeTableCell cell(BlockPattern pattern, Turn turn, int group, int index) {
        // Groups saved with more tables than the day began with, or without children, have no place in it.
        NativeTableCell cell = new NativeTableCell();
        turn.stationOf(group).ifPresent(station -> {
            cell.setText(pattern.stations().get(station).name());
            if (station == BlockPattern.TEACHER_TABLE) {
                cell.addClassName("teacher");
            }
        });
        cell.getElement().setAttribute("data-turn", String.valueOf(index));
        return cell;
    }

    private static NativeTableHeaderCell head(String text, String below, String scope) {
        NativeTableHeaderCell cell = new NativeTableHeaderCell(text);
        if (!below.isEmpty()) {
            cell.add(new Span(below));
        }
        cell.getElement().setAttribute("scope", scope);
        return cell;
    }
}
