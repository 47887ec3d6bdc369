package org.stepwell.core.evidence;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Lines {@code key = value} with comments after {@code #}. Problems are gathered, each with line and key, and told
 * together by {@link #finish()}.
 */
final class ParameterText {
    private static final double SUM_TOLERANCE = 1e-9;

    private record Entry(int line, String value) {}

    private final String name;
    private final Map<String, Entry> entries = new LinkedHashMap<>();
    private final Set<String> asked = new HashSet<>();
    private final List<String> problems = new ArrayList<>();

    ParameterText(String text, String name) {
        this.name = name;
        String[] lines = text.split("\\R", -1);
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].replaceFirst("#.*", "").strip();
            if (line.isEmpty()) {
                continue;
            }
            int sign = line.indexOf('=');
            if (sign < 1) {
                problems.add("line " + (i + 1) + ": \"" + line + "\" is not of the form key = value");
                continue;
            }
            String key = line.substring(0, sign).strip();
            Entry earlier = entries.putIfAbsent(key, new Entry(i + 1, line.substring(sign + 1).strip()));
            if (earlier != null) {
                problems.add("line " + (i + 1) + ": " + key + " was already given on line " + earlier.line());
            }
        }
    }

    String word(String key) {
        Entry entry = take(key);
        if (entry == null) {
            return "";
        }
        if (entry.value().isEmpty()) {
            problem(entry, key, "must not be empty");
        }
        return entry.value();
    }

    double number(String key, double least, double most) {
        double[] one = numbers(key, 1, 1, least, most);
        return one.length == 1 ? one[0] : least;
    }

    int whole(String key, int least, int most) {
        double value = number(key, least, most);
        if (value != StrictMath.rint(value)) {
            problem(entries.get(key), key, "must be a whole number of " + least + " to " + most);
        }
        return (int) value;
    }

    double[] numbers(String key, int fewest, int mostMany, double least, double most) {
        Entry entry = take(key);
        if (entry == null) {
            return new double[0];
        }
        String[] words = entry.value().isEmpty() ? new String[0] : entry.value().split("\\s+");
        if (words.length < fewest || words.length > mostMany) {
            String many = fewest == mostMany ? String.valueOf(fewest) : fewest + " to " + mostMany;
            problem(entry, key, "needs " + many + " number" + (mostMany == 1 ? "" : "s") + ", not " + words.length);
            return new double[0];
        }
        double[] values = new double[words.length];
        for (int i = 0; i < words.length; i++) {
            try {
                values[i] = Double.parseDouble(words[i]);
            } catch (NumberFormatException e) {
                problem(entry, key, "\"" + words[i] + "\" is not a number");
                return new double[0];
            }
            if (!(values[i] >= least && values[i] <= most)) {
                problem(entry, key, words[i] + " is not in " + least + " to " + most);
            }
        }
        return values;
    }

    void sumsToOne(String key, double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        if (values.length > 0 && !(Math.abs(sum - 1) <= SUM_TOLERANCE)) {
            problem(entries.get(key), key, "must add up to 1, not " + sum);
        }
    }

    /** @throws IllegalArgumentException with all problems, one a line; also for keys nobody asked for */
    void finish() {
        entries.forEach((key, entry) -> {
            if (!asked.contains(key)) {
                problem(entry, key, "is not a known key");
            }
        });
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(name + ":\n  " + String.join("\n  ", problems));
        }
    }

    private @Nullable Entry take(String key) {
        asked.add(key);
        Entry entry = entries.get(key);
        if (entry == null) {
            problems.add("key " + key + " is missing");
        }
        return entry;
    }

    private void problem(@Nullable Entry entry, String key, String what) {
        problems.add((entry == null ? "" : "line " + entry.line() + ": ") + key + " " + what);
    }
}
