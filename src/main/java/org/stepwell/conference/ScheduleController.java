package org.stepwell.conference;

import java.util.UUID;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.pdf.PdfDocument.Paper;

/** What is printed for an evening of talks: the list for the adults, and every family's note in its order. */
@RestController
class ScheduleController {
    private final ScheduleService schedules;

    ScheduleController(ScheduleService schedules) {
        this.schedules = schedules;
    }

    @GetMapping("/api/conferences/{classId}/list.pdf")
    ResponseEntity<byte[]> list(@PathVariable UUID classId, @RequestParam(defaultValue = "en") Language lang,
            @RequestParam(defaultValue = "letter") Paper paper) {
        return file("talks", schedules.list(classId).pdf(lang, paper));
    }

    @GetMapping("/api/conferences/{classId}/notes.pdf")
    ResponseEntity<byte[]> notes(@PathVariable UUID classId, @RequestParam(defaultValue = "en") Language lang,
            @RequestParam(defaultValue = "letter") Paper paper, @RequestParam(defaultValue = "normal") String print) {
        return file("notes", SchedulePaper.notes(schedules.pages(classId, lang), lang, paper, print.equals("large")));
    }

    private static ResponseEntity<byte[]> file(String name, byte[] pdf) {
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_PDF).cacheControl(CacheControl.noStore())
                .header("Content-Disposition", "inline; filename=\"" + name + ".pdf\"").body(pdf);
    }
}
