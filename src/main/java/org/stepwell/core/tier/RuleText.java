package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads the text of a rule file. Problems are gathered, each with line and key, and told together. */
final class RuleText {
    private static final Pattern CONDITION =
            Pattern.compile("(\\S+)\\s+(at least|at most|more than)\\s+(\\S+)(?:\\s+at\\s+(\\S+)\\s+reviews?)?");
    private static final Pattern RULE = Pattern.compile("(\\S+)\\s+from\\s+(.+?)\\s+to\\s+(\\S+)");
    private static final int MOST_REVIEWS = 6;

    private record Value(int line, String text) {}

    private record Open(int line, String id, Set<Tier> from, Tier to, List<Requirement> needs) {}

    private final String text;
    private final String name;
    private final List<String> problems = new ArrayList<>();
    private final Map<String, Value> values = new LinkedHashMap<>();
    private final Set<String> asked = new HashSet<>();
    private final List<Requirement> enough = new ArrayList<>();
    private final List<Requirement> newcomers = new ArrayList<>();
    private final List<Open> rules = new ArrayList<>();

    RuleText(String text, String name) {
        this.text = text;
        this.name = name;
    }

    RuleFile read() {
        String[] lines = text.split("\\R", -1);
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].replaceFirst("#.*", "").strip();
            if (!line.isEmpty()) {
                take(i + 1, line);
            }
        }
        String fileName = word("name");
        String version = word("version");
        RuleSettings settings = settings();
        check();
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(name + ":\n  " + String.join("\n  ", problems));
        }
        List<Rule> done = rules.stream()
                .map(r -> new Rule(r.id(), r.from(), r.to(), r.needs()))
                .toList();
        return new RuleFile(fileName, version, settings, enough, newcomers, done);
    }

    private void take(int line, String words) {
        String[] halves = words.split("\\s+", 2);
        String rest = halves.length == 2 ? halves[1] : "";
        switch (halves[0]) {
            case "set" -> value(line, rest);
            case "enough" -> condition(line, rest, Requirement.Part.ENOUGH, enough);
            case "newcomer" -> condition(line, rest, Requirement.Part.ENOUGH, newcomers);
            case "rule" -> rule(line, rest);
            case "needs", "judged" -> {
                Requirement.Part part =
                        halves[0].equals("needs") ? Requirement.Part.NEEDS : Requirement.Part.JUDGED;
                if (rules.isEmpty()) {
                    problems.add("line " + line + ": " + halves[0] + " must stand below a rule");
                } else {
                    condition(line, rest, part, rules.getLast().needs());
                }
            }
            default -> value(line, words);
        }
    }

    private void value(int line, String words) {
        int sign = words.indexOf('=');
        if (sign < 1) {
            problems.add("line " + line + ": \"" + words
                    + "\" is none of: key = value, set, enough, newcomer, rule, needs, judged");
            return;
        }
        String key = words.substring(0, sign).strip();
        Value earlier = values.putIfAbsent(key, new Value(line, words.substring(sign + 1).strip()));
        if (earlier != null) {
            problems.add("line " + line + ": " + key + " was already given on line " + earlier.line());
        }
    }

    private void rule(int line, String words) {
        Matcher match = RULE.matcher(words);
        if (!match.matches()) {
            problems.add("line " + line + ": rule \"" + words + "\" is not of the form: rule NAME from TIER to TIER");
            return;
        }
        String id = match.group(1);
        if (!id.matches("[a-z][a-z0-9_]*")) {
            problems.add("line " + line + ": rule " + id + " must be small letters, digits and _");
        }
        if (rules.stream().anyMatch(r -> r.id().equals(id))) {
            problems.add("line " + line + ": rule " + id + " was already given");
        }
        Set<Tier> from = EnumSet.noneOf(Tier.class);
        for (String word : match.group(2).split("\\s*(?:,|\\bor\\b)\\s*")) {
            Tier tier = tier(line, id, word);
            if (tier != null) {
                from.add(tier);
            }
        }
        Tier to = tier(line, id, match.group(3));
        if (to != null && from.contains(to)) {
            problems.add("line " + line + ": rule " + id + " goes from " + to.code() + " to itself");
        }
        rules.add(new Open(line, id, from, to == null ? Tier.ON_LEVEL : to, new ArrayList<>()));
    }

    private @Nullable Tier tier(int line, String id, String word) {
        try {
            return Tier.of(word);
        } catch (IllegalArgumentException e) {
            problems.add("line " + line + ": rule " + id + ": " + e.getMessage());
            return null;
        }
    }

    private void condition(int line, String words, Requirement.Part part, List<Requirement> into) {
        Matcher match = CONDITION.matcher(words);
        if (!match.matches()) {
            problems.add("line " + line + ": \"" + words
                    + "\" is not of the form: MEASURE at least|at most|more than NUMBER [at N reviews]");
            return;
        }
        Measure measure = measure(line, match.group(1));
        if (measure == null) {
            return;
        }
        Double threshold = number(line, measure.code(), match.group(3), 0, measure.most());
        Double reviews = match.group(4) == null ? Double.valueOf(1) : number(line, measure.code() + " at N reviews",
                match.group(4), 1, MOST_REVIEWS);
        if (part == Requirement.Part.ENOUGH && match.group(4) != null) {
            problems.add("line " + line + ": " + measure.code() + " is asked for now, not at reviews");
        }
        if (into.stream().anyMatch(r -> r.measure() == measure)) {
            problems.add("line " + line + ": " + measure.code() + " was already asked for here");
        }
        if (threshold == null || reviews == null) {
            return;
        }
        if (reviews != StrictMath.rint(reviews)) {
            problems.add("line " + line + ": " + measure.code() + " at N reviews must be a whole number");
        }
        into.add(new Requirement(part, measure, comparison(match.group(2)), threshold, reviews.intValue(), line));
    }

    private static Requirement.Comparison comparison(String words) {
        for (Requirement.Comparison one : Requirement.Comparison.values()) {
            if (one.words().equals(words)) {
                return one;
            }
        }
        throw new IllegalStateException(words);
    }

    private @Nullable Measure measure(int line, String word) {
        for (Measure measure : Measure.values()) {
            if (measure.code().equals(word)) {
                return measure;
            }
        }
        List<String> known = java.util.Arrays.stream(Measure.values()).map(Measure::code).toList();
        problems.add("line " + line + ": " + word.toLowerCase(Locale.ROOT) + " is not a known measure; known are "
                + String.join(", ", known));
        return null;
    }

    private @Nullable Double number(int line, String key, String word, double least, double most) {
        try {
            double value = Double.parseDouble(word);
            if (value >= least && value <= most) {
                return value;
            }
            problems.add(
                    "line " + line + ": " + key + " " + word + " is not in " + plain(least) + " to " + plain(most));
        } catch (NumberFormatException e) {
            problems.add("line " + line + ": " + key + " \"" + word + "\" is not a number");
        }
        return null;
    }

    private static String plain(double value) {
        return value == StrictMath.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }

    private String word(String key) {
        asked.add(key);
        Value value = values.get(key);
        if (value == null) {
            problems.add("key " + key + " is missing");
            return "";
        }
        if (!value.text().matches("[A-Za-z0-9._-]{1,40}")) {
            problems.add("line " + value.line() + ": " + key + " \"" + value.text()
                    + "\" must be 1 to 40 letters, digits, dots, dashes or _");
        }
        return value.text();
    }

    private RuleSettings settings() {
        int days = whole("signal.days", 1, 20);
        DaySignal.Window signal = new DaySignal.Window(
                days, whole("signal.meets", 1, 20), whole("signal.below", 0, 19), whole("signal.fewest", 1, 20));
        if (signal.below() >= signal.meets() || signal.meets() > days || signal.fewest() > days) {
            problems.add("signal.below must be less than signal.meets, and signal.meets and signal.fewest at most "
                    + "signal.days");
        }
        return new RuleSettings(
                whole("window.days", 1, 250),
                signal,
                whole("free.step", 1, 5),
                whole("extension.step", 1, 5),
                given("settled.chance", 0.5, 1),
                given("dip.share", 0, 1));
    }

    private int whole(String key, int least, int most) {
        double value = given(key, least, most);
        if (value != StrictMath.rint(value)) {
            problems.add("line " + values.get(key).line() + ": " + key + " must be a whole number");
        }
        return (int) value;
    }

    private double given(String key, double least, double most) {
        asked.add(key);
        Value value = values.get(key);
        if (value == null) {
            problems.add("key " + key + " is missing");
            return least;
        }
        Double number = number(value.line(), key, value.text(), least, most);
        return number == null ? least : number;
    }

    private void check() {
        values.forEach((key, value) -> {
            if (!asked.contains(key)) {
                problems.add("line " + value.line() + ": " + key + " is not a known key");
            }
        });
        for (Open rule : rules) {
            if (rule.needs().isEmpty()) {
                problems.add("line " + rule.line() + ": rule " + rule.id() + " needs nothing and would always move");
            }
        }
        if (rules.isEmpty()) {
            problems.add("there is no rule");
        }
        if (enough.stream().noneMatch(r -> r.measure() == Measure.DUE_SKILLS && r.threshold() >= 2)) {
            problems.add("enough due_skills at least 2 is missing: there are no tiers before two skills are due");
        }
    }
}
