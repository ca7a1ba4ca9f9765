package org.tableweather.schema.geometry;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "org.tableweather.schema", importOptions = ImportOption.DoNotIncludeTests.class)
class GeometryArchitectureTest {

    @ArchTest
    static final ArchRule KNOWS_RECORDS_AND_THE_JDK_ALONE = classes()
            .that()
            .resideInAPackage("..schema.geometry..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("java..", "..schema.record..", "..schema.geometry..");

    @ArchTest
    static final ArchRule THE_SAME_INPUT_GIVES_THE_SAME_OUTPUT = noClasses()
            .that()
            .resideInAnyPackage("..schema.geometry..", "..schema.diagram..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.io..", "java.nio..", "java.net..", "java.time..")
            .orShould()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.util.Random");
}
