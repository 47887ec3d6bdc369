package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.problem.Refused;

/**
 * One dated record that one adult saw one child use one strategy on one task. Never changed: a correction is another
 * look that names this one in {@code replaces}.
 *
 * @param id made where the look was made; the same id is the same look for ever
 * @param observedAt when it was seen, in the offset whose local date is the day of the look
 * @param child the school's own id of the child
 * @param skill code of the skill; may be {@code null} only when {@code step} is
 * @param task what was asked, often a number such as {@code 17}
 * @param step 1 to 5, or {@code null} for a note without a step
 * @param observer sign-in name or label of the adult who saw it
 * @param tags snake_case codes, known or not; unknown ones have no effect
 * @param replaces id of the look this one stands in for
 * @param withdrawn {@code true}: the look named by {@code replaces} no longer counts and nothing takes its place
 * @param clockOffsetMs measured tablet clock minus server clock, milliseconds; {@code null} when not measured
 */
public record Look(
        UUID id,
        OffsetDateTime observedAt,
        String child,
        @Nullable String skill,
        @Nullable String task,
        @Nullable Integer step,
        Help help,
        Kind kind,
        String observer,
        Set<String> tags,
        @Nullable String note,
        @Nullable UUID replaces,
        boolean withdrawn,
        @Nullable Long clockOffsetMs) {

    /** Copies the tags in order and holds the rule that a step needs a skill and lies in 1-5. */
    public Look {
        tags = java.util.Collections.unmodifiableSortedSet(new TreeSet<>(tags));
        if (step != null && (step < 1 || step > 5)) {
            throw new Refused("look.step", step);
        }
        if (step != null && skill == null) {
            throw new Refused("look.needs-skill");
        }
        if (withdrawn && replaces == null) {
            throw new Refused("look.needs-replaces");
        }
    }

    /** The local date of the look in its own offset. */
    public LocalDate day() {
        return observedAt.toLocalDate();
    }
}
