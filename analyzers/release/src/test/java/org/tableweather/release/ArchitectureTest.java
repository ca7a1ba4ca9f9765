package org.tableweather.release;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "org.tableweather.release", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    @ArchTest
    static final ArchRule knowsSchemaSpiAndHostAlone = classes()
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "java..",
                    "com.fasterxml.jackson..",
                    "com.github.luben.zstd..",
                    "org.apache.parquet..",
                    "org.apache.arrow.vector.types..",
                    "org.apache.hadoop.conf..",
                    "org.tableweather.schema..",
                    "org.tableweather.analyzers.spi..",
                    "org.tableweather.analyzers.host..",
                    "org.tableweather.release..");

    @ArchTest
    static final ArchRule namesSayWhatAThingKnows =
            noClasses().should().haveNameMatching(".*(Utils?|Manager|Helper|Impl)");
}
