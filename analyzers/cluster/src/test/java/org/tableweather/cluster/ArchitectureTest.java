package org.tableweather.cluster;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "org.tableweather.cluster", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    @ArchTest
    static final ArchRule knowsHostsAndSparkButNoAnalyzer = classes()
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "java..",
                    "scala..",
                    "org.apache.spark..",
                    "picocli..",
                    "org.tableweather.schema..",
                    "org.tableweather.analyzers.spi..",
                    "org.tableweather.analyzers.host..",
                    "org.tableweather.release..",
                    "org.tableweather.cluster..");

    @ArchTest
    static final ArchRule namesSayWhatAThingKnows =
            noClasses().should().haveNameMatching(".*(Utils?|Manager|Helper|Impl)");
}
