package org.stepwell.core.trend;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;

/**
 * The step expected of a skill over a span of days.
 *
 * @param from first day
 * @param to last day
 * @param step 1-5
 */
public record ExpectedStep(LocalDate from, LocalDate to, int step) {

    /** The spans of a skill within the given days, oldest first; empty where nothing is expected. */
    public static List<ExpectedStep> of(String skill, Pacing pacing, LocalDate from, LocalDate to) {
        List<PacingRow> rows =
                pacing.rows().stream().filter(r -> r.skill().equals(skill)).toList();
        List<ExpectedStep> spans = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            PacingRow row = rows.get(i);
            LocalDate end = i + 1 < rows.size() ? rows.get(i + 1).due().minusDays(1) : to;
            LocalDate first = row.due().isBefore(from) ? from : row.due();
            LocalDate last = end.isAfter(to) ? to : end;
            if (row.expectedStep() != null && !first.isAfter(last)) {
                spans.add(new ExpectedStep(first, last, row.expectedStep()));
            }
        }
        return spans;
    }
}
