package org.stepwell.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Reads {@code A:B,C:D}. Ids may hold colons and commas: a reading counts when every id in it is known, and when just
 * one does it is taken. Where several would do, or for clarity, a backslash before {@code :}, {@code ,} or another
 * backslash takes that character as part of the id.
 */
final class PairText {
    private static final int MOST_READINGS = 2;

    private final Set<String> known;
    private final List<String> parts = new ArrayList<>();
    private final List<Character> marks = new ArrayList<>();

    private PairText(Set<String> known) {
        this.known = known;
    }

    /** Two ids. */
    record Pair(String one, String other) {}

    /**
     * The pairs of a text.
     *
     * @param known ids there are; others are taken as they stand when only one reading is possible at all
     * @throws IllegalArgumentException when it is no list of pairs, or can be read in several ways
     */
    static List<Pair> read(String text, Set<String> known) {
        PairText reader = new PairText(known);
        reader.split(text);
        List<List<Pair>> readings = new ArrayList<>();
        reader.readings(0, new ArrayList<>(), readings);
        if (readings.size() == 1) {
            return readings.getFirst();
        }
        if (readings.size() > 1) {
            throw new IllegalArgumentException("\"" + text + "\" can be read in several ways; put a backslash before"
                    + " each colon and comma that belongs to an id");
        }
        return reader.plain(text);
    }

    private void split(String text) {
        StringBuilder part = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char here = text.charAt(i);
            if (here == '\\' && i + 1 < text.length() && ":,\\".indexOf(text.charAt(i + 1)) >= 0) {
                part.append(text.charAt(++i));
            } else if (here == ':' || here == ',') {
                parts.add(part.toString());
                marks.add(here);
                part.setLength(0);
            } else {
                part.append(here);
            }
        }
        parts.add(part.toString());
    }

    /** All ways to read the rest from a part on as pairs of known ids, up to as many as matter. */
    private void readings(int from, List<Pair> sofar, List<List<Pair>> found) {
        if (found.size() >= MOST_READINGS) {
            return;
        }
        if (from == parts.size()) {
            found.add(List.copyOf(sofar));
            return;
        }
        for (int colon = from; colon < marks.size(); colon++) {
            String one = id(from, colon);
            if (marks.get(colon) == ':' && known.contains(one)) {
                for (int end = colon + 1; end < parts.size(); end++) {
                    String other = id(colon + 1, end);
                    if ((end == marks.size() || marks.get(end) == ',') && known.contains(other)) {
                        sofar.add(new Pair(one, other));
                        readings(end + 1, sofar, found);
                        sofar.removeLast();
                    }
                }
            }
        }
    }

    /** The text from one part to another, marks between them included; spaces around it only where they belong. */
    private String id(int from, int to) {
        StringBuilder id = new StringBuilder(parts.get(from));
        for (int i = from; i < to; i++) {
            id.append(marks.get(i).charValue()).append(parts.get(i + 1));
        }
        String exact = id.toString();
        return known.contains(exact) ? exact : exact.strip();
    }

    private List<Pair> plain(String text) {
        List<Pair> pairs = new ArrayList<>();
        int from = 0;
        for (int end = 0; end < parts.size(); end++) {
            if (end == marks.size() || marks.get(end) == ',') {
                if (end - from != 1 || parts.get(from).isBlank() || parts.get(end).isBlank()) {
                    throw new IllegalArgumentException("\"" + text + "\" is no list of pairs like A:B,C:D");
                }
                pairs.add(new Pair(id(from, from), id(end, end)));
                from = end + 1;
            }
        }
        return pairs;
    }
}
