package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The suggestions for a class on one day.
 *
 * @param day everything dated up to its end was known
 * @param suggestions one per child, by id
 * @param dips where so many children are in the same place that the lesson comes first; stands above the suggestions
 */
public record ClassReview(LocalDate day, List<Suggestion> suggestions, List<ClassDip> dips) {
    /** Copies the lists. */
    public ClassReview {
        suggestions = List.copyOf(suggestions);
        dips = List.copyOf(dips);
    }

    /** The suggestion for one child. */
    public Optional<Suggestion> of(String child) {
        return suggestions.stream().filter(s -> s.child().equals(child)).findFirst();
    }

    /** The suggestions by child. */
    public Map<String, Suggestion> byChild() {
        return suggestions.stream().collect(Collectors.toMap(Suggestion::child, Function.identity()));
    }
}
