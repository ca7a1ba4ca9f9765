package org.tableweather.analyzers.host;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "org.tableweather", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    @ArchTest
    static final ArchRule spiKnowsNoAnalyzerAndNoHost = noClasses()
            .that()
            .resideInAPackage("org.tableweather.analyzers.spi..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.tableweather.analyzers.host..", "org.tableweather.analyzers.standard..");

    @ArchTest
    static final ArchRule spiIsPlain = classes()
            .that()
            .resideInAPackage("org.tableweather.analyzers.spi..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "java..",
                    "com.fasterxml.jackson.annotation..",
                    "org.tableweather.schema.record..",
                    // names and units of a trial's columns, told once
                    "org.tableweather.schema.table..",
                    "org.tableweather.analyzers.spi..");

    @ArchTest
    static final ArchRule hostKnowsNoAnalyzer = noClasses()
            .that()
            .resideInAPackage("org.tableweather.analyzers.host..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.tableweather.analyzers.standard..");

    @ArchTest
    static final ArchRule schemaKnowsNobody = noClasses()
            .that()
            .resideInAPackage("org.tableweather.schema..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.tableweather.analyzers..", "org.tableweather.server..", "org.tableweather.cli..");

    @ArchTest
    static final ArchRule namesSayWhatAThingKnows =
            noClasses().should().haveNameMatching(".*(Utils?|Manager|Helper|Impl)");
}
