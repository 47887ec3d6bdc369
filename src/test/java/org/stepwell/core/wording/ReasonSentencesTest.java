package org.stepwell.core.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.LookMaker;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.Note;
import org.stepwell.core.tier.Requirement;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.TierChances;
import org.stepwell.core.tier.Verdict;

/** Notes, details and figures word by word, in both languages. */
class ReasonSentencesTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 13);
    private static final Progression NONE = new Progression("p", List.of(), List.of());
    private static final Details.Answer GOES_ON =
            new Details.Answer(Verdict.STAY, Tier.ON_LEVEL, Tier.ON_LEVEL, 0.9, true);
    private static final Details.Answer MORE = new Details.Answer(Verdict.MOVE, Tier.SUPPORT, Tier.SUPPORT, 0.8, true);

    private final SuggestionWording english = new SuggestionWording(Language.ENGLISH, NONE);
    private final SuggestionWording spanish = new SuggestionWording(Language.SPANISH, NONE);

    private static Suggestion said(Verdict verdict, List<Note> notes, Suggestion.Missing... missing) {
        return new Suggestion(
                "C1", DAY, Tier.ON_LEVEL, verdict == Verdict.MOVE ? Tier.SUPPORT : Tier.ON_LEVEL, verdict,
                new TierChances(0.8, 0.15, 0.05), 9, 5, DAY, verdict.code(), List.of(), List.of(), notes,
                List.of(missing), null, null, List.of(), new Suggestion.Versions("weighed", "1", "1"));
    }

    private void assertNote(String en, String es, Note note) {
        Suggestion one = said(Verdict.STAY, List.of(note));
        assertEquals(List.of(en), english.notes(one));
        assertEquals(List.of(es), spanish.notes(one));
    }

    @Test
    void notesOnWhoWasSeenHowOften() {
        assertNote(
                "New since March 2, so provisional: 3 looks on 1 day; 2 more did not count: sit apart next time.",
                "En la clase desde el 2 de marzo, por eso provisional: 3 observaciones en 1 día; 2 más no contaron: "
                        + "la próxima vez, en un asiento aparte.",
                new Note.Provisional(LocalDate.of(2026, 3, 2), 3, 1, 2));
        assertNote(
                "Hardly seen: 1 look in 15 school days. First at the table on the next school day.",
                "Muy poco visto: 1 observación en 15 días de clase. Primer turno en la mesa el próximo día.",
                new Note.HardlySeen(1, 15));
        assertNote(
                "Unit check and looks tell different things: 19 of 20 items right, 1 of 8 days at the expected step. "
                        + "The check alone moves nobody.",
                "La prueba y lo observado dicen cosas distintas: 19 de 20 preguntas bien, 1 de 8 días en el paso "
                        + "esperado. La prueba sola no cambia nada.",
                new Note.CheckDisagrees(19, 20, 1, 8));
        assertNote(
                "T05: two adults see different things: A step 4 (16, 17), B step 1 (11, 12). "
                        + "Two kinds of number: watch one 12 together.",
                "T05: dos personas ven cosas distintas: A, paso 4 (16, 17); B, paso 1 (11, 12). "
                        + "Son dos tipos de número: observen un 12 en conjunto.",
                new Note.ObserversDiffer("T05", "A", 4, new TreeSet<>(List.of("16", "17")), "B", 1,
                        new TreeSet<>(List.of("11", "12"))));
    }

    @Test
    void notesOnSingleSkills() {
        assertNote(
                "T05: at least step 3. No look without cubes yet: hide the cubes twice.",
                "T05: al menos el paso 3. No hay observación sin cubos: esconda los cubos dos veces.",
                new Note.CubesHide(List.of("T05"), 3, 4));
        assertNote(
                "T05: step 4 on 3 days; step 5 was never seen. Accept showing or drawing, or ask in the home language.",
                "T05: paso 4 en 3 días; el paso 5 no se ha visto nunca. Acepte que lo muestre o lo dibuje, o pregunte "
                        + "en la lengua de casa.",
                new Note.NothingAbove("T05", 4, 3));
        assertNote(
                "T05: growing (steps 1, 2 and 3), short of the expected 4.",
                "T05: va creciendo (pasos 1, 2 y 3); se espera el 4.",
                new Note.Growing("T05", List.of(1, 2, 3), 4));
        assertNote(
                "Table time for T02: step 2, expected 3; T05 and T06 rest on it.",
                "Tiempo en la mesa para T02: paso 2, se espera el 3; en esta destreza se apoyan T05 y T06.",
                new Note.KeystoneMissed("T02", 2, 3, List.of("T05", "T06")));
        assertNote(
                "Ready for more in T05 and T07. Look at T06: step 2, expected 3. Mirror writing is not counted.",
                "Puede ir más lejos en T05 y T07. Mire T06: paso 2, se espera el 3. La escritura en espejo no se "
                        + "cuenta.",
                new Note.ButNot(List.of("T05", "T07"), "T06", 2, 3, true));
    }

    @Test
    void whatIsMissingIsSaidInLooksDaysAndKinds() {
        Suggestion one = said(Verdict.NOT_ENOUGH, List.of(), new Suggestion.Missing(Measure.LOOKS, 3),
                new Suggestion.Missing(Measure.DAYS, 1), new Suggestion.Missing(Measure.KINDS, 1));
        assertEquals("Not enough yet: 3 more looks, 1 more day and another kind of evidence.", english.missing(one));
        assertEquals(
                "Falta información: 3 observaciones más, 1 día más y otro tipo de observación.",
                spanish.missing(one));
    }

    private static Details settling(boolean settled, Details.Answer missed, double likely, Kind kind) {
        return new Details(List.of(), settled,
                Optional.of(new Details.Settle(List.of(new Details.Wanted("T05", 4, DAY.plusDays(3), kind)), GOES_ON,
                        missed, likely)),
                Optional.of(new Details.Ask("T05", 4, null, false)));
    }

    @Test
    void whatCouldChangeASettledAnswerIsToldAsSuch() {
        Suggestion one = said(Verdict.STAY, List.of());
        assertEquals(
                "Settled for now. 1 more look without cubes on T05 could change it in about 2 of 10 cases. "
                        + "Step 4: no change. Step 3: more help is suggested.",
                english.settle(one, settling(true, MORE, 0.2, Kind.TABLE)));
        assertEquals(
                "Por ahora está claro. 1 observación más sin cubos en T05 podría cambiarlo en unos 2 de 10 casos. "
                        + "Paso 4: sin cambio. Paso 3: se sugiere más ayuda.",
                spanish.settle(one, settling(true, MORE, 0.2, Kind.TABLE)));
        assertEquals(
                "1 more look without cubes on T05 (an exit task) would settle it in about 6 of 10 cases. "
                        + "Either way: no change.",
                english.settle(one, settling(false, GOES_ON, 0.6, Kind.EXIT_TASK)));
        assertEquals(
                "1 observación más sin cubos en T05 (una tarea de salida) lo aclararía en unos 6 de 10 casos. "
                        + "En los dos casos: sin cambio.",
                spanish.settle(one, settling(false, GOES_ON, 0.6, Kind.EXIT_TASK)));
    }

    @Test
    void noFewLooksArePromisedWhereNoneWouldDo() {
        Suggestion one = said(Verdict.STAY, List.of());
        Details open = new Details(List.of(), false, Optional.empty(), Optional.empty());
        Details done = new Details(List.of(), true, Optional.empty(), Optional.empty());
        assertEquals("A few more looks are not likely to settle it; go on looking.", english.settle(one, open));
        assertEquals("Unas pocas observaciones más probablemente no lo aclararán; siga observando.",
                spanish.settle(one, open));
        assertEquals("Settled for now; a few more looks would hardly change it.", english.settle(one, done));
        assertEquals("Por ahora está claro; unas pocas observaciones más apenas lo cambiarían.",
                spanish.settle(one, done));
        assertEquals("", english.ask(open));
    }

    @Test
    void aLookThatMatteredIsNamedWithItsDayNumberAndStep() {
        CountedLook look = new CountedLook(LookMaker.look("C1", "T05", LocalDate.of(2026, 3, 9), 2).task("17")
                .help(Help.CUBES).make(), "T05", 2, true);
        Suggestion move = said(Verdict.MOVE, List.of());
        Details same = new Details(List.of(new Details.Weighty(look, 0.61, Verdict.MOVE, Tier.SUPPORT, Tier.SUPPORT)),
                true, Optional.empty(), Optional.empty());
        Details other = new Details(List.of(new Details.Weighty(look, 0.4, Verdict.STAY, Tier.ON_LEVEL,
                Tier.ON_LEVEL)), true, Optional.empty(), Optional.empty());
        assertEquals(List.of("March 9, T05 with 17, step 2 (with cubes): without it the looks fit more help in about 6 "
                + "of 10 cases."), english.weighty(move, same));
        assertEquals(List.of("9 de marzo, T05 con 17, paso 2 (con cubos): sin esta, lo observado concuerda con más "
                + "ayuda en unos 6 de 10 casos."), spanish.weighty(move, same));
        assertEquals(List.of("March 9, T05 with 17, step 2 (with cubes): without it no change."),
                english.weighty(move, other));
        assertEquals(List.of("9 de marzo, T05 con 17, paso 2 (con cubos): sin esta, sin cambio."),
                spanish.weighty(move, other));
    }

    @Test
    void whereNoSingleLookDecidesOneSentenceSaysSo() {
        CountedLook look = new CountedLook(LookMaker.look("C1", "T05", LocalDate.of(2026, 3, 9), 2).task("17")
                .make(), "T05", 2, false);
        Suggestion move = said(Verdict.MOVE, List.of());
        Details details = new Details(List.of(new Details.Weighty(look, 0.79, Verdict.MOVE, Tier.SUPPORT,
                Tier.SUPPORT)), true, Optional.empty(), Optional.empty());
        assertEquals(List.of("No single look decides: without any one of them, the looks fit more help in about 8 of "
                + "10 cases as now. Those that weigh most: March 9, T05 with 17, step 2."),
                english.weighty(move, details));
        assertEquals(List.of("Ninguna observación decide por sí sola: sin cualquiera de ellas, lo observado "
                + "concuerda con más ayuda en unos 8 de 10 casos, igual que ahora. Las que más pesan: 9 de marzo, T05 con 17, "
                + "paso 2."), spanish.weighty(move, details));
    }

    @ParameterizedTest
    @CsvSource({
        "CHANCE_SUPPORT, AT_LEAST, 0.5, 0.49997, false, 4.9997 of 10, at least 5 of 10",
        "CHANCE_SUPPORT, AT_LEAST, 0.5, 0.5, true, 5 of 10, at least 5 of 10",
        "CHANCE_SUPPORT, AT_LEAST, 0.5, 0.812, true, 8.1 of 10, at least 5 of 10",
        "CHANCE_SUPPORT, AT_LEAST, 0.5, 0.9971, true, over 9.9 of 10, at least 5 of 10",
        "CHANCE_SUPPORT, AT_LEAST, 0.5, 0.0001, false, under 0.1 of 10, at least 5 of 10",
        "CHANCE_SUPPORT, AT_LEAST, 1, 0.9999, false, over 9.9 of 10, at least 10 of 10",
        "SKILLS_BELOW, MORE_THAN, 0.5, 0.5, false, 5 of 10, more than 5 of 10",
        "SKILLS_BELOW, MORE_THAN, 0.5, 0.502, true, 5.02 of 10, more than 5 of 10",
        "DAYS, AT_LEAST, 3, 2, false, 2, at least 3",
        "SCHOOL_DAYS_SINCE_LOOK, AT_MOST, 10, 11, false, 11, at most 10"
    })
    void aFigureNeverContradictsItsVerdict(Measure measure, Requirement.Comparison how, double threshold,
            double measured, boolean met, String figure, String required) {
        Requirement asked = new Requirement(Requirement.Part.NEEDS, measure, how, threshold, 1, 1);
        Condition condition = new Condition(asked, measured, met ? 1 : 0, met);
        Phrasebook words = Language.ENGLISH.phrases();
        assertEquals(figure, words.measured(condition));
        assertEquals(required, words.required(asked));
        assertEquals(figure.replace(" of ", " de ").replace("over", "más de").replace("under", "menos de"),
                Language.SPANISH.phrases().measured(condition));
    }

    @ParameterizedTest
    @EnumSource
    void everyMeasureHasWordsOfItsOwnInBothLanguages(Measure measure) {
        assertWords(Language.ENGLISH.phrases().measure(measure), Language.SPANISH.phrases().measure(measure));
        for (Measure other : Measure.values()) {
            assertTrue(other == measure || !Language.SPANISH.phrases().measure(other)
                    .equals(Language.SPANISH.phrases().measure(measure)), measure + " and " + other);
        }
    }

    @ParameterizedTest
    @EnumSource
    void everyCautionHasWordsInBothLanguages(Caution caution) {
        assertWords(english.caution(caution), spanish.caution(caution));
    }

    private static void assertWords(String en, String es) {
        assertFalse(en.isBlank());
        assertFalse(es.isBlank());
        assertNotEquals(en, es);
    }

    /** A line that is read by the child's parents carries no verdict on the child. */
    @Test
    void noSentenceOfAMoveLabelsTheChild() {
        List<String> all = new ArrayList<>();
        for (Tier from : Tier.values()) {
            for (Tier to : Tier.values()) {
                for (Language language : Language.values()) {
                    all.add(language.phrases().move(from, to) + " " + language.phrases().gives(to));
                }
            }
        }
        for (String word : List.of("low", "weak", "slow", "behind", "fail", "at risk", "bajo", "débil", "atras")) {
            assertTrue(all.stream().noneMatch(s -> s.matches(".*\\b" + word + ".*")), word);
        }
    }
}
