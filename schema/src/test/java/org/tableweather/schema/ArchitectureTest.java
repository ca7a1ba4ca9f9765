package org.tableweather.schema;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "org.tableweather", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    @ArchTest
    static final ArchRule KNOWS_NOBODY = classes()
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "java..",
                    "org.tableweather.schema..",
                    "com.fasterxml.jackson..",
                    "de.siegmar.fastcsv..",
                    "org.jbibtex..");

    @ArchTest
    static final ArchRule NO_CYCLES =
            slices().matching("org.tableweather.schema.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule RECORDS_KNOW_ONLY_RECORDS = classes()
            .that()
            .resideInAPackage("..record..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("java..", "org.tableweather.schema.record..", "com.fasterxml.jackson.annotation..");

    @ArchTest
    static final ArchRule ONE_DOOR_TO_THE_BIBLIOGRAPHY = noClasses()
            .that()
            .resideOutsideOfPackage("..reference..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.jbibtex..");

    @ArchTest
    static final ArchRule NAMES_SAY_WHAT_A_THING_KNOWS =
            noClasses().should().haveNameMatching(".*(Utils?|Manager|Helper|Impl)");

    @ArchTest
    static final ArchRule NO_DRAWERS =
            noClasses().should().resideInAnyPackage("..util..", "..common..", "..helper..", "..misc..");

    @ArchTest
    static final ArchRule NEITHER_CLOCK_NOR_CHANCE = noClasses()
            .should()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(Math.class, "random")
            .orShould()
            .callMethod(java.time.Instant.class, "now")
            .orShould()
            .dependOnClassesThat()
            .belongToAnyOf(java.util.Random.class);
}
