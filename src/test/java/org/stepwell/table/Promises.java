package org.stepwell.table;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What was tapped and what the screen has said about it since; and whether the store keeps what the screen promised.
 * Each look carries a task of its own, so that a sentence on the screen and a row in the store can be matched without
 * knowing how the page keeps anything.
 */
final class Promises {
    private static final Pattern SAID = Pattern.compile(
            "(Saved on this tablet|On the server|Taken back|NOT saved).*?(%s\\d+)(?: .*)?");

    private static final AtomicInteger RUNS = new AtomicInteger();

    private final String mark;
    private final Pattern said;
    private final Map<String, Tap> taps = new LinkedHashMap<>();
    private final Set<String> saved = new HashSet<>();
    private final Set<String> onServer = new HashSet<>();
    private final Set<String> outOfLine = new HashSet<>();
    private int next;

    /** With a mark that no other run of this program has. */
    Promises() {
        this("p" + RUNS.incrementAndGet() + "x");
    }

    /** @param mark letters with which every task of this run begins, and no other task does */
    Promises(String mark) {
        this.mark = mark;
        this.said = Pattern.compile(SAID.pattern().formatted(mark));
    }

    /** One tap as it was meant. */
    record Tap(String token, String child, int step, String adult, LocalDate day) {}

    /** What is wrong with the store, each in words with the token of the look. */
    record Verdict(List<String> lost, List<String> doubled, List<String> wrong, List<String> unordered,
            List<String> phantoms) {
        boolean clean() {
            return lost.isEmpty() && doubled.isEmpty() && wrong.isEmpty() && unordered.isEmpty() && phantoms.isEmpty();
        }
    }

    String mark() {
        return mark;
    }

    /** A task that no look has had. */
    String nextToken() {
        next++;
        return mark + next;
    }

    void tapped(Tap tap) {
        taps.put(tap.token(), tap);
    }

    /** Takes a sentence that the screen showed about the newest look. */
    void hear(String sentence) {
        Matcher words = said.matcher(sentence);
        if (!words.matches()) {
            return;
        }
        String token = words.group(2);
        switch (words.group(1)) {
            case "Saved on this tablet" -> saved.add(token);
            case "On the server" -> {
                saved.add(token);
                onServer.add(token);
            }
            default -> {
                saved.remove(token);
                onServer.remove(token);
            }
        }
    }

    /** A look that the teacher sent again by hand may stand behind later ones. */
    void mayStandLater(String token) {
        outOfLine.add(token);
    }

    int tapCount() {
        return taps.size();
    }

    /** How many looks the screen called saved. */
    int savedCount() {
        return saved.size();
    }

    boolean calledSaved(String token) {
        return saved.contains(token);
    }

    /**
     * Whether the screen says no more than what is true now.
     *
     * @param waiting how many looks the screen says are not on the server
     * @return every sentence that says too much
     */
    List<String> overstated(List<StoredLooks.Row> rows, int waiting) {
        Set<String> there = new HashSet<>();
        rows.forEach(row -> there.add(row.token()));
        List<String> tooMuch = new ArrayList<>();
        onServer.stream().filter(token -> !there.contains(token))
                .forEach(token -> tooMuch.add(token + " is called on the server and is not"));
        long missing = saved.stream().filter(token -> !there.contains(token)).count();
        if (missing > waiting) {
            tooMuch.add(missing + " looks called saved are not on the server, the screen counts " + waiting);
        }
        return tooMuch;
    }

    /** Everything called saved must be there once, as it was meant, in the order of the taps of each adult. */
    Verdict against(List<StoredLooks.Row> rows) {
        Verdict found = new Verdict(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>(),
                new ArrayList<>());
        Map<String, StoredLooks.Row> there = new HashMap<>();
        Map<String, Integer> newest = new HashMap<>();
        for (StoredLooks.Row row : rows) {
            if (there.put(row.token(), row) != null) {
                found.doubled().add(row.token());
            }
            Tap tap = taps.get(row.token());
            if (tap == null) {
                found.phantoms().add(row.token());
                continue;
            }
            if (!tap.child().equals(row.child()) || tap.step() != row.step() || !tap.adult().equals(row.adult())
                    || !tap.day().equals(row.day())) {
                found.wrong().add(tap + " became " + row);
            }
            int place = Integer.parseInt(row.token().substring(mark.length()));
            if (!outOfLine.contains(row.token()) && newest.merge(row.adult(), place, Math::max) > place) {
                found.unordered().add(row.token() + " after " + newest.get(row.adult()));
            }
        }
        saved.stream().filter(token -> !there.containsKey(token)).forEach(found.lost()::add);
        return found;
    }
}
