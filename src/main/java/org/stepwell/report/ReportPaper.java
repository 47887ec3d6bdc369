package org.stepwell.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.stream.Collectors;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.core.plan.PlannedSessions.Outcome;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.plan.Plan;
import org.stepwell.platform.pdf.PdfDocument;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.platform.ui.Words;
import org.w3c.dom.Element;

/**
 * The report on paper. Dated repeated assessments during instruction are what 34 CFR 300.309(b)(2) asks for; what was tried and
 * for how long is a part of what 300.311(a)(7) has written down. It is never the whole of either.
 */
final class ReportPaper {
    private static final String STYLE = "body { font-size: 10pt; line-height: 1.4 } "
            + "h1 { font-size: 1.6em; font-weight: normal; margin: 0 } "
            + "h2 { font-size: 1.15em; font-weight: normal; margin: 1em 0 0.2em 0; border-bottom: 0.7pt solid #1b1b1b; "
            + "page-break-after: avoid } p { margin: 0.25em 0 } .kind { border: 0.7pt solid #1b1b1b; padding: 0.3em 0.6em; "
            + "margin: 0 0 0.8em 0 } .soft { color: #444444 } table { border-collapse: collapse; width: 100% } "
            + "th, td { font-weight: normal; text-align: left; vertical-align: top; padding: 0.2em 0.5em 0.2em 0; "
            + "border-bottom: 0.4pt solid #999999 } tr { page-break-inside: avoid }";

    private final TeamReport report;
    private final Words words;
    private final Words parts;
    private final Words plans;
    private final SuggestionWording wording;
    private final PdfDocument document;
    private final Element body;

    ReportPaper(TeamReport report, Language language, Paper paper) {
        this.report = report;
        this.words = Words.of("report", language);
        this.parts = Words.of("parts", language);
        this.plans = Words.of("plan", language);
        this.wording = new SuggestionWording(language, report.progression());
        this.document = new PdfDocument(words.say("title"), language.code(), paper, STYLE);
        this.body = document.body();
    }

    byte[] pdf() {
        add("p", "kind", words.say("kind"));
        add("h1", "", words.say("title"));
        add("p", "", report.name() + " · " + report.className());
        add("p", "soft", words.say("by", report.by(), day(report.on())));
        add("p", "", words.say("tier", parts.say("tier." + report.tier().code())));
        report.open().forEach(open -> add("p", "", words.say("open." + open.kind(), day(open.on()))));
        statements();
        skills();
        plans();
        decisions();
        looks();
        add("h2", "", words.say("cautions"));
        for (Caution caution : Caution.values()) {
            add("p", "", wording.caution(caution));
        }
        add("p", "soft", words.say("foot"));
        return document.render();
    }

    /** With the year: it is filed. */
    private String day(LocalDate day) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withLocale(words.locale()).format(day);
    }

    private Element add(String tag, String style, String text) {
        return document.add(body, tag, style, text);
    }

    private void row(Element table, String cell, List<String> texts) {
        Element row = document.add(table, "tr", "", "");
        texts.forEach(text -> document.add(row, cell, "", text.isEmpty() ? "\u00a0" : text));
    }

    /** 34 CFR 99.21 (c): a statement is disclosed with the record it contests. */
    private void statements() {
        if (!report.statements().isEmpty()) {
            add("h2", "", words.say("statements"));
            report.statements().forEach(statement -> add("p", "", words.say("statement", day(statement.on()),
                    statement.words())));
        }
    }

    private void skills() {
        add("h2", "", words.say("skills"));
        if (report.skills().isEmpty()) {
            add("p", "", words.say("skills.none"));
            return;
        }
        Element table = add("table", "", "");
        row(table, "th", List.of(words.say("skill"), words.say("step"), words.say("expected"), words.say("rests"),
                words.say("last")));
        for (SkillEstimate estimate : report.skills()) {
            Integer expected = report.due().get(estimate.skill());
            row(table, "td", List.of(named(estimate.skill()), String.valueOf(estimate.step()),
                    expected == null ? "" : String.valueOf(expected), words.say("rests.on", estimate.looks(),
                            estimate.days()),
                    (estimate.lastSeen() == null ? "" : day(estimate.lastSeen()))
                            + (estimate.stale() ? " " + words.say("old") : "")));
        }
        add("p", "soft", words.say("skills.about"));
    }

    private String named(String skill) {
        return (skill + " " + report.progression().titles().getOrDefault(skill, "")).strip();
    }

    private void plans() {
        add("h2", "", words.say("plans"));
        if (report.plans().isEmpty()) {
            add("p", "", words.say(report.plansShared() ? "plans.none" : "plans.closed"));
        }
        for (Plan plan : report.plans()) {
            add("p", "", words.say(plan.support() ? "plan.support" : "plan.extension", day(plan.startedOn()),
                    plan.endedOn() == null ? words.say("plan.runs") : day(plan.endedOn()) + ": "
                            + plans.say("ended." + plan.outcome()) + " " + plan.words()));
            plan.phases().forEach(phase -> add("p", "", plans.say("phase", day(phase.from()), phase.skill(),
                    phase.step(), phase.perWeek(), phase.minutes(), phase.givenBy(), phase.activity())));
            long given = plan.sessions().stream().filter(s -> s.outcome() == Outcome.GIVEN).count();
            add("p", "", words.say("plan.sessions", given, plan.sessions().stream().mapToInt(Plan.Held::minutes).sum()));
            List<Plan.Held> missed = plan.sessions().stream().filter(s -> s.outcome() != Outcome.GIVEN).toList();
            if (!missed.isEmpty()) {
                add("p", "", words.say("plan.missed", missed.stream().map(s -> day(s.on()) + " ("
                        + plans.say("outcome." + s.outcome().code()) + ")").collect(Collectors.joining(", "))));
            }
        }
    }

    private void decisions() {
        add("h2", "", words.say("decisions"));
        if (report.decisions().isEmpty()) {
            add("p", "", words.say("decisions.none"));
        }
        report.decisions().forEach(line -> add("p", "", words.say(line.from() == line.to() ? "decision.kept"
                : "decision.moved", day(line.asOf()), parts.say("tier." + line.to().code()),
                parts.say("tier." + line.from().code()), line.by()) + (line.reason().isEmpty() ? ""
                        : " " + line.reason())));
    }

    private void looks() {
        add("h2", "", words.say("looks", report.looks().size()));
        if (report.looks().isEmpty()) {
            add("p", "", words.say("looks.none"));
            return;
        }
        Element table = add("table", "", "");
        row(table, "th", List.of(words.say("day"), words.say("skill"), words.say("step"), words.say("help"),
                words.say("seen"), words.say("adult")));
        for (Look look : report.looks()) {
            row(table, "td", List.of(day(look.day()), (look.skill() == null ? "" : look.skill())
                    + (look.task() == null ? "" : " · " + look.task()),
                    look.step() == null ? "" : String.valueOf(look.step()),
                    wording.help(look.help()) + " · " + wording.kind(look.kind()), said(look),
                    report.adults().getOrDefault(look.observer(), look.observer())));
        }
        if (report.left() > 0) {
            add("p", "soft", words.say("looks.left", report.left()));
        }
    }

    /** The words of the progression for what was tapped, and the note. */
    private String said(Look look) {
        String tapped = look.tags().stream().sorted().map(tag -> report.progression().phrases().stream()
                .filter(p -> p.code().equals(tag) && p.language().equals(words.locale().getLanguage()))
                .findFirst().map(Progression.Phrase::text).orElse("")).filter(t -> !t.isEmpty())
                .collect(Collectors.joining(", "));
        return look.note() == null ? tapped : (tapped + " “" + look.note() + "”").strip();
    }
}
