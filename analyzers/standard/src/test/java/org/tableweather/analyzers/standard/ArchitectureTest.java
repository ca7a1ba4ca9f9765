package org.tableweather.analyzers.standard;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "org.tableweather.analyzers.standard", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    /** No files, network, clock or SQL: these packages are not among them. */
    @ArchTest
    static final ArchRule plainJavaAndTwoLibraries = classes()
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "java.lang..",
                    "java.math",
                    "java.time",
                    "java.time.temporal",
                    "java.util",
                    "java.util.function",
                    "java.util.stream",
                    "com.fasterxml.jackson.annotation..",
                    "org.ejml..",
                    "org.hipparchus..",
                    "org.tableweather.schema.climate..",
                    "org.tableweather.schema.geometry..",
                    "org.tableweather.schema.record..",
                    "org.tableweather.schema.shots..",
                    "org.tableweather.analyzers.spi..",
                    "org.tableweather.analyzers.standard..");

    @ArchTest
    static final ArchRule noChance = noClasses()
            .should()
            .dependOnClassesThat()
            .haveNameMatching("java\\.util\\.(Random|SplittableRandom|UUID|Date|Calendar|Timer|Scanner)");

    @ArchTest
    static final ArchRule noClockAndNoSystem = noClasses()
            .should()
            .callMethodWhere(target(nameMatching("random|currentTimeMillis|nanoTime|getenv|getProperty"))
                    .and(target(
                            owner(JavaClass.Predicates.belongToAnyOf(Math.class, StrictMath.class, System.class)))));

    /** Times come from the data: java.time is for holding them, never for asking what time or what zone it is. */
    @ArchTest
    static final ArchRule timesComeFromTheData = noClasses()
            .should()
            .callMethodWhere(target(nameMatching("now|systemDefault|system.*|tick.*"))
                    .and(target(owner(JavaClass.Predicates.resideInAPackage("java.time..")))));

    /** Of Math only what is exact or rounded correctly everywhere; the rest differs by platform. */
    @ArchTest
    static final ArchRule sameLogarithmsEverywhere = noClasses()
            .should()
            .callMethodWhere(target(nameMatching("log.*|exp.*|pow|sin|cos|tan|a(sin|cos|tan).*|cbrt|hypot"))
                    .and(target(owner(JavaClass.Predicates.equivalentTo(Math.class)))));

    @ArchTest
    static final ArchRule mathsKnowsNoStatistics = classes()
            .that()
            .resideInAPackage("..standard.numeric..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("java..", "org.ejml..", "org.hipparchus..", "..standard.numeric..");

    @ArchTest
    static final ArchRule estimatorsKnowNoRecords = noClasses()
            .that()
            .resideInAPackage("..standard.statistics..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.tableweather.schema..", "..analyzers.spi..", "..standard.catalogue..");

    @ArchTest
    static final ArchRule aBallKnowsTablesAlone = noClasses()
            .that()
            .resideInAPackage("..standard.physics..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("..analyzers.spi..", "..standard.catalogue..", "..standard.statistics..");

    @ArchTest
    static final ArchRule noCycles = slices().matching("org.tableweather.analyzers.standard.(*)..")
            .should()
            .beFreeOfCycles();

    @ArchTest
    static final ArchRule namesSayWhatAThingKnows =
            noClasses().should().haveNameMatching(".*(Utils?|Manager|Helper|Impl)");

    @ArchTest
    static final ArchRule packagesSayWhatTheyHold =
            noClasses().should().resideInAnyPackage("..util..", "..common..", "..helper..", "..misc..");
}
