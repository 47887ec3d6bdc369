package org.stepwell.records.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.FamilyRequestService;
import org.stepwell.records.ErasureService;
import org.stepwell.records.KeptChild;
import org.stepwell.records.RecordsService;

/** Records on children as such: what families ask, who left, what goes along or goes for good. */
@Route("records")
@Menu(order = 530, title = "records.screen")
@PermitAll
class RecordsView extends Div implements HasDynamicTitle {
    private final transient Words texts = Words.of("records");
    private final transient RecordsService records;
    private final transient FamilyRequestService requests;
    private final transient ErasureService erasure;
    private final LocalDate today;
    private final Div message = new Div();
    private final Div chosen = new Div();
    private final Div lists = new Div();
    private final boolean lead;

    RecordsView(RecordsService records, FamilyRequestService requests, ErasureService erasure, CurrentAdult current) {
        this.records = records;
        this.requests = requests;
        this.erasure = erasure;
        this.today = current.today();
        this.lead = current.get().lead();
        add(new H1(texts.say("screen.title")), Parts.soft(texts.say(lead ? "screen.about"
                : "screen.part")), message, chosen, lists);
        list();
    }

    private void list() {
        lists.removeAll();
        List<KeptChild> all = records.kept();
        lists.add(Parts.sheet(new H2(texts.say("screen.waits")), lines(all.stream().filter(c -> c.waits() != null)
                .toList(), "screen.waits.none", c -> texts.say("line.waits", c.name(), c.className(), day(c.waits())))));
        if (lead) {
            lists.add(Parts.sheet(new H2(texts.say("screen.left")), lines(all.stream().filter(c -> c.lastDay() != null)
                    .toList(), "screen.left.none", c -> texts.say("line.left", c.name(), c.className(),
                            day(c.lastDay()))), Parts.link("records/retention", texts.say("screen.retention"))));
        }
        lists.add(Parts.sheet(new NativeDetails(texts.say("screen.now"), lines(all.stream()
                .filter(c -> c.lastDay() == null).toList(), "screen.now.none", c -> texts.say("line.now", c.name(),
                        c.className())))));
    }

    private String day(@Nullable LocalDate day) {
        return day == null ? "" : texts.day(day) + " " + day.getYear();
    }

    private Component lines(List<KeptChild> children, String none, Function<KeptChild, String> line) {
        if (children.isEmpty()) {
            return Parts.soft(texts.say(none));
        }
        UnorderedList lines = new UnorderedList();
        lines.addClassName("people");
        children.forEach(child -> {
            NativeButton open = Parts.button(texts.say("open"), () -> open(child));
            open.getElement().setAttribute("aria-label", texts.say("open") + ": " + child.name());
            lines.add(new ListItem(new Span(line.apply(child)), open));
        });
        return lines;
    }

    private void open(KeptChild child) {
        message.removeAll();
        chosen.removeAll();
        Div files = new Div(file(child, "INSPECT", "get"), file(child, "TRANSFER", "get.transfer"));
        files.addClassName("row");
        if (child.lastDay() == null) {
            files.add(Parts.link("child/" + child.childId(), texts.say("page")));
        }
        H2 name = new H2(child.name());
        name.getElement().setAttribute("tabindex", "-1");
        chosen.add(Parts.sheet(name, Parts.soft(texts.say("read-first")), Parts.soft(texts.say("transfer.about")), files),
                new RequestsPanel(requests, child.childId(), today, this::list));
        if (requests.decides(child.childId())) {
            chosen.add(new ErasePanel(erasure, child, rows -> {
                chosen.removeAll();
                list();
                Parts.say(message, texts.say("erase.done", rows));
            }));
        }
        name.getElement().executeJs("this.focus(); this.scrollIntoView()");
    }

    private Component file(KeptChild child, String purpose, String words) {
        return Parts.outside(Parts.ofChild(child.schoolKey(), "records.zip?for=" + purpose + "&lang="
                + Words.language().code()), texts.say(words));
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("screen"));
    }
}
