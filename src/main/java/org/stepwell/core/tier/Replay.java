package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.stepwell.core.evidence.ChildPicture;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;

/**
 * Runs reviews over a history: everybody starts on level, suggestions are accepted as they come, and each review knows
 * only what is dated up to the end of its day. A child appears from the first row dated up to the review day.
 */
public final class Replay {

    /**
     * One review of the history.
     *
     * @param review what was suggested, and so decided
     * @param pictures what the evidence said about each child
     */
    public record Sitting(ClassReview review, Map<String, ChildPicture> pictures) {}

    private final ClassSetting setting;
    private final Collection<Look> looks;
    private final Map<String, LocalDate> joined;
    private final RuleFile rules;
    private final Parameters parameters;

    /** @param looks every look of the class there is, in any order; later ones than a review are not known to it */
    public Replay(ClassSetting setting, Collection<Look> looks, RuleFile rules, Parameters parameters) {
        this(setting, looks, Map.of(), rules, parameters);
    }

    /**
     * @param looks every look of the class there is, in any order; later ones than a review are not known to it
     * @param joined the day on which each child came who was not there from the start of the unit
     */
    public Replay(ClassSetting setting, Collection<Look> looks, Map<String, LocalDate> joined, RuleFile rules,
            Parameters parameters) {
        this.setting = setting;
        this.looks = looks;
        this.joined = Map.copyOf(joined);
        this.rules = rules;
        this.parameters = parameters;
    }

    /**
     * Runs the reviews and hands each over as it is done.
     *
     * @param days of the reviews; taken in order, each once
     * @param each takes one review after the other, oldest first
     */
    public void run(Collection<LocalDate> days, Consumer<Sitting> each) {
        Reviewer reviewer = new Reviewer(setting, looks, rules, parameters);
        SortedMap<String, ChildState> states = new TreeMap<>();
        List<LocalDate> past = new ArrayList<>();
        for (LocalDate day : new TreeSet<>(days)) {
            for (String child : reviewer.children(day)) {
                states.computeIfAbsent(child, c -> new ChildState(
                        c, Tier.ON_LEVEL, null, List.copyOf(past), joined.get(c), null, List.of()));
            }
            ClassReview review = reviewer.review(states.values(), day);
            SortedMap<String, ChildPicture> pictures = new TreeMap<>();
            for (Suggestion suggestion : review.suggestions()) {
                pictures.put(suggestion.child(), reviewer.picture(suggestion.child(), day));
                states.computeIfPresent(
                        suggestion.child(), (c, state) -> state.reviewed(day, suggestion.suggested()));
            }
            past.add(day);
            each.accept(new Sitting(review, pictures));
        }
    }

    /** Runs the reviews and gives them all, oldest first. */
    public List<ClassReview> run(Collection<LocalDate> days) {
        List<ClassReview> all = new ArrayList<>();
        run(days, sitting -> all.add(sitting.review()));
        return all;
    }
}
