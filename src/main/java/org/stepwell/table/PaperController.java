package org.stepwell.table;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.core.progression.PaperMarks;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.wording.Language;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;

/** The clipboard page of a class and a skill. */
@RestController
class PaperController {
    private final RosterService roster;
    private final ProgressionService progressions;

    PaperController(RosterService roster, ProgressionService progressions) {
        this.roster = roster;
        this.progressions = progressions;
    }

    @GetMapping("/api/table/{classId}/clipboard.pdf")
    ResponseEntity<byte[]> page(@PathVariable UUID classId,
            @RequestParam(name = "skill", required = false) @Nullable String chosen,
            @RequestParam(defaultValue = "en") Language lang) {
        Classroom room = roster.classes().stream().filter(c -> c.classId().equals(classId)).findFirst()
                .orElseThrow(NotVisible::new);
        Progression progression = progressions.ofClass(classId);
        String skill = chosen != null ? chosen : progression.skills().stream().findFirst().map(Progression.Skill::code)
                .orElseThrow(NotVisible::new);
        String title = progression.skill(skill).map(Progression.Skill::title).orElseThrow(NotVisible::new);
        byte[] pdf = new ClipboardPage(room.name(), title, PaperMarks.letters(progression, skill, lang.code()),
                progression.numbers(skill), roster.children(classId).stream().map(ChildRow::label).toList()).pdf(lang);
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_PDF).cacheControl(CacheControl.noStore())
                .header("Content-Disposition", "inline; filename=\"clipboard.pdf\"").body(pdf);
    }
}
