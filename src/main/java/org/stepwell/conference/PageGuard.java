package org.stepwell.conference;

import java.util.List;
import java.util.Set;
import org.springframework.stereotype.Component;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.WordGuard;
import org.stepwell.core.wording.home.WordGuard.Found;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Finds in a text for home what usually stays at school, and other children's names. */
@Component
class PageGuard {
    private final RosterService roster;
    private final ProgressionService progressions;
    private final CurrentAdult current;

    PageGuard(RosterService roster, ProgressionService progressions, CurrentAdult current) {
        this.roster = roster;
        this.progressions = progressions;
        this.current = current;
    }

    List<Found> find(ChildRow child, Language language, String text) {
        Set<String> own = Set.of(child.givenName(), child.familyName(), current.get().name());
        List<String> skills = progressions.ofClass(child.classId()).skills().stream().map(Progression.Skill::code).toList();
        return WordGuard.of(language).find(text, own, roster.otherNames(child.childId()), skills);
    }
}
