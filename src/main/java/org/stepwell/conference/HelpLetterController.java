package org.stepwell.conference;

import java.util.Optional;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** The letter about extra help as a file. */
@RestController
class HelpLetterController {
    private final HelpLetterService letters;
    private final RosterService roster;
    private final AccessRecordService record;

    HelpLetterController(HelpLetterService letters, RosterService roster, AccessRecordService record) {
        this.letters = letters;
        this.roster = roster;
        this.record = record;
    }

    @GetMapping("/api/children/{child}/letter.pdf")
    ResponseEntity<byte[]> letter(@PathVariable String child, @RequestParam(defaultValue = "en") Language lang,
            @RequestParam(defaultValue = "letter") Paper paper, @RequestParam(defaultValue = "normal") String print) {
        Optional<ChildRow> found = roster.byKey(child);
        if (found.isEmpty()) {
            record.denied(child, Seen.LETTER_PRINT);
            throw new NotVisible();
        }
        byte[] pdf = letters.page(found.get().childId(), lang).pdf(paper, print.equals("large"));
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_PDF).cacheControl(CacheControl.noStore())
                .header("Content-Disposition", "inline; filename=\"letter.pdf\"").body(pdf);
    }
}
