package org.stepwell.core.wording.home;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.progression.Progression;

/**
 * What a draft for home may rest on.
 *
 * @param name the child's given name
 * @param looks the child's looks that count, oldest first
 * @param progression skills with their words for home (help texts {@code home_did},
 *     {@code home_next}, {@code home_try})
 * @param working skills the class works on, the one in hand first
 * @param steps per skill the step the evidence speaks for; skills never seen are missing
 * @param since first day whose looks count as news: the day after the last note, else the start of the unit
 * @param today day of the draft
 * @param nextNote when the school writes again
 * @param otherNames given and family names of all other children of the class, which must not appear
 */
public record HomeEvidence(String name, List<CountedLook> looks, Progression progression, List<String> working,
        Map<String, Integer> steps, LocalDate since, LocalDate today, LocalDate nextNote, Set<String> otherNames) {

    /** Copies the collections. */
    public HomeEvidence {
        looks = List.copyOf(looks);
        working = List.copyOf(working);
        steps = Map.copyOf(steps);
        otherNames = Set.copyOf(otherNames);
    }
}
