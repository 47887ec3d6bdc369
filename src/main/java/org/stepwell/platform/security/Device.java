package org.stepwell.platform.security;

import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What a browser says it is, cut down to what an adult can tell devices apart by. */
final class Device {
    /** In this order, since most browsers name others too. */
    private static final Map<String, String> BROWSERS = Stream.of(new String[][] {{"Edg", "Edge"}, {"OPR/", "Opera"},
            {"Firefox/", "Firefox"}, {"FxiOS/", "Firefox"}, {"CriOS/", "Chrome"}, {"Chrome/", "Chrome"},
            {"Safari/", "Safari"}}).collect(Collectors.toMap(a -> a[0], a -> a[1], (a, b) -> a,
                    java.util.LinkedHashMap::new));
    private static final Map<String, String> SYSTEMS = Stream.of(new String[][] {{"iPad", "iPad"}, {"iPhone", "iPhone"},
            {"Android", "Android"}, {"CrOS", "ChromeOS"}, {"Windows", "Windows"}, {"Mac OS X", "macOS"},
            {"Linux", "Linux"}}).collect(Collectors.toMap(a -> a[0], a -> a[1], (a, b) -> a,
                    java.util.LinkedHashMap::new));

    private Device() {
    }

    /** Browser and system, such as {@code Firefox, Windows}; empty when neither is known. Holds no word of the header. */
    static String named(@Nullable String userAgent) {
        return userAgent == null ? "" : Stream.of(first(BROWSERS, userAgent), first(SYSTEMS, userAgent))
                .filter(name -> !name.isEmpty()).collect(Collectors.joining(", "));
    }

    private static String first(Map<String, String> names, String userAgent) {
        return names.entrySet().stream().filter(name -> userAgent.contains(name.getKey())).map(Map.Entry::getValue)
                .findFirst().orElse("");
    }
}
