package org.stepwell.review;

import java.util.UUID;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.core.wording.Language;

/** A closed review as a file. */
@RestController
class ReviewController {
    private final ReviewService reviews;

    ReviewController(ReviewService reviews) {
        this.reviews = reviews;
    }

    @GetMapping("/api/reviews/{id}/review.pdf")
    ResponseEntity<byte[]> review(@PathVariable UUID id, @RequestParam(defaultValue = "en") Language lang) {
        ReviewService.Printed printed = reviews.print(id);
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_PDF).cacheControl(CacheControl.noStore())
                .header("Content-Disposition", "inline; filename=\"review.pdf\"")
                .body(new ReviewPaper(printed, lang).pdf());
    }
}
