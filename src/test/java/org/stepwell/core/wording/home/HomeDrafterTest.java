package org.stepwell.core.wording.home;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HomeNote.Part;
import org.stepwell.progression.ProgressionCsv;

class HomeDrafterTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 20);
    private static final Progression PROGRESSION = progression();

    private static Progression progression() {
        try {
            return ProgressionCsv.read(Files.readAllBytes(Path.of("sample-class/skills.csv")),
                    Files.readAllBytes(Path.of("sample-class/phrases.csv"))).rows().getFirst();
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static CountedLook look(String skill, int step, Help help, @Nullable String task, LocalDate day) {
        return new CountedLook(new Look(UUID.randomUUID(), day.atTime(LocalTime.NOON).atOffset(ZoneOffset.UTC), "c",
                skill, task, step, help, Kind.TABLE, "okoro", Set.of(), null, null, false, null), skill, step,
                help == Help.CUBES);
    }

    private static HomeNote draft(Language language, Set<String> others, CountedLook... looks) {
        return HomeDrafter.draft(new HomeEvidence("Devika", List.of(looks), PROGRESSION, List.of("T05", "T08"),
                Map.of("T05", 3), LocalDate.of(2026, 2, 1), TODAY, LocalDate.of(2026, 4, 10), others), language);
    }

    @Test
    void tellsStrengthsWithTheirDaysInPlainWords() {
        HomeNote note = draft(Language.ENGLISH, Set.of(),
                look("T05", 1, Help.NONE, "14", LocalDate.of(2026, 1, 12)),
                look("T04", 4, Help.NONE, null, LocalDate.of(2026, 2, 24)),
                look("T05", 3, Help.CUBES, "17", LocalDate.of(2026, 3, 3)),
                look("T03", 4, Help.NONE, null, LocalDate.of(2026, 3, 9)));
        assertThat(note.of(Part.CAN)).containsExactly(
                "On February 24, Devika knew that a stick under a cloth is ten.",
                "On March 9, Devika told the partner that makes ten.");
        assertThat(note.of(Part.GROWTH)).containsExactly(
                "On January 12, Devika counted each cube to find 14.",
                "On March 3, Devika built 17 as one group of ten and some more, with things to hold.");
        assertThat(note.of(Part.NEXT)).containsExactly("Next, we will try numbers like 16 without cubes.");
        assertThat(note.firsts()).containsExactly(LocalDate.of(2026, 2, 24), LocalDate.of(2026, 3, 3),
                LocalDate.of(2026, 3, 9));
    }

    @Test
    void saysThatThereIsLittleAndWhenTheNextWordComes() {
        assertThat(draft(Language.ENGLISH, Set.of()).of(Part.CAN))
                .containsExactly("We have few notes this month. We will write to you again by April 10.");
        assertThat(draft(Language.SPANISH, Set.of()).of(Part.CAN))
                .containsExactly("Este mes tenemos pocas notas. Le escribiremos otra vez antes del 10 de abril.");
    }

    @Test
    void leavesOutWhatWasModelledOrSlippedAndAnUnseenStick() {
        HomeNote note = draft(Language.ENGLISH, Set.of(),
                look("T05", 3, Help.MODELLED, "17", LocalDate.of(2026, 3, 3)),
                look("T05", 3, Help.PROMPT, "17", LocalDate.of(2026, 3, 3)),
                look("T05", 4, Help.CUBES, "17", LocalDate.of(2026, 3, 3)));
        assertThat(note.of(Part.CAN)).hasSize(1).first().asString().startsWith("We have few notes");
        assertThat(note.firsts()).isEmpty();
    }

    @Test
    void writesTheDateInFiguresWhereAChildIsCalledLikeTheMonth() {
        HomeNote note = draft(Language.ENGLISH, Set.of("April", "March"),
                look("T04", 4, Help.NONE, null, LocalDate.of(2026, 3, 3)));
        assertThat(note.text()).contains("On 3/3, Devika").contains("by 4/10").doesNotContain("April", "March");
    }

    /** Every sentence of the progression for home, and every page drafted from it, is free of what stays at school. */
    @Test
    void noDraftHoldsASchoolWordAnotherChildsNameOrAClaimWithoutALook() {
        long seed = 20260320;
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        List<String> names = List.of("April", "May", "Mark", "Rosa", "Will", "Next", "On", "Ana", "Julio", "Abril", "An",
                "Say", "Grace", "Ten", "What", "Hope", "Put");
        for (int round = 0; round < 1500; round++) {
            Set<String> others = new HashSet<>();
            for (int i = 0; i < 6; i++) {
                others.add(names.get(random.nextInt(names.size())));
            }
            List<CountedLook> looks = new ArrayList<>();
            LocalDate day = LocalDate.of(2026, 1, 5);
            for (int i = random.nextInt(14); i > 0; i--) {
                day = day.plusDays(random.nextInt(9));
                looks.add(look("T%02d".formatted(1 + random.nextInt(12)), 1 + random.nextInt(5),
                        Help.values()[random.nextInt(Help.values().length)],
                        random.nextBoolean() ? String.valueOf(11 + random.nextInt(9)) : null, day));
            }
            for (Language language : Language.values()) {
                String skill = "T%02d".formatted(1 + random.nextInt(12));
                HomeNote note = HomeDrafter.draft(new HomeEvidence("Devika", looks, PROGRESSION, List.of(skill),
                        Map.of(skill, random.nextInt(6)), LocalDate.of(2026, 1, 5), day.plusDays(3), day.plusDays(40),
                        others), language);
                List<String> codes = PROGRESSION.skills().stream().map(Progression.Skill::code).toList();
                assertThat(WordGuard.of(language).find(note.text(), Set.of("Devika"), others, codes))
                        .as("seed %d round %d: %s", seed, round, note.text()).isEmpty();
                int claims = note.of(Part.CAN).size() + note.of(Part.GROWTH).size();
                long valid = looks.stream().filter(l -> l.valid()).count();
                assertThat(claims).isLessThanOrEqualTo((int) valid + 1 + 1);
            }
        }
    }

    @Test
    void everySkillAndStepHasWordsForHomeThatAreEasyToRead() {
        for (Language language : Language.values()) {
            StringBuilder hard = new StringBuilder();
            for (Progression.Skill skill : PROGRESSION.skills()) {
                for (int step = 1; step <= 5; step++) {
                    HomeNote note = HomeDrafter.draft(new HomeEvidence("Devika",
                            List.of(look(skill.code(), step, Help.NONE, "17", TODAY.minusDays(4)),
                                    look(skill.code(), step, Help.NONE, "14", TODAY.minusDays(3)),
                                    look(skill.code(), step, Help.NONE, "16", TODAY.minusDays(2))),
                            PROGRESSION, List.of(skill.code()), Map.of(skill.code(), step), TODAY.minusDays(30), TODAY,
                            TODAY.plusDays(30), Set.of()), language);
                    assertThat(note.of(Part.CAN)).as(skill.code() + step).hasSize(1);
                    assertThat(note.of(Part.NEXT)).as(skill.code() + step).hasSize(1);
                    assertThat(note.of(Part.AT_HOME)).as(skill.code() + step).hasSize(2);
                    if (!ReadingEase.of(note.text(), language).easyEnough(language)) {
                        hard.append(note.text()).append('\n');
                    }
                }
            }
            assertThat(hard.toString()).isEmpty();
        }
    }
}
