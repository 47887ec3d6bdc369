package org.stepwell.table;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.PaperMarks;
import org.stepwell.core.progression.PaperMarks.Lettered;
import org.stepwell.core.progression.PaperMarks.Mark;
import org.stepwell.core.progression.Progression;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Looks written on paper and typed in later: all of a page or none, and marked as such. */
@Service
@Transactional
public class PaperService {
    private static final LocalTime NOON = LocalTime.NOON;
    private static final int WEEKS_BACK = 8;

    private final ObservationService observations;
    private final ProgressionService progressions;
    private final RosterService roster;
    private final CurrentAdult current;

    PaperService(ObservationService observations, ProgressionService progressions, RosterService roster,
            CurrentAdult current) {
        this.observations = observations;
        this.progressions = progressions;
        this.roster = roster;
        this.current = current;
    }

    /**
     * Stores a page. A row that cannot be read leaves the whole page unstored, so that nothing is typed twice.
     *
     * @param pageId made by the screen; the same page again does nothing
     * @param day of the lesson, today or up to {@value #WEEKS_BACK} weeks back
     * @param task number asked where a mark has none; empty for none
     * @param cubesOut whether cubes lay on the table
     * @param typed what was typed by id of the child
     * @return how many looks are there now
     * @throws Refused naming what cannot be taken, and of which child
     */
    public int store(UUID classId, UUID pageId, LocalDate day, String skill, String task, boolean cubesOut,
            Map<UUID, String> typed) {
        LocalDate today = current.today();
        if (day.isAfter(today) || day.isBefore(today.minusWeeks(WEEKS_BACK))) {
            throw new Refused("paper.day", today.minusWeeks(WEEKS_BACK), today);
        }
        Progression progression = progressions.ofClass(classId);
        if (progression.skill(skill).isEmpty()) {
            throw new Refused("paper.skill", skill);
        }
        List<Lettered> letters = PaperMarks.letters(progression, skill, "en");
        List<Look> looks = new ArrayList<>();
        for (ChildRow child : roster.children(classId)) {
            try {
                for (Mark mark : PaperMarks.read(typed.getOrDefault(child.childId(), ""), letters)) {
                    looks.add(look(child, mark, new Page(pageId, day, skill, task.strip(), cubesOut), progression,
                            looks.size()));
                }
            } catch (Refused wrong) {
                throw new Refused("paper.row", child.label(), wrong.problem());
            }
        }
        if (looks.isEmpty()) {
            throw new Refused("paper.empty");
        }
        observations.record(looks, true).stream().filter(t -> t.outcome() == ObservationService.Outcome.REFUSED)
                .findFirst().ifPresent(t -> {
                    throw new Refused(Objects.requireNonNull(t.reason()));
                });
        return looks.size();
    }

    private record Page(UUID id, LocalDate day, String skill, String task, boolean cubesOut) {}

    private Look look(ChildRow child, Mark mark, Page page, Progression progression, int number) {
        Set<String> tags = new LinkedHashSet<>(List.of(mark.phrase().code(), "from_paper", "written_later"));
        String task = mark.task() == null ? page.task() : mark.task();
        return new Look(new UUID(page.id().getMostSignificantBits(), page.id().getLeastSignificantBits() ^ number),
                at(page.day(), number), child.schoolKey(), page.skill(), task.isEmpty() ? null : task,
                mark.phrase().step(), help(mark, page, progression), Kind.TABLE, "", tags, null, null, false, null);
    }

    /** The hour was not written down: noon of that day, and never later than now. */
    private OffsetDateTime at(LocalDate day, int number) {
        OffsetDateTime now = OffsetDateTime.now(observations.clock()).truncatedTo(ChronoUnit.SECONDS);
        OffsetDateTime noon = day.atTime(NOON).atZone(current.get().zone()).toOffsetDateTime();
        return (noon.isAfter(now) ? now : noon).plusNanos(number * 1000L);
    }

    /** As the Table has it: cubes are no help where the task needs objects by nature. */
    private static Help help(Mark mark, Page page, Progression progression) {
        return switch (mark.help()) {
            case "p" -> Help.PROMPT;
            case "m" -> Help.MODELLED;
            default -> page.cubesOut() && !progression.objectsBelong(page.skill(), mark.phrase().step()) ? Help.CUBES
                    : Help.NONE;
        };
    }
}
