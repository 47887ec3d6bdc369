package org.stepwell.core.wording.home;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.stepwell.core.wording.Language;

/**
 * Finds in a text for home the words that stay at school and the names of other children. The words stand in
 * {@code home/words_en.txt} and {@code home/words_es.txt}: one a line, {@code *} for any ending, {@code #} for a number.
 * Common practice, no source.
 */
public final class WordGuard {
    private static final Pattern MARKS = Pattern.compile("\\p{M}+");

    /** Why a word was found. */
    public enum Kind {
        /** It labels or compares a child: the page waits until an adult says it is meant. */
        BLOCKED,
        /** It is jargon or sounds like blame: worth a second look. */
        WARNED,
        /** It is the name of another child of the class. */
        CLASSMATE
    }

    /**
     * A word that was found.
     *
     * @param text as it stands in the text
     * @param kind why
     * @param at position of its first letter
     */
    public record Found(String text, Kind kind, int at) {}

    private record Entry(Pattern pattern, Kind kind) {}

    private final List<Entry> entries;

    private WordGuard(List<Entry> entries) {
        this.entries = entries;
    }

    /** The list that ships for a language. */
    public static WordGuard of(Language language) {
        String file = "/home/words_" + language.code() + ".txt";
        try (InputStream in = WordGuard.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException(file + " is missing");
            }
            return read(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Reads a list; lines after {@code [block]} and {@code [warn]}. */
    static WordGuard read(String text) {
        List<Entry> entries = new ArrayList<>();
        Kind kind = Kind.BLOCKED;
        for (String line : text.lines().map(String::strip).toList()) {
            if (line.equals("[block]")) {
                kind = Kind.BLOCKED;
            } else if (line.equals("[warn]")) {
                kind = Kind.WARNED;
            } else if (!line.isEmpty() && !line.startsWith("#")) {
                entries.add(new Entry(pattern(plain(line)), kind));
            }
        }
        return new WordGuard(entries);
    }

    private static Pattern pattern(String entry) {
        String words = java.util.Arrays.stream(entry.split("\\s+"))
                .map(word -> java.util.Arrays.stream(word.split("(?=[*#])|(?<=[*#])"))
                        .map(piece -> piece.equals("*") ? "\\p{L}*" : piece.equals("#") ? "\\d+" : Pattern.quote(piece))
                        .collect(Collectors.joining()))
                .collect(Collectors.joining("[\\s\\-]+"));
        return Pattern.compile("(?<![\\p{L}\\d])" + words + "(?![\\p{L}\\d])", Pattern.CASE_INSENSITIVE
                | Pattern.UNICODE_CASE);
    }

    /** Letters without accents, one for one, so that places in the text stay where they are. */
    private static String plain(String text) {
        StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            String one = MARKS.matcher(Normalizer.normalize(text.substring(i, i + 1), Normalizer.Form.NFD))
                    .replaceAll("");
            out.append(one.length() == 1 ? one : text.substring(i, i + 1));
        }
        return out.toString();
    }

    /**
     * What a text holds that should not go home.
     *
     * @param text the text, of any length
     * @param own names that may stand: the child's and the adult's, which are exempt from every list
     * @param others names of other children; found as whole words that begin with a capital letter
     * @param skills codes of skills, which are jargon of the school
     * @return in the order of the text
     */
    public List<Found> find(String text, Collection<String> own, Collection<String> others, Collection<String> skills) {
        String plain = plain(Normalizer.normalize(text, Normalizer.Form.NFC));
        Set<String> exempt = own.stream().flatMap(name -> java.util.Arrays.stream(name.split("\\s+")))
                .map(WordGuard::plain).collect(Collectors.toSet());
        List<Found> found = new ArrayList<>();
        for (Entry entry : entries) {
            add(found, entry.pattern(), entry.kind(), plain, text, exempt);
        }
        for (String skill : skills) {
            add(found, pattern(plain(skill)), Kind.BLOCKED, plain, text, exempt);
        }
        for (String name : others.stream().filter(n -> !n.isBlank()).collect(Collectors.toSet())) {
            Pattern whole = Pattern.compile("(?<![\\p{L}\\d])" + Pattern.quote(plain(name)) + "(?![\\p{L}\\d])");
            add(found, whole, Kind.CLASSMATE, plain, text, exempt);
        }
        found.sort(Comparator.comparingInt(Found::at).thenComparing(Found::kind));
        return found;
    }

    private static void add(List<Found> found, Pattern pattern, Kind kind, String plain, String text,
            Set<String> exempt) {
        Matcher matcher = pattern.matcher(plain);
        while (matcher.find()) {
            String hit = matcher.group();
            boolean name = exempt.contains(hit) && Character.isUpperCase(hit.codePointAt(0));
            if (!name) {
                found.add(new Found(text.length() == plain.length() ? text.substring(matcher.start(), matcher.end())
                        : hit, kind, matcher.start()));
            }
        }
    }
}
