package org.stepwell.sample;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.ClassReview;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Reviewer;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.SuggestionWording;

/** The sample class reviewed on its anchor day, from its files alone. */
final class SampleReview {
    final LocalDate day;
    final ClassSetting setting =
            new ClassSetting(SampleClass.progression(), SampleClass.pacing(), SampleClass.calendar());
    final Reviewer reviewer;
    final List<ChildState> states = new ArrayList<>();
    final ClassReview review;
    final SuggestionWording english = new SuggestionWording(Language.ENGLISH, setting.progression());

    SampleReview(String rules) {
        this(rules, 0);
    }

    /** @param daysLater the review is so many days after the anchor day, with nothing seen since */
    SampleReview(String rules, int daysLater) {
        day = SampleClass.anchor().plusDays(daysLater);
        reviewer = new Reviewer(setting, SampleClass.looks(), RuleFile.shipped(rules), Parameters.shipped());
        SampleClass.rows("roster.csv").forEach(row -> states.add(state(row)));
        review = reviewer.review(states, day);
    }

    private ChildState state(Map<String, String> roster) {
        String child = roster.get("child");
        LocalDate start = LocalDate.parse(roster.get("start"));
        LocalDate unit = setting.pacing().unitStart(day, setting.calendar()).orElseThrow();
        ChildState state = new ChildState(
                child,
                Tier.ON_LEVEL,
                null,
                List.of(),
                start.isAfter(unit) ? start : null,
                dose(child),
                SampleClass.rows("concerns.csv").stream()
                        .filter(r -> r.get("child").equals(child))
                        .map(r -> new ChildState.OpenRequest(
                                ChildState.OpenRequest.Kind.EVALUATION, LocalDate.parse(r.get("on"))))
                        .toList());
        for (Map<String, String> decision : SampleClass.rows("decisions.csv")) {
            if (decision.get("child").equals(child)) {
                state = state.reviewed(LocalDate.parse(decision.get("as_of")), Tier.of(decision.get("tier")));
            }
        }
        return state;
    }

    private static ChildState.@Nullable Dose dose(String child) {
        return SampleClass.rows("dose.csv").stream()
                .filter(r -> r.get("child").equals(child))
                .map(r -> new ChildState.Dose(
                        Integer.parseInt(r.get("planned")),
                        Integer.parseInt(r.get("given")),
                        Integer.parseInt(r.get("missed_by_school")),
                        Integer.parseInt(r.get("missed_by_child"))))
                .findFirst()
                .orElse(null);
    }

    Suggestion of(String given) {
        return review.of(SampleClass.child(given)).orElseThrow();
    }

    Details details(String given) {
        String child = SampleClass.child(given);
        ChildState state =
                states.stream().filter(s -> s.child().equals(child)).findFirst().orElseThrow();
        return reviewer.details(state, day);
    }

    String reason(String given) {
        return english.reason(of(given));
    }
}
