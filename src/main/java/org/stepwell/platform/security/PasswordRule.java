package org.stepwell.platform.security;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Which passwords an adult may choose. After NIST SP 800-63B revision 4 (2025), section 3.1.1.2, from memory: at least
 * 15 characters where a password alone opens the door, at least 64 allowed, counted in code points after NFKC, no kinds
 * of signs asked for, no change by date; what is commonly known, follows a pattern, or holds a name of the place is
 * refused.
 */
public final class PasswordRule {
    /** Fewest characters of a password. */
    public static final int SHORTEST = 15;
    /** Most characters of a password. */
    public static final int LONGEST = 128;
    /** A shorter name is in too many harmless words. */
    private static final int SHORTEST_NAME = 4;
    private static final int LONGEST_PATTERN = 6;
    private static final List<String> ROWS = List.of("0123456789", "abcdefghijklmnopqrstuvwxyz",
            "qwertyuiopasdfghjklzxcvbnm", "qwertzuiopasdfghjklyxcvbnm", "azertyuiopqsdfghjklmwxcvbn",
            "1234567890qwertyuiop", "1qaz2wsx3edc4rfv5tgb6yhn7ujm8ik9ol0p", "qazwsxedcrfvtgbyhnujmikolp",
            "1q2w3e4r5t6y7u8i9o0p");

    private PasswordRule() {
    }

    /** What is wrong with a password. */
    public enum Fault {
        /** Fewer than {@link #SHORTEST} characters. */
        TOO_SHORT,
        /** More than {@link #LONGEST} characters. */
        TOO_LONG,
        /** Holds the sign-in name or the name of the school, or is the password before. */
        TOO_NEAR,
        /** One of those that are tried first: commonly known, or a pattern. */
        COMMON
    }

    private static final class Known {
        static final Set<String> WORDS = read();

        private static Set<String> read() {
            try (InputStream in = PasswordRule.class.getResourceAsStream("/passwords/common.txt")) {
                if (in == null) {
                    throw new IllegalStateException("the program lacks passwords/common.txt");
                }
                return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)).lines()
                        .filter(line -> !line.startsWith("#")).collect(Collectors.toUnmodifiableSet());
            } catch (IOException failed) {
                throw new UncheckedIOException(failed);
            }
        }
    }

    /** The form that is counted and hashed, so that the same password from another keyboard is the same one. */
    static String normal(String password) {
        return Normalizer.normalize(password, Normalizer.Form.NFKC);
    }

    /**
     * What is wrong with a password; empty when it may be chosen.
     *
     * @param names of the place: sign-in name, name of the school
     */
    public static Optional<Fault> fault(String password, String... names) {
        String normal = normal(password);
        int length = normal.codePointCount(0, normal.length());
        if (length < SHORTEST || length > LONGEST) {
            return Optional.of(length < SHORTEST ? Fault.TOO_SHORT : Fault.TOO_LONG);
        }
        String bare = bare(normal);
        for (String name : names) {
            for (String part : List.of(name, name.split("@", 2)[0])) {
                String tested = bare(normal(part));
                if (tested.length() >= SHORTEST_NAME && bare.contains(tested)) {
                    return Optional.of(Fault.TOO_NEAR);
                }
            }
        }
        String spread = normal.toLowerCase(Locale.ROOT).replaceAll("\\s", "");
        String word = spread.replaceAll("^[^\\p{L}]+|[^\\p{L}]+$", "");
        boolean common = common(spread) || common(plain(spread))
                || !word.isEmpty() && (common(word) || common(plain(word)));
        return common ? Optional.of(Fault.COMMON) : Optional.empty();
    }

    private static boolean common(String text) {
        if (Known.WORDS.contains(text) || repeats(text) || oneRun(text)) {
            return true;
        }
        for (int end = text.length() - 1; end > 0; end--) {
            String rest = text.substring(end);
            if (Known.WORDS.contains(text.substring(0, end)) && (repeats(rest) || oneRun(rest))) {
                return true;
            }
        }
        return false;
    }

    /** Whether a text is one short piece, or one known word, again and again; the last time may be cut off. */
    private static boolean repeats(String text) {
        for (int size = 1; size <= text.length() / 2; size++) {
            String piece = text.substring(0, size);
            boolean again = piece.repeat(text.length() / size + 1).startsWith(text);
            if (again && (size <= LONGEST_PATTERN || Known.WORDS.contains(piece))) {
                return true;
            }
        }
        return false;
    }

    /** Whether a text goes along a row of keys, the alphabet or the digits, forward or back, round and round. */
    private static boolean oneRun(String text) {
        return ROWS.stream().anyMatch(row -> {
            String round = row.repeat(LONGEST / row.length() + 2);
            return round.contains(text) || new StringBuilder(round).reverse().toString().contains(text);
        });
    }

    private static String bare(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }

    /** Letters for the signs commonly written in their place. */
    private static String plain(String text) {
        return text.replace('@', 'a').replace('4', 'a').replace('0', 'o').replace('1', 'i').replace('!', 'i')
                .replace('3', 'e').replace('$', 's').replace('5', 's').replace('7', 't');
    }
}
