package org.stepwell.cli;

import java.util.List;
import java.util.Locale;
import org.stepwell.core.evidence.ChildPicture;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.Replay;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.platform.csv.CsvWriter;

/** The two result files of a replay: rows by day, then child, then skill. Chances have six decimals. */
final class ReplayFiles {
    private final CsvWriter suggestions = new CsvWriter(List.of("as_of", "child", "current_tier", "suggested_tier",
            "verdict", "chance", "looks", "days", "rule", "reason"));
    private final CsvWriter estimates = new CsvWriter(List.of("as_of", "child", "skill", "step", "p1", "p2", "p3",
            "p4", "p5", "looks", "days", "last_seen", "stale"));
    private final SuggestionWording words;

    ReplayFiles(Progression progression) {
        words = new SuggestionWording(Language.ENGLISH, progression);
    }

    void add(Replay.Sitting sitting) {
        sitting.review().suggestions().stream().sorted(java.util.Comparator.comparing(Suggestion::child))
                .forEach(this::add);
        sitting.pictures().values().forEach(this::add);
    }

    private void add(Suggestion one) {
        suggestions.row(one.day(), one.child(), one.current().code(), one.suggested().code(), one.verdict().code(),
                six(one.chance()), one.looks(), one.days(), one.rule(), words.reason(one));
    }

    private void add(ChildPicture picture) {
        for (SkillEstimate one : picture.skills().values()) {
            boolean seen = one.seen();
            List<Double> p = one.chances();
            estimates.row(picture.day(), picture.child(), one.skill(), seen ? one.step() : null,
                    seen ? six(p.get(0)) : null, seen ? six(p.get(1)) : null, seen ? six(p.get(2)) : null,
                    seen ? six(p.get(3)) : null, seen ? six(p.get(4)) : null, one.looks(), one.days(),
                    one.lastSeen(), one.stale());
        }
    }

    private static String six(double chance) {
        return String.format(Locale.ROOT, "%.6f", chance);
    }

    String suggestions() {
        return suggestions.toString();
    }

    String estimates() {
        return estimates.toString();
    }
}
