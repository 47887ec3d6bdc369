package org.stepwell.core.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.ClassDip;
import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.Note;
import org.stepwell.core.tier.Requirement;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.TierChances;
import org.stepwell.core.tier.Verdict;

/** The sentences of the key cases, word by word. */
class SuggestionWordingTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 13);
    private static final Progression PHRASES = new Progression(
            "p",
            List.of(),
            List.of(phrase("en", "Said ten and seven"), phrase("es", "Dijo diez y siete")));

    private static Progression.Phrase phrase(String language, String text) {
        return new Progression.Phrase("T05", "said", 4, language, text, Progression.Phrase.Kind.PHRASE);
    }

    private final SuggestionWording english = new SuggestionWording(Language.ENGLISH, PHRASES);
    private final SuggestionWording spanish = new SuggestionWording(Language.SPANISH, PHRASES);

    private static Condition condition(
            Measure measure, double threshold, int reviews, Double measured, int held, boolean met) {
        Requirement required = new Requirement(
                Requirement.Part.NEEDS, measure, Requirement.Comparison.AT_LEAST, threshold, reviews, 1);
        return new Condition(required, measured, held, met);
    }

    private static Suggestion said(
            Tier current, Tier suggested, Verdict verdict, String rule, List<Condition> conditions, List<Note> notes) {
        Tier towards = verdict == Verdict.STAY && current == Tier.SUPPORT ? Tier.ON_LEVEL : null;
        return new Suggestion(
                "C1", DAY, current, suggested, verdict, new TierChances(0.8, 0.15, 0.05), 9, 5, DAY, rule, conditions,
                List.of(), notes, List.of(), towards, null, List.of(), new Suggestion.Versions("weighed", "1", "1"));
    }

    @Test
    void aMoveSaysInHowManyCasesTheLooksFitIt() {
        Suggestion move = said(
                Tier.ON_LEVEL, Tier.SUPPORT, Verdict.MOVE, "more_help",
                List.of(condition(Measure.CHANCE_SUPPORT, 0.6, 1, 0.8, 1, true)), List.of());
        assertEquals("More help", english.headline(move));
        assertEquals("The looks fit more help in about 8 of 10 cases.", english.reason(move));
        assertEquals("Más ayuda", spanish.headline(move));
        assertEquals("Lo observado concuerda con más ayuda en unos 8 de 10 casos.", spanish.reason(move));
    }

    @Test
    void aHeldMoveSaysWhatIsOpen() {
        Condition fits = condition(Measure.CHANCE_NOT_SUPPORT, 0.7, 2, 0.9, 1, false);
        Suggestion held =
                said(Tier.SUPPORT, Tier.SUPPORT, Verdict.STAY, Suggestion.STAY, List.of(fits), List.of());
        assertEquals("Help goes on. Less help fits, but 1 more review has to say the same.", english.reason(held));
        assertEquals(
                "La ayuda sigue. Concuerda con menos ayuda, pero falta 1 revisión más que diga lo mismo.",
                spanish.reason(held));
        Suggestion cubes = said(
                Tier.SUPPORT, Tier.SUPPORT, Verdict.STAY, Suggestion.STAY,
                List.of(
                        condition(Measure.SKILLS_MEETING, 0.5, 1, 1.0, 1, true),
                        condition(Measure.LOOKS_WITHOUT_OBJECTS, 1, 1, 0.0, 0, false)),
                List.of(new Note.CubesHide(List.of("T05"), 3, 4)));
        assertEquals(
                "Help goes on. Less help fits, but there is no such look without cubes yet. "
                        + "T05: at least step 3. No look without cubes yet: hide the cubes twice.",
                english.reason(cubes));
    }

    @Test
    void conditionsAreMeasuredAgainstWhatWasRequired() {
        Suggestion move = said(
                Tier.SUPPORT, Tier.ON_LEVEL, Verdict.MOVE, "less_help",
                List.of(
                        condition(Measure.CHANCE_NOT_SUPPORT, 0.65, 2, 0.914, 1, false),
                        condition(Measure.SCHOOL_DAYS_IN_TIER, 10, 1, 12.0, 1, true),
                        condition(Measure.SESSIONS_GIVEN, 0.6, 1, null, 1, true)),
                List.of());
        assertEquals(
                List.of(
                        new SuggestionWording.ConditionWords(
                                "Cases in which the looks fit going on without extra help",
                                "9.1 of 10 (at 1 of 2 reviews)", "at least 6.5 of 10, at 2 reviews in a row", false),
                        new SuggestionWording.ConditionWords(
                                "School days since the last change", "12", "at least 10", true),
                        new SuggestionWording.ConditionWords(
                                "Planned sessions that were given", "does not apply", "at least 6 of 10", true)),
                english.conditions(move));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.02 | hardly any case",
                "0.31 | about 3 of 10 cases",
                "0.85 | about 8 of 10 cases",
                "0.99 | nearly all cases",
            })
    void chancesAreCountsAndNeverCertain(double chance, String words) {
        assertEquals(words, Language.ENGLISH.phrases().cases(chance));
    }

    @Test
    void whatSettlesItNamesLooksSkillsAndBothAnswers() {
        Details.Wanted first = new Details.Wanted("T05", 4, DAY.plusDays(3), Kind.TABLE);
        Details.Wanted second = new Details.Wanted("T05", 4, DAY.plusDays(4), Kind.TABLE);
        Details details = new Details(
                List.of(),
                false,
                Optional.of(new Details.Settle(
                        List.of(first, second),
                        new Details.Answer(Verdict.STAY, Tier.ON_LEVEL, Tier.ON_LEVEL, 0.9, true),
                        new Details.Answer(Verdict.MOVE, Tier.SUPPORT, Tier.SUPPORT, 0.8, true),
                        0.72)),
                Optional.of(new Details.Ask("T05", 4, "13", true)));
        Suggestion open = said(Tier.ON_LEVEL, Tier.ON_LEVEL, Verdict.STAY, Suggestion.STAY, List.of(), List.of());
        assertEquals(
                "2 more looks without cubes on T05 (2 days) would settle it in about 7 of 10 cases. "
                        + "Step 4 both times: no change. Step 3 both times: more help is suggested.",
                english.settle(open, details));
        assertEquals(
                "2 observaciones más sin cubos en T05 (2 días) lo aclararían en unos 7 de 10 casos. "
                        + "Paso 4 las dos veces: sin cambio. Paso 3 las dos veces: se sugiere más ayuda.",
                spanish.settle(open, details));
        assertEquals(
                "Next at the table: T05 with 13, cubes hidden. Look for: Said ten and seven.", english.ask(details));
        assertEquals(
                "Ahora en la mesa: T05 con 13, con los cubos escondidos. Busque: Dijo diez y siete.",
                spanish.ask(details));
    }

    @Test
    void notesSayWhatWasSeenAndNothingElse() {
        assertNote(
                "Not seen since March 4. Help goes on. One fresh look on T05.",
                "Sin observaciones desde el 4 de marzo. La ayuda sigue. Una observación nueva en T05.",
                new Note.NotSeenLately(LocalDate.of(2026, 3, 4), "T05", true));
        assertNote(
                "Help was not given as planned: 4 of 10 sessions, 5 missed by the school, 1 by absence. "
                        + "Mend the schedule; more help stays open.",
                "La ayuda no se dio como estaba previsto: 4 de 10 sesiones; 5 faltaron por la escuela; 1 por ausencia. "
                        + "Arregle el horario; más ayuda sigue siendo posible.",
                new Note.HelpNotGiven(new ChildState.Dose(10, 4, 5, 1)));
        assertNote(
                "The request for an evaluation of March 9 is open: answer it. Nothing here is a reason to wait.",
                "La petición de evaluación del 9 de marzo espera respuesta: contéstela. "
                        + "Nada de esto es motivo para esperar.",
                new Note.RequestOpen(ChildState.OpenRequest.Kind.EVALUATION, LocalDate.of(2026, 3, 9)));
        assertNote(
                "T05: two adults see different things: A step 4, B step 1. Watch one together.",
                "T05: dos personas ven cosas distintas: A, paso 4; B, paso 1. Observen una vez en conjunto.",
                new Note.ObserversDiffer("T05", "A", 4, new TreeSet<>(), "B", 1, new TreeSet<>()));
        assertNote(
                "T05: the expected step rose from 3 to 4 on April 1. The bar moved, not the child.",
                "T05: el paso esperado subió de 3 a 4 el 1 de abril. Se movió la meta, no el niño o la niña.",
                new Note.BarRose("T05", 3, 4, LocalDate.of(2026, 4, 1)));
        assertNote(
                "Only 1 skill is due; tiers begin when two are.",
                "Por ahora se espera 1 sola destreza; los niveles de ayuda empiezan con dos.",
                new Note.TooFewDue(1));
    }

    private void assertNote(String en, String es, Note note) {
        Suggestion one = said(Tier.ON_LEVEL, Tier.ON_LEVEL, Verdict.STAY, Suggestion.STAY, List.of(), List.of(note));
        assertEquals(List.of(en), english.notes(one));
        assertEquals(List.of(es), spanish.notes(one));
    }

    @Test
    void aDipOfTheClassPointsToTheLesson() {
        assertEquals(
                "14 of the 23 seen on T08 fall short there: look at the lesson first.",
                english.dip(new ClassDip("T08", 14, 23)));
        assertEquals(
                "9 of 23 are suggested for more help: look at the lesson first.",
                english.dip(new ClassDip(null, 9, 23)));
    }
}
