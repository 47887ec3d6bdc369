package org.stepwell.privacy.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.AccessLine;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.Reader;

/** Who can see a child, and who did: the same adult, thing and day as one line with the last time. */
public class AccessPanel extends Div {
    private static final int LINES_READ = 500;
    private static final int LINES_SHOWN = 40;

    private final transient Words texts = Words.of("privacy");

    /** What is told in one line. */
    private record Told(String adult, String what, boolean given, String interest, LocalDate on) {}

    /**
     * @param record where it stands
     * @param childId a child the reader may see
     * @param schoolKey the school's own id of the child
     */
    public AccessPanel(AccessRecordService record, UUID childId, String schoolKey) {
        addClassName("sheet");
        add(new H2(texts.say("can")));
        UnorderedList can = new UnorderedList();
        record.readers(childId).forEach(reader -> can.add(new ListItem(reader(reader))));
        add(can);
        if (record.mayRead(childId)) {
            add(Parts.link("caseload", texts.say("share")));
            add(new NativeDetails(texts.say("did"), did(record.lines(childId, LINES_READ), schoolKey)));
        }
    }

    private String reader(Reader reader) {
        String line = texts.say("reader", reader.name(), part(reader.interest()));
        if (reader.until() != null) {
            line += ", " + texts.say("until", texts.day(reader.until()));
        }
        return reader.reason() == null ? line : line + ": " + reader.reason();
    }

    private String part(String interest) {
        return Words.of("people").say("role." + interest);
    }

    private Component did(List<AccessLine> lines, String schoolKey) {
        Map<Told, List<AccessLine>> told = new LinkedHashMap<>();
        lines.forEach(line -> told.computeIfAbsent(new Told(line.adult(), line.what(), line.given(), line.interest(),
                line.at().toLocalDate()), key -> new ArrayList<>()).add(line));
        UnorderedList list = new UnorderedList();
        told.entrySet().stream().limit(LINES_SHOWN).forEach(e -> list.add(new ListItem(
                line(e.getKey(), e.getValue()))));
        Anchor out = Parts.outside(Parts.ofChild(schoolKey, "access.csv"), texts.say("file"));
        Div all = new Div(Parts.soft(texts.say("about")), list);
        if (told.size() > LINES_SHOWN || lines.size() == LINES_READ) {
            all.add(new Paragraph(texts.say("more")));
        }
        all.add(out);
        return all;
    }

    private String line(Told told, List<AccessLine> times) {
        String when = texts.moment(times.getFirst().at());
        String what = texts.say("what." + told.what());
        String line = told.given() ? texts.say("given", told.adult(), part(told.interest()), what, when)
                : texts.say("denied", told.adult(), what, when);
        return times.size() == 1 ? line : line + " " + texts.say("times", times.size());
    }
}
