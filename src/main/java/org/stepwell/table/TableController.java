package org.stepwell.table;

import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.block.BlockService;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Phrase;
import org.stepwell.core.progression.Progression.Skill;
import org.stepwell.grouping.GroupingService;
import org.stepwell.grouping.Seating;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.LessonService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;

/** What the Table page needs to open: one class, its skills and phrases. Nothing tells a step, a tier or the past. */
@RestController
class TableController {
    private final RosterService roster;
    private final ProgressionService progressions;
    private final LessonService lessons;
    private final ObservationService observations;
    private final GroupingService groupings;
    private final BlockService blocks;
    private final ShortStarts starts;
    private final Questions questions;
    private final CurrentAdult current;
    private final Clock clock;

    TableController(RosterService roster, ProgressionService progressions, LessonService lessons,
            ObservationService observations, GroupingService groupings, BlockService blocks, ShortStarts starts,
            Questions questions, CurrentAdult current, Clock clock) {
        this.roster = roster;
        this.progressions = progressions;
        this.lessons = lessons;
        this.observations = observations;
        this.groupings = groupings;
        this.blocks = blocks;
        this.starts = starts;
        this.questions = questions;
        this.current = current;
        this.clock = clock;
    }

    @GetMapping("/api/table")
    Map<String, Object> table(@RequestParam(name = "class", required = false) @Nullable UUID classId) {
        SignedIn adult = current.get();
        Classroom room = roster.classes().stream().filter(c -> classId == null || c.classId().equals(classId))
                .findFirst().orElseThrow(NotVisible::new);
        Progression progression = progressions.toBegin(room.classId());
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("adult", Map.of("id", adult.adultId(), "signIn", adult.signIn(), "name", adult.name()));
        answer.put("class", Map.of("id", room.classId(), "name", room.name()));
        answer.put("children", children(room.classId(), progression));
        answer.put("skills", progression.skills().stream().map(s -> skill(s, progression)).toList());
        answer.put("focusSkill", lessons.skillInHand(room.classId()).orElse(null));
        answer.put("seenThisWeek", seenThisWeek(room.classId()));
        answer.put("groups", groups(room.classId()));
        answer.put("block", blocks.atTable(room.classId()));
        answer.put("starts", starts.of(room.classId(), progression));
        answer.put("zone", adult.zone().getId());
        answer.put("serverTime", clock.instant());
        return answer;
    }

    /** Today's groups as an adult saved them: number, children by id, skill and number to offer; empty when none. */
    private List<Map<String, Object>> groups(UUID classId) {
        Optional<Seating> today = groupings.seating(classId, current.today());
        return today.map(seating -> seating.groups().stream().map(group -> {
            Map<String, Object> map = new LinkedHashMap<>();
            map.put("group", group.number());
            map.put("children", seating.groupOf().entrySet().stream().filter(e -> e.getValue() == group.number())
                    .map(Map.Entry::getKey).toList());
            map.put("skill", group.skill());
            map.put("number", group.task());
            return map;
        }).toList()).orElse(List.of());
    }

    private List<Map<String, Object>> children(UUID classId, Progression progression) {
        List<ChildRow> rows = roster.children(classId);
        Map<String, Map<String, Object>> asks = questions.ofChildren(classId, rows, progression);
        return rows.stream().map(child -> {
            Map<String, Object> map = new LinkedHashMap<>(Map.of("child", child.schoolKey(),
                    "given_name", child.givenName(), "label", child.label()));
            map.putAll(asks.getOrDefault(child.schoolKey(), Map.of()));
            return map;
        }).toList();
    }

    private static Map<String, Object> skill(Skill skill, Progression progression) {
        List<Phrase> own = progression.phrases().stream().filter(p -> p.skill().equals(skill.code())).toList();
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("code", skill.code());
        map.put("title", Map.of("en", skill.title(), "es", skill.title()));
        map.put("phrases", words(own, Phrase.Kind.PHRASE));
        map.put("errors", words(own, Phrase.Kind.ERROR));
        map.put("questions", Questions.ofSkill(progression, skill));
        map.put("numbers", progression.numbers(skill.code()));
        map.put("objectsBelong", own.stream().filter(p -> p.kind() == Phrase.Kind.HELP
                && p.code().equals(Progression.OBJECTS_BELONG)).map(Phrase::step).filter(Objects::nonNull).distinct()
                .toList());
        return map;
    }

    private static List<Map<String, Object>> words(List<Phrase> own, Phrase.Kind kind) {
        Map<String, Map<String, Object>> byCode = new LinkedHashMap<>();
        for (Phrase phrase : own) {
            if (phrase.kind() == kind) {
                Map<String, Object> entry = byCode.computeIfAbsent(phrase.code(), c -> {
                    Map<String, Object> fresh = new LinkedHashMap<>();
                    fresh.put("code", c);
                    fresh.put("step", phrase.step());
                    fresh.put("text", new LinkedHashMap<String, String>());
                    return fresh;
                });
                @SuppressWarnings("unchecked")
                Map<String, String> text = (Map<String, String>) entry.get("text");
                Objects.requireNonNull(text).put(phrase.language(), phrase.text());
            }
        }
        return List.copyOf(byCode.values());
    }

    private List<String> seenThisWeek(UUID classId) {
        LocalDate monday = current.today().with(DayOfWeek.MONDAY);
        return observations.ofClass(classId).stream().filter(l -> !l.day().isBefore(monday)).map(Look::child)
                .distinct().sorted().toList();
    }
}
