package org.stepwell.check.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stepwell.check.CheckResults;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.check.ItemFlag;
import org.stepwell.core.check.ItemReport;
import org.stepwell.core.check.RoughCorrelation;
import org.stepwell.core.check.Share;
import org.stepwell.core.check.SkillResult;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Phrase;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** The figures of a check as tables, counts first, with what so few children can tell. */
final class ResultTables {
    private final Words texts;
    private final CheckResults results;
    private final Progression progression;
    private final ItemReport report;

    ResultTables(Words texts, CheckResults results, Progression progression) {
        this.texts = texts;
        this.results = results;
        this.progression = progression;
        this.report = results.report();
    }

    Component summary() {
        int n = report.n();
        int k = report.items().size();
        Div part = Parts.sheet(new H2(texts.say("summary")), new Paragraph(texts.say("summary.sat", n,
                results.sheet().children().size(), k)));
        if (report.mean() != null && report.sd() != null) {
            part.add(new Paragraph(texts.say("summary.mean", report.mean(), report.sd(), k)));
        }
        Double sem = band();
        if (sem != null) {
            part.add(new Paragraph(texts.say("summary.sem", sem, 1.96 * sem)),
                    new Paragraph(texts.say(report.kr20() == null ? "summary.alpha" : "summary.kr20", report.alpha())));
        } else {
            part.add(Parts.soft(texts.say("summary.no-alpha")));
        }
        UnorderedList cautions = new UnorderedList();
        if (n >= 4) {
            RoughCorrelation rough = RoughCorrelation.of(0.3, n);
            cautions.add(new ListItem(texts.say("caution.rough", n, rough.low(), rough.high())));
        }
        cautions.add(new ListItem(texts.say("caution.accuracy")), new ListItem(texts.say("caution.group")),
                new ListItem(texts.say("caution.one-day")));
        cautions.addClassName("caution");
        part.add(cautions);
        return part;
    }

    /** Measuring error in items; where the items do not go together at all it means nothing. */
    private @Nullable Double band() {
        return report.alpha() == null || report.alpha() <= 0 ? null : report.sem();
    }

    Component children() {
        List<String> skills = results.sheet().items().stream().map(CheckItem::skill).distinct().toList();
        List<String> heads = new ArrayList<>(List.of(texts.say("child"), texts.say("total")));
        skills.forEach(s -> heads.add(s));
        NativeTableBody body = new NativeTableBody();
        for (CheckResults.OneChild one : results.children()) {
            NativeTableRow row = CheckPage.row(one.child().label(), total(one));
            for (String skill : skills) {
                row.add(one.skills().stream().filter(s -> s.skill().equals(skill)).findFirst()
                        .map(result -> cell(one, result)).orElseGet(() -> new NativeTableCell(texts.say("not-asked"))));
            }
            body.add(row);
        }
        return table(heads, body);
    }

    private String total(CheckResults.OneChild one) {
        int asked = results.sheet().itemsFor(one.child().childId()).size();
        Double sem = band();
        if (sem == null || asked < report.items().size()) {
            return texts.say("total.of", one.total(), asked);
        }
        return texts.say("total.band", one.total(), asked, Math.max(0, one.total() - 1.96 * sem),
                Math.min(asked, one.total() + 1.96 * sem));
    }

    private NativeTableCell cell(CheckResults.OneChild one, SkillResult result) {
        NativeTableCell cell = new NativeTableCell();
        cell.add(new Span(result.halves() == 0 ? texts.say("skill.count", result.right(), result.reached())
                : texts.say("skill.count.halves", result.right(), result.reached(), result.halves())));
        Share share = result.share();
        String words = texts.say("says." + result.says().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        Span small = new Span(result.says() == SkillResult.Says.TOO_FEW ? words
                : texts.say("skill.interval", words, Objects.requireNonNull(share.low95()),
                        Objects.requireNonNull(share.high95())));
        small.addClassNames("soft", "small", "line");
        cell.add(small);
        if (one.apart().stream().anyMatch(a -> a.skill().equals(result.skill()))) {
            Span apart = new Span(texts.say("apart.mark"));
            apart.addClassNames("small", "line", "head");
            cell.add(apart);
        }
        return cell;
    }

    Component items() {
        NativeTableBody body = new NativeTableBody();
        for (int i = 0; i < report.items().size(); i++) {
            ItemReport.ItemLine line = report.items().get(i);
            CheckItem item = results.sheet().items().get(i);
            int reached = report.n() - line.notReached();
            body.add(CheckPage.row(item.code(), item.skill() + " · " + item.step(), item.question(),
                    line.p() == null ? "–" : texts.say("item.right", line.p(), reached), figure(line.rRest()),
                    figure(line.discrimination()), String.valueOf(line.notReached()), error(item),
                    ItemFlag.of(line, report.n()).stream().map(flag -> texts.say("flag."
                            + flag.name().toLowerCase(Locale.ROOT).replace('_', '-'))).collect(Collectors.joining(" "))));
        }
        return table(List.of(texts.say("item"), texts.say("item.tests"), texts.say("item.question"),
                texts.say("item.share"), texts.say("item.rest"), texts.say("item.apart"), texts.say("item.missing"),
                texts.say("item.error"), texts.say("item.look")), body);
    }

    private String error(CheckItem item) {
        CheckResults.Frequent frequent = results.errors().get(item.code());
        if (frequent == null) {
            return "";
        }
        String words = progression.phrases().stream().filter(p -> p.kind() == Phrase.Kind.ERROR
                && p.skill().equals(item.skill()) && p.code().equals(frequent.error())
                && p.language().equals(texts.locale().getLanguage())).map(Phrase::text).findFirst()
                .orElse(frequent.error());
        return texts.say("item.error.count", words, frequent.children());
    }

    private String figure(@Nullable Double value) {
        return value == null ? "–" : String.format(texts.locale(), "%.2f", value);
    }

    private static Component table(List<String> heads, NativeTableBody body) {
        NativeTable table = new NativeTable(new NativeTableHeader(CheckPage.heads(heads.toArray(String[]::new))), body);
        table.addClassName("figures");
        return table;
    }
}
