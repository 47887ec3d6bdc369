package org.stepwell.bench;

import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.tier.Tier;

/** Something that names a tier for each child of a classroom on each review day, knowing only the past. */
interface Decider {

    /** What was decided on one review day for one child. */
    record Call(Tier tier, double chance) {}

    /** Short name for the report. */
    String name();

    /**
     * Decides for one child on all review days in turn, from on-level at the start.
     *
     * @return one call per review day: the tier in force after it, and the chance given to it (0 where none is)
     */
    List<Call> decide(Classroom room, Classroom.Child child, RoomEvidence evidence);

    /** What a rule of thumb looks at. */
    record Sight(LocalDate day, SortedMap<String, Integer> due, List<CountedLook> looks) {}
}
