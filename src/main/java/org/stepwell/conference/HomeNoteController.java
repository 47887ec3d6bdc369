package org.stepwell.conference;

import java.util.Map;
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

/** The page for home as a file. */
@RestController
class HomeNoteController {
    private final HomeNoteService notes;
    private final RosterService roster;
    private final AccessRecordService record;

    HomeNoteController(HomeNoteService notes, RosterService roster, AccessRecordService record) {
        this.notes = notes;
        this.roster = roster;
        this.record = record;
    }

    @GetMapping("/api/children/{child}/note.pdf")
    ResponseEntity<?> note(@PathVariable String child, @RequestParam(defaultValue = "en") Language lang,
            @RequestParam(defaultValue = "letter") Paper paper, @RequestParam(defaultValue = "normal") String print) {
        if (!print.equals("normal") && !print.equals("large")) {
            return wrong("print is normal or large");
        }
        Optional<ChildRow> found = roster.byKey(child);
        if (found.isEmpty()) {
            record.denied(child, Seen.NOTE_PRINT);
            throw new NotVisible();
        }
        byte[] pdf = notes.page(found.get().childId(), lang).pdf(paper, print.equals("large"));
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_PDF).cacheControl(CacheControl.noStore())
                .header("Content-Disposition", "inline; filename=\"note.pdf\"").body(pdf);
    }

    private static ResponseEntity<?> wrong(String words) {
        return ResponseEntity.badRequest().contentType(MediaType.APPLICATION_JSON).body(Map.of("error", words));
    }
}
