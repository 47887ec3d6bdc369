package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What the evidence says about one child on one day, over all skills.
 *
 * @param child the school's own id
 * @param day everything dated up to the end of this day counts
 * @param skills estimate per skill code, for skills paced or seen
 * @param branches the parallel assumptions behind the estimates, for the chance of a tier only: within one branch the
 *     skills are independent. Never stored, shown or exported.
 */
public record ChildPicture(
        String child, LocalDate day, SortedMap<String, SkillEstimate> skills, List<Branch> branches) {

    /**
     * One assumption and what follows from it.
     *
     * @param weight chance of the assumption given all looks of the child; weights add up to 1
     * @param chances per skill (also those never seen: the prior) the five step chances
     */
    public record Branch(double weight, Map<String, double[]> chances) {}

    /** Copies the collections. */
    public ChildPicture {
        skills = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(skills));
        branches = List.copyOf(branches);
    }
}
