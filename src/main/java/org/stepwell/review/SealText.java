package org.stepwell.review;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.review.SealedReview.Line;
import org.stepwell.tier.ClassPicture.OneChild;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The text of a seal and its digest. */
@Component
class SealText {
    private final JsonMapper json;

    SealText(JsonMapper json) {
        this.json = json;
    }

    String write(OpenReview review, Map<UUID, String> tellers) {
        List<Map<String, Object>> children = new ArrayList<>();
        for (OneChild child : review.picture().children()) {
            Choice choice = review.choice(child.row().childId()).orElseThrow();
            Suggestion said = review.suggestion(child);
            Map<String, Object> line = new LinkedHashMap<>();
            line.put("child_id", child.row().childId());
            line.put("from", child.state().tier().code());
            line.put("to", choice.tier().code());
            line.put("suggested", said.suggested().code());
            line.put("verdict", said.verdict().code());
            line.put("rule", said.rule());
            line.put("chance", said.chance());
            line.put("looks", said.looks());
            line.put("days", said.days());
            line.put("versions", said.versions().rules() + " " + said.versions().rulesVersion() + ", parameters "
                    + said.versions().parametersVersion());
            line.put("look_ids", review.picture().looks().stream()
                    .filter(look -> look.child().equals(child.row().schoolKey())).map(Look::id).toList());
            line.put("choice", choice.kind().code());
            line.put("suggested_when_chosen", choice.suggested().code());
            line.put("own_call", review.ownCall(child.row().childId()).map(c -> c.tier().code()).orElse(null));
            line.put("until", choice.until() == null ? null : choice.until().toString());
            line.put("reason", choice.reason());
            line.put("by", choice.by());
            line.put("chosen_at", choice.at().toString());
            line.put("teller", tellers.getOrDefault(child.row().childId(), "").strip());
            children.add(line);
        }
        return json.writeValueAsString(Map.of("children", children));
    }

    List<Line> read(String content) {
        List<Line> lines = new ArrayList<>();
        for (JsonNode child : json.readTree(content).path("children")) {
            JsonNode until = child.path("until");
            lines.add(new Line(UUID.fromString(text(child, "child_id")), Tier.of(text(child, "from")),
                    Tier.of(text(child, "to")), Tier.of(text(child, "suggested")), text(child, "verdict"),
                    text(child, "choice"), until.isString() ? LocalDate.parse(until.stringValue()) : null,
                    text(child, "reason"), text(child, "by"), text(child, "teller"), child.path("looks").intValue(),
                    child.path("days").intValue(), child.path("chance").doubleValue(), text(child, "versions"), ids(child)));
        }
        return lines;
    }

    private static Set<UUID> ids(JsonNode child) {
        Set<UUID> ids = new HashSet<>();
        child.path("look_ids").forEach(id -> ids.add(UUID.fromString(id.stringValue(""))));
        return ids;
    }

    private static String text(JsonNode child, String name) {
        return child.path(name).stringValue("");
    }

    String digest(String content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256")
                    .digest(content.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("the Java platform has no SHA-256", e);
        }
    }
}
