package org.stepwell.observation;

import java.util.Base64;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.stereotype.Component;
import org.stepwell.platform.security.SealKeyService;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Opens looks that a tablet sends as they lie there: {@code {"id": ..., "sealed": "1.KEY.NONCE.BOX"}}, nonce and box in
 * URL-safe Base64 without padding. The id is sealed together with the look, so that no box passes for another's.
 */
@Component
class SealedLooks {
    /** Property that carries why a sealed look could not be opened. */
    static final String BROKEN = "\u0000broken";
    private static final Pattern FORM =
            Pattern.compile("1\\.([0-9a-f-]{36})\\.([A-Za-z0-9_-]{16})\\.([A-Za-z0-9_-]{22,})");

    private final SealKeyService keys;
    private final JsonMapper json;

    SealedLooks(SealKeyService keys, JsonMapper json) {
        this.keys = keys;
        this.json = json;
    }

    /** The same array with every sealed look opened, or marked with why it cannot be. */
    JsonNode open(JsonNode array) {
        ArrayNode all = json.createArrayNode();
        array.forEach(item -> all.add(item.isObject() && item.path("sealed").isString() ? opened(item) : item));
        return all;
    }

    private JsonNode opened(JsonNode item) {
        String id = item.path("id").isString() ? item.path("id").stringValue() : "";
        try {
            Matcher form = FORM.matcher(item.path("sealed").stringValue());
            if (!form.matches()) {
                throw new IllegalArgumentException("sealed is not of the form 1.KEY.NONCE.BOX");
            }
            Base64.Decoder decoder = Base64.getUrlDecoder();
            JsonNode look = json.readTree(keys.open(UUID.fromString(form.group(1)), "look " + id,
                    decoder.decode(form.group(2)), decoder.decode(form.group(3)))).path("record");
            if (!look.isObject() || !id.equals(look.path("id").stringValue(""))) {
                throw new IllegalArgumentException("what was sealed is not the look of that id");
            }
            return look;
        } catch (IllegalArgumentException | JacksonException wrong) {
            ObjectNode broken = json.createObjectNode();
            broken.put("id", id);
            broken.put(BROKEN, wrong instanceof JacksonException ? "what was sealed is not JSON" : wrong.getMessage());
            return broken;
        }
    }
}
