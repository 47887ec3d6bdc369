package org.stepwell;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which package may use which. A rule over nothing fails by itself. */
class ArchitectureTest {
    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.stepwell");

    /** Ranks from left to right; a package uses only those to its left. */
    private static final List<List<String>> RANKS = List.of(List.of("core"), List.of("platform"), List.of("privacy"),
            List.of("roster", "progression"), List.of("observation", "check"), List.of("pacing", "plan"),
            List.of("tier", "trend"), List.of("grouping"), List.of("block"), List.of("review", "conference", "caseload", "records", "report",
                    "table"),
            List.of("sample", "bench", "integrity"), List.of("cli"));

    @Test
    void coreIsPlainJava() {
        classes().that().resideInAPackage("org.stepwell.core..").should().onlyDependOnClassesThat(
                resideInAPackage("java..").or(resideInAPackage("org.stepwell.core.."))
                        .or(resideInAPackage("org.jspecify..")).or(resideInAPackage("org.apache.commons.statistics.."))
                        .or(resideInAPackage("org.apache.commons.numbers.."))
                        .or(resideInAPackage("tech.tablesaw.."))
                        .or(resideInAPackage("org.chocosolver.."))).check(PROGRAM);
        noClasses().that().resideOutsideOfPackage("org.stepwell.core.grouping..")
                .should().dependOnClassesThat().resideInAPackage("org.chocosolver..").check(PROGRAM);
        noClasses().that().resideInAPackage("org.stepwell.core..")
                .and().resideOutsideOfPackages("org.stepwell.core.trend..", "org.stepwell.core.check..")
                .should().dependOnClassesThat().resideInAPackage("tech.tablesaw..").check(PROGRAM);
    }

    @Test
    void packagesOfCoreGoInNoCircle() {
        slices().matching("org.stepwell.core.(*)..").should().beFreeOfCycles().check(PROGRAM);
    }

    @Test
    void featuresUseOnlyThoseToTheirLeft() {
        for (int left = 0; left < RANKS.size(); left++) {
            String[] right = RANKS.subList(left + 1, RANKS.size()).stream().flatMap(List::stream)
                    .map(name -> "org.stepwell." + name + "..").toArray(String[]::new);
            for (String name : RANKS.get(left)) {
                if (right.length > 0) {
                    noClasses().that().resideInAPackage("org.stepwell." + name + "..").should()
                            .dependOnClassesThat().resideInAnyPackage(right).allowEmptyShould(true).check(PROGRAM);
                }
            }
        }
    }

    @Test
    void everyPackageHasItsPlaceInTheRow() {
        List<String> known = RANKS.stream().flatMap(List::stream).toList();
        assertThat(PROGRAM.stream().map(type -> type.getPackageName()).filter(name -> !name.equals("org.stepwell"))
                .map(name -> name.split("\\.")[2]).distinct().toList()).isNotEmpty().allMatch(known::contains);
    }

    @Test
    void sqlStaysInStores() {
        noClasses().that().haveSimpleNameNotEndingWith("Store").and()
                .resideOutsideOfPackages("org.stepwell.platform.store..", "org.stepwell.platform.security..")
                .should().dependOnClassesThat().resideInAnyPackage("org.springframework.jdbc..", "java.sql..")
                .check(PROGRAM);
        classes().that().haveSimpleNameEndingWith("Store").and().resideOutsideOfPackage("org.stepwell.platform.store..")
                .should().bePackagePrivate().check(PROGRAM);
        classes().that().haveSimpleNameEndingWith("Controller").should().bePackagePrivate().check(PROGRAM);
        classes().that().haveSimpleNameEndingWith("View").should().bePackagePrivate().check(PROGRAM);
    }

    @Test
    void vaadinStaysInScreens() {
        noClasses().that().resideOutsideOfPackages("org.stepwell..ui..", "org.stepwell.platform..")
                .should().dependOnClassesThat().resideInAPackage("com.vaadin..").check(PROGRAM);
    }

    @Test
    void onlyTheInjectedClockTellsTheTime() {
        for (Class<?> type : List.of(java.time.Instant.class, java.time.LocalDate.class,
                java.time.OffsetDateTime.class, java.time.ZonedDateTime.class, java.time.LocalDateTime.class)) {
            noClasses().should().callMethod(type, "now").check(PROGRAM);
        }
        noClasses().should().callMethod(System.class, "currentTimeMillis").check(PROGRAM);
    }
}
