package org.stepwell;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Requests made from a seed: words that break things, ids that are there, bodies that are nearly what is expected. */
final class FuzzedRequests {
    private static final Pattern HOLE = Pattern.compile("\\{[^}]+}");
    private static final List<String> FIELDS = List.of("id", "child", "class", "device", "item", "entry", "seen", "mark",
            "absent", "skill", "step", "kind", "district_id", "adultId", "note", "observed_at", "__proto__");
    private static final List<String> WORDS = List.of("", " ", "x", "0", "-1", "99999999999999999999", "1e999", "null",
            "2026-02-30", "9999-12-31", "-999999999-01-01", "' or '1'='1", "\"; drop table child; --", "%00", "\u0000",
            "..", "../../etc/passwd", "<script>alert(1)</script>", "\r\nX-Own: 1", "\uD83E\uDDEE", "\u202Eabc",
            "=1+1", "{}", "[]", "a".repeat(3000), "true", "es", "pdf", "csv");

    private final Random random;
    private final List<String> known;

    /** @param known ids that are there and that whoever asks may see */
    FuzzedRequests(long seed, List<String> known) {
        this.random = new Random(seed);
        this.known = known;
    }

    /** One of them. */
    <T> T any(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }

    private String word() {
        return random.nextInt(4) == 0 ? new UUID(random.nextLong(), random.nextLong()).toString() : any(WORDS);
    }

    private static String coded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }

    /** A path for a route as {@code GET /api/checks/{id}}, its holes filled, with up to two parameters. */
    String path(String route) {
        // A file that is really made takes long; making files is for other tests.
        int rare = route.endsWith(".pdf") || route.endsWith(".zip") ? 300 : 10;
        Matcher holes = HOLE.matcher(route.substring(route.indexOf(' ') + 1));
        StringBuilder path = new StringBuilder(holes.replaceAll(hole -> Matcher.quoteReplacement(coded(
                random.nextInt(rare) == 0 ? any(known) : word()))));
        for (int i = random.nextInt(3); i > 0; i--) {
            path.append(path.indexOf("?") < 0 ? '?' : '&').append(any(FIELDS)).append('=')
                    .append(coded(random.nextInt(10) == 0 ? any(known) : word()));
        }
        return path.toString();
    }

    private static String quoted(String text) {
        StringBuilder json = new StringBuilder("\"");
        text.chars().forEach(c -> json.append(c < ' ' || c == '"' || c == '\\' ? "\\u%04x".formatted(c)
                : String.valueOf((char) c)));
        return json.append('"').toString();
    }

    private String json(int depth) {
        return switch (random.nextInt(depth > 3 ? 4 : 7)) {
            case 0 -> any(List.of("null", "true", "-1", "1e400", "3.7", "99999999999999999999"));
            case 1, 2 -> quoted(word());
            case 3 -> any(List.of("[]", "{}", "\"\""));
            case 4 -> "[" + json(depth + 1) + "," + json(depth + 1) + "]";
            default -> "{" + quoted(any(FIELDS)) + ":" + json(depth + 1) + "," + quoted(any(FIELDS)) + ":"
                    + json(depth + 1) + "}";
        };
    }

    /** Something like JSON. */
    String body() {
        String body = json(0);
        return switch (random.nextInt(10)) {
            case 0 -> body.substring(0, random.nextInt(body.length() + 1));
            case 1 -> "[".repeat(2000) + body;
            default -> body;
        };
    }
}
