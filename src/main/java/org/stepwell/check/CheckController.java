package org.stepwell.check;

import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.check.Mark;
import org.stepwell.core.problem.Problem;
import org.stepwell.core.progression.Progression.Phrase;
import org.stepwell.platform.ui.ReaderLanguage;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** What the tap grid asks and stores; every tap goes at once. */
@RestController
class CheckController {
    private static final int MOST_TAPS = 500;

    private final CheckService checks;
    private final RosterService roster;
    private final ProgressionService progressions;

    CheckController(CheckService checks, RosterService roster, ProgressionService progressions) {
        this.checks = checks;
        this.roster = roster;
        this.progressions = progressions;
    }

    /** A mark as the grid sends it; {@code child} is the school's own id. */
    record SentTap(String child, String item, int entry, int seen, String mark, @Nullable String error) {}

    /** A row as the grid names it. */
    record SentRow(String child, int entry, boolean absent) {}

    @GetMapping("/api/checks/{id}")
    Map<String, Object> grid(@PathVariable UUID id, @RequestParam(defaultValue = "1") int entry,
            @RequestParam(defaultValue = "en") String lang) {
        CheckSheet sheet = checks.sheet(id);
        List<Phrase> errors = progressions.ofClass(checks.classOf(id)).phrases().stream()
                .filter(p -> p.kind() == Phrase.Kind.ERROR && p.language().equals(lang)).toList();
        Map<UUID, String> keys = keys(sheet.children());
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("items", sheet.items().stream().map(item -> item(item, errors)).toList());
        answer.put("children", sheet.children().stream().map(child -> child(sheet, child)).toList());
        answer.put("cells", sheet.cells().stream().filter(c -> c.entry() == entry).map(c -> cell(c, keys)).toList());
        return answer;
    }

    private static Map<String, Object> item(CheckItem item, List<Phrase> errors) {
        return Map.of("code", item.code(), "skill", item.skill(), "step", item.step(), "question", item.question(),
                "answer", item.answer(), "errors", errors.stream().filter(p -> p.skill().equals(item.skill()))
                        .map(p -> Map.of("code", p.code(), "text", p.text())).toList());
    }

    private static Map<String, Object> child(CheckSheet sheet, ChildRow child) {
        CheckSitting sitting = sheet.sitting(child.childId());
        return Map.of("child", child.schoolKey(), "label", child.label(), "absent", sitting.absent(),
                "accommodation", sitting.accommodation(),
                "asked", sheet.itemsFor(child.childId()).stream().map(CheckItem::code).toList());
    }

    private static Map<UUID, String> keys(List<ChildRow> children) {
        return children.stream().collect(Collectors.toMap(ChildRow::childId, ChildRow::schoolKey, (a, b) -> a));
    }

    private static Map<String, Object> cell(CheckCell cell, Map<UUID, String> keys) {
        Map<String, Object> map = new HashMap<>();
        map.put("child", keys.get(cell.childId()));
        map.put("item", cell.item());
        map.put("number", cell.number());
        map.put("mark", cell.mark().code());
        map.put("error", cell.error());
        map.put("by", cell.by());
        return map;
    }

    @PostMapping("/api/checks/{id}/marks")
    ResponseEntity<?> mark(@PathVariable UUID id, @RequestBody List<SentTap> sent) {
        if (sent.size() > MOST_TAPS) {
            return error(HttpStatus.CONTENT_TOO_LARGE, "more than 500 marks at once; send them in parts");
        }
        Map<String, ChildRow> children = children(id);
        List<CheckService.Tap> taps = new ArrayList<>();
        for (SentTap tap : sent) {
            taps.add(new CheckService.Tap(known(children, tap.child()), tap.item(), tap.entry(), tap.seen(),
                    Mark.of(tap.mark()), tap.error()));
        }
        Map<UUID, String> keys = keys(List.copyOf(children.values()));
        return ResponseEntity.ok(checks.mark(id, taps).stream().map(marked -> {
            Map<String, Object> one = new HashMap<>();
            one.put("stored", marked.stored());
            one.put("cell", marked.cell() == null ? null : cell(marked.cell(), keys));
            return one;
        }).toList());
    }

    @PostMapping("/api/checks/{id}/rest")
    List<Map<String, Object>> rest(@PathVariable UUID id, @RequestBody SentRow row) {
        Map<String, ChildRow> children = children(id);
        Map<UUID, String> keys = keys(List.copyOf(children.values()));
        return checks.restRight(id, known(children, row.child()), row.entry()).stream().map(c -> cell(c, keys))
                .toList();
    }

    @PostMapping("/api/checks/{id}/absent")
    Map<String, Object> absent(@PathVariable UUID id, @RequestBody SentRow row) {
        Map<String, ChildRow> children = children(id);
        UUID child = known(children, row.child());
        CheckSitting was = checks.sheet(id).sitting(child);
        checks.sit(id, child, new CheckSitting(row.absent(), row.absent() ? null : was.satOn(), was.accommodation()));
        return Map.of("absent", row.absent());
    }

    private Map<String, ChildRow> children(UUID checkId) {
        return roster.children(checks.classOf(checkId)).stream()
                .collect(Collectors.toMap(ChildRow::schoolKey, Function.identity(), (a, b) -> a));
    }

    private static UUID known(Map<String, ChildRow> children, String key) {
        ChildRow child = children.get(key);
        if (child == null) {
            throw new NotVisible();
        }
        return child.childId();
    }

    @ExceptionHandler(IllegalArgumentException.class)
    ResponseEntity<?> wrong(IllegalArgumentException wrong, HttpServletRequest request) {
        return error(HttpStatus.BAD_REQUEST, Problem.of(wrong).in(ReaderLanguage.of(request)));
    }

    private static ResponseEntity<?> error(HttpStatus status, String words) {
        return ResponseEntity.status(status).body(Map.of("error", words));
    }
}
