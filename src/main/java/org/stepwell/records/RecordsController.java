package org.stepwell.records;

import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.core.wording.Language;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.records.RecordsService.Purpose;

/** All records on one child as a file. */
@RestController
class RecordsController {
    private final RecordsService records;
    private final AccessRecordService record;

    RecordsController(RecordsService records, AccessRecordService record) {
        this.records = records;
        this.record = record;
    }

    @GetMapping("/api/children/{child}/records.zip")
    ResponseEntity<byte[]> records(@PathVariable String child, @RequestParam(defaultValue = "en") Language lang,
            @RequestParam(name = "for", defaultValue = "INSPECT") Purpose purpose) {
        try {
            byte[] zip = records.bundle(child, purpose, lang);
            return ResponseEntity.ok().contentType(MediaType.parseMediaType("application/zip"))
                    .cacheControl(CacheControl.noStore())
                    .header("Content-Disposition", "attachment; filename=\"records.zip\"").body(zip);
        } catch (NotVisible closed) {
            record.denied(child, purpose.seen());
            throw closed;
        }
    }
}
