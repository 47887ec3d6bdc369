package org.stepwell.review;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.stepwell.core.tier.ReviewOrder;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.privacy.NotVisible;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;

/**
 * A review that is going on.
 *
 * @param reviewId the review
 * @param week Monday of its week
 * @param picture the class today
 * @param order in which it is gone through
 * @param choices all turns, oldest first
 * @param last the review closed before, if any
 */
public record OpenReview(UUID reviewId, LocalDate week, ClassPicture picture, ReviewOrder order,
        List<Choice> choices, Optional<SealedReview> last) {
    /** Copies the list. */
    public OpenReview {
        choices = List.copyOf(choices);
    }

    /** What the rules say about a child today. */
    public Suggestion suggestion(OneChild child) {
        return picture.review().of(child.row().schoolKey()).orElseThrow(NotVisible::new);
    }

    /** The choice that holds for a child, if one was made. */
    public Optional<Choice> choice(UUID childId) {
        return choices.stream().filter(c -> c.childId().equals(childId) && c.decides()).reduce((a, b) -> b);
    }

    /** The call made before the suggestion was shown, if one was. */
    public Optional<Choice> ownCall(UUID childId) {
        return choices.stream().filter(c -> c.childId().equals(childId) && !c.decides()).reduce((a, b) -> b);
    }

    /** How many turns were taken on a child; the next one is one more. */
    public int turns(UUID childId) {
        return (int) choices.stream().filter(c -> c.childId().equals(childId)).count();
    }

    /** The children of a list of school keys, by label. */
    public List<OneChild> children(List<String> keys) {
        return picture.children().stream().filter(c -> keys.contains(c.row().schoolKey())).toList();
    }

    /** Children without a choice. */
    public List<OneChild> left() {
        return picture.children().stream().filter(c -> choice(c.row().childId()).isEmpty()).toList();
    }

    /** The last review's line on a child, if there was one. */
    public Optional<SealedReview.Line> lastLine(UUID childId) {
        return last.flatMap(sealed -> sealed.children().stream().filter(line -> line.childId().equals(childId))
                .findFirst());
    }

    /** As a lookup of what every child of the class is called. */
    public Map<UUID, String> labels() {
        return picture.children().stream().collect(java.util.stream.Collectors.toMap(c -> c.row().childId(),
                c -> c.row().label()));
    }
}
