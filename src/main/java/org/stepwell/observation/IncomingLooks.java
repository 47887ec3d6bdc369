package org.stepwell.observation;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.problem.Problem;
import org.stepwell.core.problem.Refused;
import tools.jackson.databind.JsonNode;

/** Reads looks as the tablet sends them: objects with the names of the file's columns. */
final class IncomingLooks {
    private static final int LONGEST_CODE = 200;

    private IncomingLooks() {
    }

    /** One object: a look, or what is wrong with it. */
    record Incoming(@Nullable String id, @Nullable Look look, @Nullable Problem reason) {}

    static List<Incoming> read(JsonNode array, String observer) {
        List<Incoming> all = new ArrayList<>();
        for (JsonNode item : array) {
            String id = item.isObject() && item.path("id").isString() ? item.path("id").stringValue() : null;
            try {
                if (!item.isObject()) {
                    throw new Refused("look.not-object");
                }
                if (item.path(SealedLooks.BROKEN).isString()) {
                    throw new IllegalArgumentException(item.path(SealedLooks.BROKEN).stringValue());
                }
                all.add(new Incoming(id, look(item, observer), null));
            } catch (IllegalArgumentException wrong) {
                all.add(new Incoming(id, null, Problem.of(wrong)));
            }
        }
        return all;
    }

    private static Look look(JsonNode item, String observer) {
        String help = text(item, "help");
        return new Look(named("id", () -> ObservationCsv.uuid(required(item, "id"))),
                named("observed_at", () -> ObservationCsv.instant(required(item, "observed_at"))),
                required(item, "child"), text(item, "skill"), text(item, "task"), step(item),
                help == null ? Help.NONE : Help.of(help), Kind.of(required(item, "kind")), observer, tags(item),
                note(item), replaces(item), truth(item), offset(item));
    }

    private static <T> T named(String field, java.util.function.Supplier<T> read) {
        try {
            return read.get();
        } catch (IllegalArgumentException wrong) {
            throw new Refused("look.field", field, Problem.of(wrong));
        }
    }

    private static @Nullable String text(JsonNode item, String field) {
        JsonNode node = item.path(field);
        if (node.isMissingNode() || node.isNull()) {
            return null;
        }
        if (node.isNumber()) {
            return node.asString();
        }
        if (!node.isString()) {
            throw new Refused("look.text", field);
        }
        String text = node.stringValue();
        if (text.indexOf('\0') >= 0) {
            throw new Refused("look.unstorable", field);
        }
        if (!field.equals("note") && text.length() > (field.equals("task") ? 100 : LONGEST_CODE)) {
            throw new Refused("look.long", field);
        }
        return text.isEmpty() ? null : text;
    }

    private static String required(JsonNode item, String field) {
        String text = text(item, field);
        if (text == null) {
            throw new Refused("look.missing", field);
        }
        return text;
    }

    private static @Nullable Integer step(JsonNode item) {
        JsonNode node = item.path("step");
        if (node.isMissingNode() || node.isNull() || node.isString() && node.stringValue().isEmpty()) {
            return null;
        }
        if (!node.isIntegralNumber() || !node.canConvertToInt()) {
            throw new Refused("look.step-number");
        }
        return node.intValue();
    }

    private static Set<String> tags(JsonNode item) {
        JsonNode node = item.path("tags");
        if (!node.isArray()) {
            String text = text(item, "tags");
            return text == null ? Set.of() : ObservationCsv.tags(text);
        }
        Set<String> tags = new TreeSet<>();
        for (JsonNode tag : node) {
            if (!tag.isString() || tag.stringValue().length() > LONGEST_CODE || tag.stringValue().indexOf('\0') >= 0) {
                throw new Refused("look.tags");
            }
            tags.addAll(ObservationCsv.tags(tag.stringValue()));
        }
        return tags;
    }

    private static @Nullable String note(JsonNode item) {
        String note = text(item, "note");
        if (note != null && note.length() > ObservationCsv.LONGEST_NOTE) {
            throw new Refused("look.note", note.length(), ObservationCsv.LONGEST_NOTE);
        }
        return note;
    }

    private static @Nullable UUID replaces(JsonNode item) {
        String text = text(item, "replaces");
        return text == null ? null : named("replaces", () -> ObservationCsv.uuid(text));
    }

    private static boolean truth(JsonNode item) {
        JsonNode node = item.path("withdrawn");
        return node.isBoolean() ? node.booleanValue() : "true".equals(text(item, "withdrawn"));
    }

    private static @Nullable Long offset(JsonNode item) {
        JsonNode node = item.path("clock_offset_ms");
        return node.isNumber() ? Long.valueOf(Math.round(node.doubleValue())) : null;
    }
}
