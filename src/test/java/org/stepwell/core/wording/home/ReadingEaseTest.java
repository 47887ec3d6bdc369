package org.stepwell.core.wording.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stepwell.core.wording.Language;

class ReadingEaseTest {
    /** Worked values of the public encyclopedia article on the Flesch-Kincaid tests: ease 116, 69, 37.5. From memory. */
    @Test
    void easeOfKnownSentences() {
        assertThat(ReadingEase.of("The cat sat on the mat.", Language.ENGLISH).fleschEase())
                .isEqualTo(116.145, within(0.001));
        assertCounts(Language.ENGLISH, "This 1 sentence 2 taken 2 as 1 a 1 reading 2 passage 2 unto 2 itself 2 is 1 "
                + "being 2 used 1 to 1 prove 1 point 1");
        assertThat(ReadingEase.of("This sentence, taken as a reading passage unto itself, is being used to prove a "
                + "point.", Language.ENGLISH)).isEqualTo(new ReadingEase(1, 16, 23));
        assertThat(new ReadingEase(1, 16, 23).fleschEase()).isEqualTo(69, within(0.05));
        assertThat(new ReadingEase(1, 13, 24).fleschEase()).isEqualTo(37.5, within(0.05));
    }

    /** Kincaid et al. 1975: 0.39, 11.8, 15.59; computed by hand for six one-syllable words. */
    @Test
    void gradeOfASentenceOfShortWords() {
        assertThat(new ReadingEase(1, 6, 6).fleschKincaidGrade()).isEqualTo(0.39 * 6 + 11.8 - 15.59, within(1e-12));
    }

    /** Formulas of Fernández Huerta 1959 and Szigriszt Pazos 1993; computed by hand for 100 words in 10 sentences. */
    @Test
    void spanishFormulas() {
        ReadingEase text = new ReadingEase(10, 100, 190);
        assertThat(text.fernandezHuerta()).isEqualTo(206.84 - 114 - 10.2, within(1e-9));
        assertThat(text.szigrisztPazos()).isEqualTo(206.835 - 118.37 - 10, within(1e-9));
    }

    /** Number of syllables as dictionaries part the words; values from memory. */
    @Test
    void countsEnglishSyllables() {
        assertCounts(Language.ENGLISH, "the 1 cubes 1 counted 2 table 2 number 2 evaluation 5 together 3 cereal 3 "
                + "seventeen 3 started 2 built 1 wrote 1 broke 1 looked 1 used 1 showed 1 house 1 pieces 2 boxes 2 "
                + "people 2 little 2 something 2 sometimes 2 idea 3 video 3 being 2 quiet 2 area 3 Devika 3 school 1 "
                + "three 1 one 1 places 2 dishes 2 makes 1 added 2 bundle 2 straws 1 reading 2 careful 2 home 1 eye 1 "
                + "fridge 1 coins 1 pennies 2 dimes 1 ones 1 digits 2 any 2 April 2 January 4 because 2 trying 2");
    }

    /** Parted by the rules of the Ortografía of the Real Academia Española (diphthong, hiatus); values from memory. */
    @Test
    void countsSpanishSyllables() {
        assertCounts(Language.SPANISH, "el 1 día 2 marzo 2 cubos 2 quince 2 diecisiete 4 seguía 3 cuenta 2 leer 2 "
                + "aún 2 huevo 2 muy 1 voy 1 guerra 2 pingüino 3 ahora 3 unidades 4 escribió 3 números 3 oía 3 "
                + "Uruguay 3 ciudad 2 caos 2 baúl 2 prohibido 3 y 1 hay 1 ayer 2 decenas 3 más 1 frijoles 3 país 2");
    }

    @Test
    void numbersCountAsTheyAreRead() {
        assertCounts(Language.ENGLISH, "17 3 20 2 34 3 100 3 112 4 0 2 7 2");
        assertCounts(Language.SPANISH, "17 4 20 2 34 5 100 1 112 4 0 2 7 2");
    }

    @Test
    void sentencesEndAtStopsAndLineEndsButNotAtTitles() {
        assertThat(ReadingEase.of("Ms. Okoro counts. You count!\nWe count", Language.ENGLISH).sentences()).isEqualTo(3);
        assertThat(ReadingEase.of("", Language.ENGLISH)).isEqualTo(new ReadingEase(0, 0, 0));
        assertThat(ReadingEase.of("...", Language.ENGLISH).easyEnough(Language.ENGLISH)).isTrue();
    }

    private static void assertCounts(Language language, String pairs) {
        String[] parts = pairs.split(" ");
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < parts.length; i += 2) {
            int counted = Syllables.of(parts[i], language);
            if (counted != Integer.parseInt(parts[i + 1])) {
                wrong.add(parts[i] + " read as " + counted);
            }
        }
        assertThat(wrong).isEmpty();
    }
}
