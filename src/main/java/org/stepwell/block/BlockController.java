package org.stepwell.block;

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

/** The block of today as a sheet; not found where none can be drawn. */
@RestController
class BlockController {
    private final BlockService blocks;
    private final RosterService roster;

    BlockController(BlockService blocks, RosterService roster) {
        this.blocks = blocks;
        this.roster = roster;
    }

    @GetMapping("/api/block/{classId}/sheet.pdf")
    ResponseEntity<byte[]> sheet(@PathVariable UUID classId,
            @RequestParam(name = "for", defaultValue = "class") String reader,
            @RequestParam(defaultValue = "en") Language lang) {
        BlockPicture picture = blocks.picture(classId);
        if (picture.plan() == null || picture.pattern() == null) {
            throw new NotVisible();
        }
        String name = roster.classes().stream().filter(c -> c.classId().equals(classId)).map(Classroom::name)
                .findFirst().orElseThrow(NotVisible::new);
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_PDF).cacheControl(CacheControl.noStore())
                .header("Content-Disposition", "inline; filename=\"block.pdf\"")
                .body(new BlockSheet(picture, name, reader.equals("substitute")).pdf(lang));
    }
}
