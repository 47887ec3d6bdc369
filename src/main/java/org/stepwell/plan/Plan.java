package org.stepwell.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.plan.PlannedSessions;
import org.stepwell.core.plan.PlannedSessions.Outcome;
import org.stepwell.core.tier.ChildState.Dose;

/**
 * A plan of extra help, or of deeper work.
 *
 * @param planId the plan
 * @param childId the child
 * @param support {@code true} for extra help, {@code false} for deeper work
 * @param startedOn first day
 * @param phases what held from when, oldest first; at least one
 * @param sessions those that count, oldest first
 * @param endedOn last day; {@code null} while it runs
 * @param outcome word of how it ended; empty while it runs
 * @param words how it ended in an adult's words
 */
public record Plan(UUID planId, UUID childId, boolean support, LocalDate startedOn, List<PlanTerms> phases,
        List<Held> sessions, @Nullable LocalDate endedOn, String outcome, String words) {

    /**
     * A session.
     *
     * @param sessionId made where it was logged
     * @param on school day
     * @param outcome what became of it
     * @param minutes given; 0 when missed
     * @param words what was done
     * @param by name of the adult who logged it
     */
    public record Held(UUID sessionId, LocalDate on, Outcome outcome, int minutes, String words, String by) {}

    /** Copies the lists. */
    public Plan {
        phases = List.copyOf(phases);
        sessions = List.copyOf(sessions);
    }

    /** The terms that hold on a day: those of the newest phase begun by then, else the first. */
    public PlanTerms on(LocalDate day) {
        return phases.stream().filter(phase -> !phase.from().isAfter(day)).reduce((a, b) -> b)
                .orElseGet(phases::getFirst);
    }

    /** Whether it runs on a day. */
    public boolean runs(LocalDate day) {
        return !startedOn.isAfter(day) && (endedOn == null || !endedOn.isBefore(day));
    }

    /** Given against planned; {@code null} when nothing was to be given yet. */
    public @Nullable Dose dose(SchoolCalendar calendar, LocalDate day) {
        return PlannedSessions.dose(phases.stream().map(p -> new PlannedSessions.Phase(p.from(), p.perWeek())).toList(),
                endedOn, counted(), calendar, day);
    }

    /** Whether the two newest sessions were both missed by the school. */
    public boolean missedTwiceRunning() {
        return PlannedSessions.missedTwiceRunning(counted());
    }

    private List<PlannedSessions.Session> counted() {
        return sessions.stream().map(s -> new PlannedSessions.Session(s.on(), s.outcome())).toList();
    }
}
