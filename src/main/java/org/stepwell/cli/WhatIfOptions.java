package org.stepwell.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.check.Share;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.WhatIf;
import org.stepwell.core.tier.WhatIf.Decided;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.tier.DecisionsCsv;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Other rules or thresholds beside those of a replay, and beside what was decided. */
final class WhatIfOptions {
    private static final Pattern CHANGE = Pattern.compile("([a-z0-9_]+)\\.([a-z_]+)=(\\S+)");
    private static final List<String> COLUMNS = List.of("as_of", "child", "decided_tier", "rules_tier", "tried_tier",
            "moved_by", "tried_verdict", "tried_rule", "tried_reason");

    @Option(names = "--what-if", paramLabel = "NAME|FILE", description = {
        "other rules to try on the same history; writes what_if.csv beside the usual files:",
        "who would have moved when under --rules and under these, each followed from the start"})
    private @Nullable String other;
    @Option(names = "--set", paramLabel = "PLACE.MEASURE=N", description = {
        "another threshold to try, in the rules of --what-if or else of --rules; may be given again.",
        "PLACE is a rule, enough or newcomer: --set more_help.chance_support=0.6"})
    private @Nullable List<String> changes;
    @Option(names = "--decisions", paramLabel = "F", description = {
        "decisions.csv (as_of,child,tier): what was decided, beside what would have been"})
    private @Nullable Path decisions;

    boolean asked() {
        return other != null || changes != null || decisions != null;
    }

    List<Decided> decided(InputFiles files) {
        return decisions == null ? List.of() : files.read(decisions, DecisionsCsv::read);
    }

    /** The rules to try. */
    RuleFile tried(CommandSpec command, RuleFile rules) {
        RuleFile tried = other == null ? rules : RulesOption.rules(command, "--what-if", other);
        for (String change : changes == null ? List.<String>of() : changes) {
            tried = changed(command, tried, change);
        }
        return tried;
    }

    private static RuleFile changed(CommandSpec command, RuleFile rules, String change) {
        Matcher match = CHANGE.matcher(change);
        if (!match.matches()) {
            throw new ParameterException(command.commandLine(),
                    "--set " + change + " is not of the form PLACE.MEASURE=N, like more_help.chance_support=0.6");
        }
        try {
            Measure measure = Arrays.stream(Measure.values()).filter(m -> m.code().equals(match.group(2))).findFirst()
                    .orElseThrow(() -> new IllegalArgumentException(match.group(2) + " is not a known measure"));
            return rules.with(match.group(1), measure, Double.parseDouble(match.group(3)));
        } catch (NumberFormatException noNumber) {
            throw new ParameterException(command.commandLine(),
                    "--set " + change + ": \"" + match.group(3) + "\" is not a number");
        } catch (IllegalArgumentException wrong) {
            throw new ParameterException(command.commandLine(), "--set " + change + ": " + wrong.getMessage());
        }
    }

    /** What was found. */
    record Found(String csv, String summary) {}

    /** Follows both rules over the same days. */
    static Found compare(ClassSetting setting, List<Look> looks, List<Decided> decided, Collection<LocalDate> days,
            RuleFile rules, RuleFile tried) {
        WhatIf usual = WhatIf.tried(setting, looks, decided, days, Map.of(), rules, Parameters.shipped());
        WhatIf other = WhatIf.tried(setting, looks, decided, days, Map.of(), tried, Parameters.shipped());
        SuggestionWording words = new SuggestionWording(Language.ENGLISH, setting.progression());
        CsvWriter csv = new CsvWriter(COLUMNS);
        for (int i = 0; i < other.lines().size(); i++) {
            WhatIf.Line then = other.lines().get(i);
            WhatIf.Line now = usual.lines().get(i);
            csv.row(then.day(), then.child(), then.decided() == null ? null : then.decided().code(),
                    now.after().code(), then.after().code(), movedBy(now, then), then.said().verdict().code(),
                    then.said().rule(), words.reason(then.said()));
        }
        return new Found(csv.toString(), summary(usual) + summary(other));
    }

    private static String movedBy(WhatIf.Line now, WhatIf.Line then) {
        List<String> who = new ArrayList<>();
        if (then.decidedMove()) {
            who.add("decided");
        }
        if (now.moves()) {
            who.add("rules");
        }
        if (then.moves()) {
            who.add("tried");
        }
        return String.join(";", who);
    }

    private static String summary(WhatIf one) {
        long children = one.moves().stream().map(WhatIf.Line::child).distinct().count();
        Share alike = one.standAlike();
        return one.rules() + " " + one.version() + ": " + one.moves().size() + " moves of " + children + " children"
                + (alike.of() == 0 ? "" : "; after the last review " + alike.hits() + " of " + alike.of()
                        + " stand where it was decided, " + one.onlyDecided().size()
                        + " decided moves would not have been made then")
                + ".\n";
    }
}
