package org.stepwell.report.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.ui.ChildSection;

/** The way to the report on the page about a child. */
@org.springframework.stereotype.Component
class ReportSection implements ChildSection {
    @Override
    public Optional<Component> on(ChildRow child) {
        Words texts = Words.of("report");
        String path = "/api/children/" + URLEncoder.encode(child.schoolKey(), StandardCharsets.UTF_8) + "/report.";
        Div row = new Div(link(path + "pdf?lang=" + Words.language().code(), texts.say("print")),
                link(path + "csv", texts.say("csv")));
        row.addClassName("row");
        return Optional.of(Parts.sheet(new H2(texts.say("title")), Parts.soft(texts.say("kind")), row));
    }

    private static Anchor link(String path, String words) {
        Anchor link = new Anchor(path, words);
        link.setRouterIgnore(true);
        link.setTarget("_blank");
        link.addClassName("button");
        return link;
    }
}
