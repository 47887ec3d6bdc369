package org.stepwell.grouping.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dnd.DragSource;
import com.vaadin.flow.component.dnd.DropTarget;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/**
 * Groups beside each other. A child is chosen by a tap or the keyboard; then another child swaps with it, or a group
 * takes it in. Dragging a child to a group does the same.
 */
final class Board extends Div {
    private final Words words = Words.of("grouping");
    private final Map<String, String> labels;
    private final boolean pins;
    private final IntFunction<List<Component>> below;
    private final Runnable changed;
    private final Div columns = new Div();
    private final Paragraph said = Parts.soft("");
    private final Map<String, NativeButton> names = new HashMap<>();
    private final Map<Integer, NativeButton> heres = new HashMap<>();
    private Sharing sharing;
    private @Nullable String chosen;

    /**
     * A board.
     *
     * @param labels what each child is called
     * @param pins whether places can be fixed and second adults named
     * @param below what stands below the children of a group, drawn afresh after each change
     * @param changed told after each change
     */
    Board(Sharing sharing, Map<String, String> labels, boolean pins, IntFunction<List<Component>> below,
            Runnable changed) {
        this.sharing = sharing;
        this.labels = labels;
        this.pins = pins;
        this.below = below;
        this.changed = changed;
        columns.addClassName("board");
        said.getElement().setAttribute("role", "status");
        said.setText(words.say("board.how"));
        add(said, columns);
        draw(null);
    }

    /** Shows another sharing out. */
    void show(Sharing other) {
        sharing = other;
        chosen = null;
        draw(null);
    }

    private void draw(@Nullable String focus) {
        columns.removeAll();
        names.clear();
        heres.clear();
        for (int g = 1; g <= sharing.groups(); g++) {
            columns.add(column(g));
        }
        mark();
        NativeButton focused = focus == null ? null : names.get(focus);
        if (focused != null) {
            focused.getElement().callJsFunction("focus");
        }
    }

    /** Shows who is chosen on what stands there already, so that a second press never meets a board just redrawn. */
    private void mark() {
        names.forEach((child, name) -> name.getElement().setAttribute("aria-pressed",
                String.valueOf(child.equals(chosen))));
        String picked = chosen;
        heres.forEach((group, here) -> {
            here.setVisible(picked != null && sharing.groupOf().get(picked) != group.intValue());
            here.setText(picked == null ? "" : words.say("board.here", label(picked)));
        });
    }

    private Div column(int group) {
        Div column = Parts.sheet(new H3(words.say("group", group)));
        column.addClassName("board-group");
        column.getElement().setAttribute("role", "group").setAttribute("aria-label", words.say("group", group));
        UnorderedList list = new UnorderedList();
        list.addClassName("board-children");
        List<String> children = new ArrayList<>(sharing.groupOf().keySet());
        children.removeIf(child -> sharing.groupOf().get(child) != group);
        children.sort(java.util.Comparator.comparing(child -> labels.getOrDefault(child, child)));
        children.forEach(child -> list.add(place(child)));
        NativeButton here = Parts.button("", () -> {
            if (chosen != null) {
                move(chosen, group);
            }
        });
        heres.put(group, here);
        column.add(list, here);
        below.apply(group).forEach(column::add);
        DropTarget.create(column).addDropListener(drop -> drop.getDragData()
                .ifPresent(child -> move(String.valueOf(child), group)));
        return column;
    }

    private ListItem place(String child) {
        NativeButton name = Parts.button(label(child), () -> choose(child));
        name.addClassName("board-child");
        names.put(child, name);
        ListItem item = new ListItem(name);
        DragSource.create(item).setDragData(child);
        if (pins) {
            boolean pinned = sharing.pinned().contains(child);
            NativeButton pin = Parts.button(words.say(pinned ? "pinned" : "pin"), () -> {
                sharing.pin(child);
                done(words.say(pinned ? "board.let-go" : "board.pinned", label(child)), child);
            });
            pin.addClassName("board-pin");
            pin.getElement().setAttribute("aria-pressed", String.valueOf(pinned))
                    .setAttribute("aria-label", words.say("pin.of", label(child)));
            item.add(pin);
        }
        return item;
    }

    private String label(String child) {
        return labels.getOrDefault(child, child);
    }

    private void choose(String child) {
        String before = chosen;
        if (before == null || before.equals(child)) {
            chosen = before == null ? child : null;
            said.setText(before == null ? words.say("board.chosen", label(child)) : words.say("board.how"));
            mark();
        } else if (sharing.groupOf().get(before).equals(sharing.groupOf().get(child))) {
            chosen = child;
            said.setText(words.say("board.chosen", label(child)));
            mark();
        } else {
            sharing.swap(before, child);
            done(words.say("board.swapped", label(before), label(child)), before);
        }
    }

    private void move(String child, int group) {
        if (sharing.groupOf().containsKey(child) && sharing.groupOf().get(child) != group) {
            sharing.move(child, group);
            done(words.say("board.moved", label(child), group), child);
        }
    }

    private void done(String what, String focus) {
        chosen = null;
        said.setText(what);
        changed.run();
        draw(focus);
    }
}
