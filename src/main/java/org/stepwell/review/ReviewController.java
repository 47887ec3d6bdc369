package org.stepwell.review;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.core.wording.Language;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;

/** A closed review as a file. */
@RestController
class ReviewController {
    private final ReviewService reviews;
    private final RosterService roster;

    ReviewController(ReviewService reviews, RosterService roster) {
        this.reviews = reviews;
        this.roster = roster;
    }

    @GetMapping("/api/reviews/{id}/review.pdf")
    ResponseEntity<byte[]> review(@PathVariable UUID id, @RequestParam(defaultValue = "en") String lang) {
        Language language = lang.equals("es") ? Language.SPANISH : Language.ENGLISH;
        for (Classroom room : reviews.mine()) {
            for (SealedReview sealed : reviews.sealed(room.classId())) {
                if (sealed.reviewId().equals(id)) {
                    Map<UUID, String> labels = new HashMap<>();
                    roster.children(room.classId()).forEach(c -> labels.put(c.childId(), c.label()));
                    return ResponseEntity.ok().contentType(MediaType.APPLICATION_PDF)
                            .cacheControl(CacheControl.noStore())
                            .header("Content-Disposition", "inline; filename=\"review.pdf\"")
                            .body(new ReviewPaper(sealed, room.name(), labels, language).pdf());
                }
            }
        }
        throw new NotVisible();
    }
}
