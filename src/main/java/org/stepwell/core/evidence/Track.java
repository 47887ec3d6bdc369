package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.pacing.SchoolCalendar;

/** One skill of one child, followed from the first day that matters to the day of the question, for every pace. */
final class Track {
    private final List<CountedLook> looks;
    private final Belief[] beliefs;

    private Track(List<CountedLook> looks, Belief[] beliefs) {
        this.looks = looks;
        this.beliefs = beliefs;
    }

    /**
     * @param taughtFrom first day on which the class worked on the skill, if it did
     * @param paceFrom looks dated before it do not speak for a pace; {@code null}: none does
     */
    record Frame(Optional<LocalDate> taughtFrom, @Nullable LocalDate paceFrom, SchoolCalendar calendar, LocalDate day) {}

    /** Follows the skill; {@code looks} oldest first, none after the day. */
    static Track follow(EvidenceFilter filter, List<CountedLook> looks, Frame frame) {
        Belief[] beliefs = filter.starts();
        LocalDate at = start(looks, frame);
        for (int i = 0; i < looks.size(); ) {
            LocalDate day = looks.get(i).day();
            int next = i;
            while (next < looks.size() && looks.get(next).day().equals(day)) {
                next++;
            }
            pass(filter, beliefs, frame, at, day);
            double[] likelihood = filter.likelihoods().sitting(looks.subList(i, next));
            boolean weighs = frame.paceFrom() != null && !day.isBefore(frame.paceFrom());
            for (Belief belief : beliefs) {
                belief.see(likelihood, weighs);
            }
            at = day;
            i = next;
        }
        pass(filter, beliefs, frame, at, frame.day());
        return new Track(List.copyOf(looks), beliefs);
    }

    private static LocalDate start(List<CountedLook> looks, Frame frame) {
        LocalDate first = looks.isEmpty() ? frame.day() : looks.getFirst().day();
        return frame.taughtFrom()
                .map(t -> t.minusDays(1))
                .filter(t -> t.isBefore(first))
                .orElse(first);
    }

    /** Growth is assumed only for the first days after a look or after teaching began: silence is not growth. */
    private static void pass(
            EvidenceFilter filter, Belief[] beliefs, Frame frame, LocalDate from, LocalDate to) {
        LocalDate dayBefore = frame.taughtFrom().map(t -> t.minusDays(1)).orElse(to);
        LocalDate split = dayBefore.isBefore(from) ? from : dayBefore.isAfter(to) ? to : dayBefore;
        for (SchoolCalendar.Run run : frame.calendar().runs(from, split)) {
            Drift drift = run.school() ? filter.untaught() : filter.onBreak();
            for (Belief belief : beliefs) {
                belief.pass(drift, run.days());
            }
        }
        int growing = filter.parameters().silenceDays();
        for (SchoolCalendar.Run run : frame.calendar().runs(split, to)) {
            int days = run.school() ? Math.min(run.days(), growing) : run.days();
            for (int b = 0; b < beliefs.length; b++) {
                beliefs[b].pass(run.school() ? filter.taught(b) : filter.onBreak(), days);
            }
            growing -= run.school() ? days : 0;
        }
    }

    /** The looks behind it, oldest first. */
    List<CountedLook> looks() {
        return looks;
    }

    /** What is believed for each pace, in the order of the parameters. */
    Belief[] beliefs() {
        return beliefs;
    }

    /** The looks less one. */
    List<CountedLook> looksWithout(java.util.UUID id) {
        List<CountedLook> rest = new ArrayList<>(looks);
        rest.removeIf(l -> l.look().id().equals(id));
        return rest;
    }
}
