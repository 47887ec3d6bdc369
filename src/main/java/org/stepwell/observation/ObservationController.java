package org.stepwell.observation;

import io.github.bucket4j.Bucket;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.format.annotation.DateTimeFormat.ISO;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.problem.Problem;
import org.stepwell.observation.IncomingLooks.Incoming;
import org.stepwell.observation.ObservationService.Outcome;
import org.stepwell.observation.ObservationService.Taken;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.ReaderLanguage;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;
import org.stepwell.roster.RosterService;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Looks over HTTP, safe to send again any number of times. */
@RestController
class ObservationController {
    private static final int MOST_ITEMS = 500;
    private static final int MOST_BYTES = 4 * 1024 * 1024;
    private static final int REQUESTS_AT_ONCE = 600;

    private final ObservationService observations;
    private final RosterService roster;
    private final CurrentAdult current;
    private final JsonMapper json;
    private final SealedLooks sealed;
    private final AccessRecordService record;
    private final Map<UUID, Bucket> buckets = new ConcurrentHashMap<>();

    ObservationController(ObservationService observations, RosterService roster, CurrentAdult current,
            JsonMapper json, SealedLooks sealed, AccessRecordService record) {
        this.observations = observations;
        this.roster = roster;
        this.current = current;
        this.json = json;
        this.sealed = sealed;
        this.record = record;
    }

    @GetMapping("/api/children")
    List<Map<String, Object>> children() {
        Map<UUID, String> names = new LinkedHashMap<>();
        roster.classes().forEach(c -> names.put(c.classId(), c.name()));
        return roster.children().stream().map(c -> Map.<String, Object>of("child", c.schoolKey(),
                "given_name", c.givenName(), "class", names.getOrDefault(c.classId(), ""))).toList();
    }

    @PostMapping("/api/observations")
    ResponseEntity<?> record(HttpServletRequest request) throws IOException {
        Bucket bucket = buckets.computeIfAbsent(current.get().adultId(), id -> Bucket.builder().addLimit(
                limit -> limit.capacity(REQUESTS_AT_ONCE).refillGreedy(10, Duration.ofSeconds(1))).build());
        if (!bucket.tryConsume(1)) {
            return ResponseEntity.status(HttpStatus.TOO_MANY_REQUESTS).header("Retry-After", "10")
                    .body(Map.of("error", "too many requests; wait ten seconds"));
        }
        byte[] body = request.getInputStream().readNBytes(MOST_BYTES + 1);
        if (body.length > MOST_BYTES) {
            return error(HttpStatus.CONTENT_TOO_LARGE, "more than 4 MB at once; send fewer looks");
        }
        JsonNode array;
        try {
            array = json.readTree(body);
        } catch (JacksonException wrong) {
            return error(HttpStatus.BAD_REQUEST, "this is not JSON");
        }
        if (array == null || !array.isArray()) {
            return error(HttpStatus.BAD_REQUEST, "a JSON array of looks is expected");
        }
        if (array.size() > MOST_ITEMS) {
            return error(HttpStatus.CONTENT_TOO_LARGE, "more than 500 looks at once; send them in parts");
        }
        return ResponseEntity.ok(answers(IncomingLooks.read(sealed.open(array), current.get().signIn()),
                ReaderLanguage.of(request)));
    }

    private List<Map<String, Object>> answers(List<Incoming> incoming, Locale reader) {
        List<Look> looks = incoming.stream().map(Incoming::look).filter(java.util.Objects::nonNull).toList();
        List<Taken> taken = taken(looks);
        List<Map<String, Object>> answers = new ArrayList<>();
        int next = 0;
        for (Incoming item : incoming) {
            Taken one = item.look() == null ? new Taken(Outcome.REFUSED, item.reason()) : taken.get(next++);
            Map<String, Object> answer = new LinkedHashMap<>();
            put(answer, "id", item.id());
            answer.put("status", one.outcome().name().toLowerCase(Locale.ROOT));
            Problem reason = one.reason();
            put(answer, "reason", reason == null ? null : reason.in(reader));
            answers.add(answer);
        }
        return answers;
    }

    /** A child may be erased while its look waits at the store; asked again, the look is refused by that name. */
    private List<Taken> taken(List<Look> looks) {
        try {
            return observations.record(looks, true);
        } catch (DataIntegrityViolationException gone) {
            return observations.record(looks, true);
        }
    }

    @GetMapping("/api/observations")
    List<Map<String, Object>> find(@RequestParam(required = false) @Nullable String child,
            @RequestParam(required = false) @Nullable String skill,
            @RequestParam(required = false) @DateTimeFormat(iso = ISO.DATE) @Nullable LocalDate from,
            @RequestParam(required = false) @DateTimeFormat(iso = ISO.DATE) @Nullable LocalDate to) {
        try {
            return observations.findToGoOut(emptyAsNull(child), emptyAsNull(skill), from, to).stream()
                    .map(ObservationController::shown).toList();
        } catch (NotVisible closed) {
            record.denied(String.valueOf(child), Seen.LOOKS_FILE);
            throw closed;
        }
    }

    private static Map<String, Object> shown(ObservationLine line) {
        Look look = line.look();
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("id", look.id());
        all.put("observed_at", look.observedAt());
        all.put("child", look.child());
        put(all, "skill", look.skill());
        put(all, "task", look.task());
        put(all, "step", look.step());
        all.put("help", look.help().code());
        all.put("kind", look.kind().code());
        all.put("observer", look.observer());
        all.put("tags", look.tags());
        put(all, "note", look.note());
        put(all, "replaces", look.replaces());
        put(all, "clock_offset_ms", look.clockOffsetMs());
        all.put("recorded_at", line.recordedAt());
        put(all, "replaced_by", line.replacedBy());
        all.put("withdrawn", look.withdrawn() || line.withdrawnBy());
        all.put("waiting", line.waiting());
        all.put("clock_flagged", line.wildClock());
        return all;
    }

    private static void put(Map<String, Object> map, String key, @Nullable Object value) {
        map.put(key, value);
    }

    private static @Nullable String emptyAsNull(@Nullable String text) {
        return text == null || text.isEmpty() ? null : text;
    }

    private static ResponseEntity<?> error(HttpStatus status, String words) {
        return ResponseEntity.status(status).body(Map.of("error", words));
    }
}
