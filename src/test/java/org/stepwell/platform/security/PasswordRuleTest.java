package org.stepwell.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stepwell.platform.security.PasswordRule.Fault;

class PasswordRuleTest {
    private static java.util.Optional<Fault> fault(String password) {
        return PasswordRule.fault(password, "ana@hill", "Quillwater School");
    }

    private static List<String> listed() {
        return new BufferedReader(new InputStreamReader(Objects.requireNonNull(
                PasswordRule.class.getResourceAsStream("/passwords/common.txt")), StandardCharsets.UTF_8)).lines()
                .filter(line -> !line.startsWith("#")).toList();
    }

    @Test
    void shipsAListOfAThousandAndMoreEachOnce() {
        assertThat(listed()).hasSizeGreaterThanOrEqualTo(1000).doesNotHaveDuplicates()
                .allSatisfy(word -> assertThat(word).isEqualTo(word.strip().toLowerCase(java.util.Locale.ROOT)));
    }

    @Test
    void refusesEveryListedOneThatIsLongEnoughAndEveryOtherFilledUpWithDigitsOrRepeated() {
        for (String word : listed()) {
            String filled = word + "1".repeat(Math.max(0, 15 - word.length()));
            assertThat(fault(filled)).as(filled).isPresent();
            String again = word.repeat(15 / word.length() + 1);
            assertThat(fault(again)).as(again).isPresent();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"password12345678", "Password!!!!!!!!!", "P@ssw0rd2026!!!!", "passwordpassword",
        "123456789012345", "987654321098765", "qwertyuiopasdfg", "abcabcabcabcabc", "aaaaaaaaaaaaaaa",
        "correcthorsebatterystaple", "correct horse battery staple", "!!!!!!!!!!!!!!!!", "ILOVEYOU iloveyou",
        "2026-2026-2026-2026", "1qaz2wsx3edc4rfv", "abcdefghijklmnop"})
    void refusesWhatIsTriedFirst(String password) {
        assertThat(fault(password)).contains(Fault.COMMON);
    }

    @ParameterizedTest
    @ValueSource(strings = {"seven quiet herons", "tres garzas bajo la lluvia", "monkey teapot lantern",
        "9f2kq-8vbnn-x2m1p", "雨の日に鷺が三羽いるのを見ました", "my dog eats pencils"})
    void takesAnyOtherWhateverItsSigns(String password) {
        assertThat(fault(password)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"my ana@hill pass", "we love quillwater-school", "ANA@HILL rides again",
        "anahill anahill x"})
    void refusesNamesOfThePlaceHoweverWritten(String password) {
        assertThat(fault(password)).contains(Fault.TOO_NEAR);
    }

    @Test
    void aNameOfThreeLettersIsInTooManyWordsToBeRefused() {
        assertThat(PasswordRule.fault("seven quiet herons", "ere", "Oak")).isEmpty();
    }

    /** 15 or more for a password alone, 64 and more allowed, a code point counts one: NIST SP 800-63B-4, 3.1.1.2. */
    @Test
    void countsCodePointsAfterNormalization() {
        assertThat(fault("quiet herons 7")).contains(Fault.TOO_SHORT);
        assertThat(fault("quiet herons 77")).isEmpty();
        assertThat(fault("\uD83E\uDDEE heron lake 12")).as("15 code points, 16 chars").isEmpty();
        assertThat(fault("e\u0301gret by lake 4")).as("composed it is 15 characters").isEmpty();
        assertThat(fault("e\u0301gret by lake")).as("composed it is 13").contains(Fault.TOO_SHORT);
        assertThat(fault("quiet herons on a lake at dawn, and a child counts them 1 by 1, ten")).isEmpty();
        assertThat(fault("h".repeat(100) + "eron lake dawn".repeat(3))).contains(Fault.TOO_LONG);
    }

    @Test
    void theSamePasswordFromAnotherKeyboardIsTheSame() {
        assertThat(PasswordRule.normal("re\u0301union of nine")).isEqualTo(PasswordRule.normal("r\u00e9union of nine"));
        assertThat(PasswordRule.normal("\uFF41\uFF42\uFF43")).isEqualTo("abc");
    }
}
