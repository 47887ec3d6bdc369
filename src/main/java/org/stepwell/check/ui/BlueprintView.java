package org.stepwell.check.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.dom.Element;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import org.stepwell.check.CheckService;
import org.stepwell.check.CheckSheet;
import org.stepwell.check.CheckSitting;
import org.stepwell.core.check.BlueprintNote;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.progression.Progression;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;

/** What a check asks, item by item, and what each child may do at it. */
@Route("unit-check/:check/blueprint")
@PermitAll
class BlueprintView extends CheckPage {
    private final CheckService checks;
    private final ProgressionService progressions;
    private final List<CheckItem> items = new ArrayList<>();
    private final Div notes = new Div();
    private final Div said = new Div();
    private final NativeTableBody body = new NativeTableBody();
    private Map<String, String> skills = Map.of();
    private Map<String, Integer> unit = Map.of();
    private int revision;

    BlueprintView(CheckService checks, ProgressionService progressions) {
        this.checks = checks;
        this.progressions = progressions;
    }

    @Override
    void draw() {
        removeAll();
        said.removeAll();
        CheckSheet sheet = checks.sheet(checkId());
        revision = checks.revision(checkId());
        UUID classId = checks.classOf(checkId());
        Progression progression = progressions.ofClass(classId);
        unit = checks.unitSkills(classId);
        skills = new LinkedHashMap<>();
        progression.skills().forEach(s -> skills.put(s.code(), s.code() + " " + s.title()));
        sheet.items().forEach(i -> skills.putIfAbsent(i.skill(), i.skill()));
        items.clear();
        items.addAll(sheet.items());
        NativeTable table = new NativeTable(new NativeTableHeader(heads(texts.say("item"), texts.say("item.skill"),
                texts.say("item.step"), texts.say("item.question"), texts.say("item.answer"),
                texts.say("item.remove"))), body);
        table.addClassName("blueprint");
        Div buttons = new Div(Parts.button(texts.say("item.add"), this::added), save());
        buttons.addClassName("row");
        notes.addClassName("notes");
        add(new H1(sheet.line().title()), ways(), Parts.soft(texts.say("blueprint.about")), notes,
                scrolled(texts.say("blueprint"), table), buttons, said, children(sheet));
        rows();
    }

    private Component save() {
        Component save = Parts.button(texts.say("blueprint.save"), this::saved);
        save.addClassName("strong");
        return save;
    }

    private void rows() {
        body.removeAll();
        for (int i = 0; i < items.size(); i++) {
            body.add(row(i));
        }
        remarks();
    }

    private NativeTableRow row(int at) {
        CheckItem item = items.get(at);
        Map<String, String> steps = new LinkedHashMap<>();
        for (int step = 1; step <= 5; step++) {
            steps.put(String.valueOf(step), String.valueOf(step));
        }
        NativeTableRow row = CheckPage.row(item.code());
        row.add(cell(select(at, "item.skill", skills, item.skill(), value -> change(at, value, now(at).step(),
                now(at).question(), now(at).answer()))),
                cell(select(at, "item.step", steps, String.valueOf(item.step()), value -> change(at, now(at).skill(),
                        Integer.parseInt(value), now(at).question(), now(at).answer()))),
                cell(text(at, "item.question", item.question(), 300, value -> change(at, now(at).skill(),
                        now(at).step(), value, now(at).answer()))),
                cell(text(at, "item.answer", item.answer(), 100, value -> change(at, now(at).skill(), now(at).step(),
                        now(at).question(), value))));
        Component remove = Parts.button("×", () -> {
            items.remove(at);
            rows();
        });
        remove.getElement().setAttribute("aria-label", texts.say("item.remove-one", item.code()));
        row.add(new NativeTableCell(remove));
        return row;
    }

    private CheckItem now(int at) {
        return items.get(at);
    }

    private void change(int at, String skill, int step, String question, String answer) {
        items.set(at, new CheckItem(now(at).code(), skill, step, question, answer));
        remarks();
    }

    private void added() {
        int next = items.stream().mapToInt(i -> Integer.parseInt(i.code().substring(1))).max().orElse(0) + 1;
        CheckItem last = items.isEmpty() ? null : items.getLast();
        items.add(new CheckItem("i%02d".formatted(next), last == null ? skills.keySet().iterator().next()
                : last.skill(), last == null ? 3 : last.step(), "", ""));
        rows();
    }

    private void remarks() {
        notes.removeAll();
        UnorderedList list = new UnorderedList();
        for (BlueprintNote note : BlueprintNote.of(items, unit.keySet())) {
            list.add(new ListItem(texts.say("note." + note.kind().name().toLowerCase(java.util.Locale.ROOT)
                    .replace('_', '-'), note.skill(), note.count())));
        }
        notes.add(new Paragraph(texts.say("blueprint.count", items.size())));
        if (list.getChildren().findAny().isPresent()) {
            notes.add(list);
        }
    }

    private void saved() {
        try {
            checks.saveItems(checkId(), revision, items);
            draw();
            Parts.say(said, texts.say("blueprint.saved"));
        } catch (IllegalArgumentException wrong) {
            Parts.say(said, Words.told(wrong));
        }
    }

    private Component children(CheckSheet sheet) {
        Map<UUID, String> earlier = checks.earlierAccommodations(checkId());
        Div part = Parts.sheet(new H2(texts.say("accommodations")), Parts.soft(texts.say("accommodations.about")));
        Div fields = new Div();
        fields.addClassName("row");
        for (ChildRow child : sheet.children()) {
            CheckSitting sitting = sheet.sitting(child.childId());
            String offered = sitting.accommodation().isEmpty() ? earlier.getOrDefault(child.childId(), "") : "";
            Div field = Parts.input(child.label(), "text", sitting.accommodation(), words -> accommodate(child, words));
            if (!offered.isEmpty()) {
                Component take = Parts.button(texts.say("accommodations.again", offered), () -> {
                    accommodate(child, offered);
                    draw();
                });
                take.getElement().setAttribute("aria-label", texts.say("accommodations.again-for", offered,
                        child.label()));
                field.add(take);
            }
            fields.add(field);
        }
        part.add(fields);
        return part;
    }

    private void accommodate(ChildRow child, String words) {
        CheckSitting now = checks.sheet(checkId()).sitting(child.childId());
        try {
            checks.sit(checkId(), child.childId(), new CheckSitting(now.absent(), now.satOn(), words.strip()));
        } catch (IllegalArgumentException wrong) {
            Parts.say(said, Words.told(wrong));
        }
    }

    private static NativeTableCell cell(Element control) {
        NativeTableCell cell = new NativeTableCell();
        cell.addClassName("field-cell");
        cell.getElement().appendChild(control);
        return cell;
    }

    private Element text(int at, String key, String value, int longest, Consumer<String> changed) {
        Element input = new Element("input");
        input.setAttribute("type", "text").setAttribute("maxlength", String.valueOf(longest))
                .setAttribute("aria-label", texts.say(key) + " " + now(at).code()).setProperty("value", value);
        return heard(input, changed);
    }

    private Element select(int at, String key, Map<String, String> options, String value, Consumer<String> changed) {
        Element select = new Element("select");
        select.setAttribute("aria-label", texts.say(key) + " " + now(at).code());
        options.forEach((code, words) -> {
            Element option = new Element("option");
            option.setAttribute("value", code).setText(words);
            if (code.equals(value)) {
                option.setAttribute("selected", true);
            }
            select.appendChild(option);
        });
        return heard(select, changed);
    }

    private static Element heard(Element control, Consumer<String> changed) {
        control.addPropertyChangeListener("value", "change", event -> changed.accept(
                event.getValue() == null ? "" : String.valueOf(event.getValue())));
        return control;
    }
}
