package org.stepwell.privacy;

import java.nio.charset.StandardCharsets;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** The record of access to one child as a file. */
@RestController
class AccessRecordController {
    private final AccessRecordService record;

    AccessRecordController(AccessRecordService record) {
        this.record = record;
    }

    @GetMapping("/api/children/{child}/access.csv")
    ResponseEntity<byte[]> record(@PathVariable String child) {
        try {
            return ResponseEntity.ok().contentType(new MediaType("text", "csv", StandardCharsets.UTF_8))
                    .cacheControl(CacheControl.noStore())
                    .header("Content-Disposition", "attachment; filename=\"access.csv\"")
                    .body(record.csv(child).getBytes(StandardCharsets.UTF_8));
        } catch (NotVisible closed) {
            record.denied(child, Seen.RECORD_FILE);
            throw closed;
        }
    }
}
