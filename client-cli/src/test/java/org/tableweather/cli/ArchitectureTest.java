package org.tableweather.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "org.tableweather.cli", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    @ArchTest
    static final ArchRule theDemoKnowsTheFormatAndBallsAlone = classes()
            .that()
            .resideInAPackage("..cli.demo..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "java..",
                    "org.tableweather.schema..",
                    "org.tableweather.cli.demo..",
                    // how a ball moves and meets a rail; what the demo invents is never what the fit assumes
                    "org.tableweather.analyzers.standard.physics..");

    @ArchTest
    static final ArchRule theDemoIsMadeWithoutClockAndFreeChance = noClasses()
            .that()
            .resideInAPackage("..cli.demo..")
            .should()
            .callMethod(Math.class, "random")
            .orShould()
            .callMethod(java.time.Instant.class, "now")
            .orShould()
            .callMethod(System.class, "currentTimeMillis");

    @ArchTest
    static final ArchRule namesSayWhatATypeKnows =
            noClasses().should().haveNameMatching(".*(Utils?|Manager|Helper|Impl)");

    @ArchTest
    static final ArchRule commandsAreCalledCommands = classes()
            .that()
            .areAnnotatedWith(picocli.CommandLine.Command.class)
            .and()
            .areTopLevelClasses()
            .and()
            .doNotHaveSimpleName("Cli")
            .should()
            .haveSimpleNameEndingWith("Command")
            .andShould()
            .notBePublic();
}
