package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Tags;

/** Chooses the cautions that apply and puts the two that bear on this child most first. */
final class Cautions {
    private static final List<Caution> ALWAYS =
            List.of(Caution.YOU_DECIDE, Caution.SEE_THE_COUNTS, Caution.NOT_A_LABEL);
    private static final int TWO_REVIEWS = 2;

    private Cautions() {}

    static Suggestion added(Suggestion one, ChildState state, ClassHistory history) {
        Set<Caution> all = new LinkedHashSet<>();
        if (waits(one, state)) {
            all.add(Caution.WAITING_IS_NO_REASON);
        }
        for (Note note : one.notes()) {
            switch (note) {
                case Note.ClassDip dip -> all.add(Caution.LESSON_FIRST);
                case Note.CheckDisagrees check -> all.add(Caution.ONE_CHECK_MOVES_NOBODY);
                case Note.ObserversDiffer differ -> all.add(Caution.OBSERVERS_DIFFER);
                case Note.NothingAbove above -> all.add(Caution.WAYS_OF_SHOWING);
                case Note.Provisional provisional -> all.add(Caution.MISSING_IS_NOT_ZERO);
                case Note.NotSeenLately lately -> all.add(Caution.MISSING_IS_NOT_ZERO);
                case Note.HardlySeen hardly -> all.add(Caution.MISSING_IS_NOT_ZERO);
                default -> {}
            }
        }
        if (unspoken(one, history)) {
            all.add(Caution.WAYS_OF_SHOWING);
        }
        all.addAll(ALWAYS);
        return one.with(one.notes(), new ArrayList<>(all));
    }

    /** Words that make somebody wait, help that has run through two reviews, or something that waits for an answer. */
    private static boolean waits(Suggestion one, ChildState state) {
        long reviewsInSupport = state.reviews().stream()
                .filter(r -> state.since() == null || !r.isBefore(state.since()))
                .count();
        boolean longHelp = one.suggested() == Tier.SUPPORT
                && one.current() == Tier.SUPPORT
                && reviewsInSupport + 1 >= TWO_REVIEWS;
        boolean toMoreHelp = one.verdict() == Verdict.MOVE && one.suggested() == Tier.SUPPORT;
        return one.verdict() == Verdict.NOT_ENOUGH || longHelp || toMoreHelp || !state.open().isEmpty();
    }

    private static boolean unspoken(Suggestion one, ClassHistory history) {
        boolean said = false;
        int explained = 0;
        for (CountedLook look : history.on(one.day()).looks().of(one.child())) {
            if (look.look().tags().isEmpty()) {
                continue;
            }
            if (look.look().tags().contains(Tags.HOME_LANGUAGE)) {
                return true;
            }
            said |= look.look().tags().contains(Tags.SAID);
            explained += look.explained() ? 1 : 0;
        }
        return !said && explained >= 2;
    }
}
