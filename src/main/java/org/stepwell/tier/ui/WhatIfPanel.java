package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Pre;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.server.streams.UploadHandler;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.tier.WhatIfService.Found;

/** Which rules to try, one other threshold if wanted, and what would have been. */
class WhatIfPanel extends Div {
    private static final int LARGEST = 64 * 1024;
    private static final int ROWS = 16;

    private final transient Words texts = Words.of("whatif");
    private final transient SuggestionWording words;
    private final transient BiFunction<RuleFile, Boolean, Optional<Found>> tryOut;
    private final transient WhatIfRules rules = new WhatIfRules();
    private final Div form = new Div();
    private final Div result = new Div();
    private boolean weekly;

    /** @param tryOut tries rules, weekly or on the days of decisions; empty when the class has no unit */
    WhatIfPanel(SuggestionWording words, BiFunction<RuleFile, Boolean, Optional<Found>> tryOut) {
        this.words = words;
        this.tryOut = tryOut;
        form.addClassName("sheet");
        result.getElement().setAttribute("aria-live", "polite");
        draw();
        add(form, result);
    }

    private void draw() {
        form.removeAll();
        Map<String, String> sources = new LinkedHashMap<>();
        sources.put(RuleFile.CONVENTIONAL, texts.say("rules.conventional"));
        sources.put(RuleFile.WEIGHED, texts.say("rules.weighed"));
        sources.put(WhatIfRules.OWN, texts.say("rules.own"));
        Map<String, String> days = new LinkedHashMap<>();
        days.put("decided", texts.say("days.decided"));
        days.put("weekly", texts.say("days.weekly"));
        Div row = new Div(
                Parts.choice(texts.say("rules"), sources, rules.source(), key -> {
                    rules.source(key);
                    result.removeAll();
                    draw();
                }),
                Parts.choice(texts.say("days"), days, weekly ? "weekly" : "decided",
                        key -> weekly = key.equals("weekly")));
        row.addClassName("row");
        form.add(row, rules.source().equals(WhatIfRules.OWN) ? own() : threshold());
        Div act = new Div(Parts.button(texts.say("try"), this::tried));
        act.addClassName("after");
        form.add(act);
    }

    private Component threshold() {
        Map<String, String> thresholds = new LinkedHashMap<>();
        thresholds.put(WhatIfRules.NO_CHANGE, texts.say("threshold.none"));
        thresholds.putAll(WhatIfRules.thresholds(rules.chosen(""), words));
        Div row = new Div(
                Parts.choice(texts.say("threshold"), thresholds, rules.place(), rules::place),
                Parts.input(texts.say("threshold.number"), "text", "", rules::number));
        row.addClassName("row");
        return row;
    }

    private Component own() {
        Upload upload = new Upload(UploadHandler.inMemory((about, bytes) -> {
            rules.text(new String(bytes, StandardCharsets.UTF_8));
            draw();
        }));
        upload.setUploadButton(Parts.button(texts.say("upload"), () -> { }));
        upload.setDropAllowed(false);
        upload.setMaxFileSize(LARGEST);
        upload.setAcceptedFileTypes(".txt", "text/plain");
        upload.addFileRejectedListener(refused -> Parts.say(result, texts.say("upload.refused")));
        Div inside = new Div(Parts.soft(texts.say("own.about")),
                Parts.text(texts.say("own.text"), ROWS, rules.text(), rules::text), upload);
        inside.addClassName("rules-text");
        return inside;
    }

    private void tried() {
        result.removeAll();
        result.getElement().removeAttribute("role");
        try {
            RuleFile tried = rules.tried(texts.say("rules.own"));
            tryOut.apply(tried, weekly).ifPresentOrElse(
                    found -> result.add(new WhatIfResult(found, words)),
                    () -> Parts.say(result, texts.say("no-unit")));
        } catch (NumberFormatException wrong) {
            Parts.say(result, texts.say("threshold.bad"));
        } catch (IllegalArgumentException wrong) {
            Parts.say(result, texts.say("bad"));
            Pre lines = new Pre(String.valueOf(wrong.getMessage()));
            lines.addClassName("told-lines");
            result.add(lines);
        }
    }

    /** What was found, for a test that looks at it. */
    Div result() {
        return result;
    }
}
