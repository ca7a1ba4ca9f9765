package org.tableweather.server;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import jakarta.inject.Inject;
import jakarta.persistence.Entity;
import jakarta.ws.rs.Path;
import java.util.ServiceLoader;
import org.tableweather.analyzers.host.AnalyzerCatalogue;

@AnalyzeClasses(packages = "org.tableweather.server", importOptions = DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String ROOT = "org.tableweather.server";

    private static ArchRule knowsOnly(String feature, String... known) {
        String[] allowed = new String[known.length + 1];
        allowed[0] = ROOT + "." + feature + "..";
        for (int i = 0; i < known.length; i++) {
            allowed[i + 1] = ROOT + "." + known[i] + "..";
        }
        return noClasses()
                .that()
                .resideInAPackage(ROOT + "." + feature + "..")
                .should()
                .dependOnClassesThat(resideInAnyPackage(ROOT + "..")
                        .and(resideInAnyPackage(allowed).negate()));
    }

    @ArchTest
    static final ArchRule noCycles = slices().matching(ROOT + ".(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule webKnowsNoFeature = knowsOnly("web");

    @ArchTest
    static final ArchRule dataFolder = knowsOnly("datafolder");

    @ArchTest
    static final ArchRule embedded = knowsOnly("embedded", "datafolder");

    @ArchTest
    static final ArchRule accounts = knowsOnly("accounts", "web", "datafolder");

    @ArchTest
    static final ArchRule catalogue = knowsOnly("catalogue", "web", "accounts");

    @ArchTest
    static final ArchRule contribution = knowsOnly("contribution", "web", "datafolder", "accounts", "catalogue");

    @ArchTest
    static final ArchRule analysis = knowsOnly("analysis", "web", "accounts", "catalogue", "plugin");

    @ArchTest
    static final ArchRule release =
            knowsOnly("release", "web", "datafolder", "accounts", "catalogue", "contribution", "analysis");

    @ArchTest
    static final ArchRule guide = knowsOnly("guide", "web");

    @ArchTest
    static final ArchRule logbook = knowsOnly("logbook", "web");

    @ArchTest
    static final ArchRule plugin = knowsOnly("plugin", "web", "datafolder");

    @ArchTest
    static final ArchRule entitiesAreHidden =
            classes().that().areAnnotatedWith(Entity.class).should().bePackagePrivate();

    @ArchTest
    static final ArchRule resourcesAreNamedSo = classes()
            .that()
            .areAnnotatedWith(Path.class)
            .should()
            .haveSimpleNameEndingWith("Resource")
            .orShould()
            .haveSimpleNameEndingWith("Pages");

    @ArchTest
    static final ArchRule noInjectedFields = fields().should().notBeAnnotatedWith(Inject.class);

    @ArchTest
    static final ArchRule oneDoorToPlugins = noClasses()
            .that()
            .doNotHaveFullyQualifiedName(ROOT + ".analysis.Analyzers")
            .should()
            .dependOnClassesThat()
            .belongToAnyOf(ServiceLoader.class, AnalyzerCatalogue.class);

    @ArchTest
    static final ArchRule namesSayWhatAThingKnows = noClasses()
            .should()
            .haveSimpleNameEndingWith("Util")
            .orShould()
            .haveSimpleNameEndingWith("Utils")
            .orShould()
            .haveSimpleNameEndingWith("Manager")
            .orShould()
            .haveSimpleNameEndingWith("Helper")
            .orShould()
            .haveSimpleNameEndingWith("Impl");
}
