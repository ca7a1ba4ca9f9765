package org.tableweather.cli.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.schema.check.Severity;

/** The expected figures are those that the data were generated from. */
class InventedLeagueTest {
    private static final Truth TRUTH = Truth.ofTheDemo();
    private static final long SEED = 7;

    @TempDir
    private static Path parent;

    private static List<Path> folders;

    @BeforeAll
    static void generate() throws IOException {
        folders = new InventedLeague(TRUTH, SEED).write(parent.resolve("once"));
    }

    @Test
    void givesTheSameBytesForTheSameSeed() throws Exception {
        new InventedLeague(TRUTH, SEED).write(parent.resolve("again"));
        new InventedLeague(TRUTH, SEED + 1).write(parent.resolve("other"));

        assertThat(content(parent.resolve("again"))).isEqualTo(content(parent.resolve("once")));
        assertThat(content(parent.resolve("other"))).isNotEqualTo(content(parent.resolve("once")));
    }

    @Test
    void isMarkedAsInventedEverywhere() throws Exception {
        assertThat(folders).hasSize(12);
        for (Path folder : folders) {
            assertThat(Files.readString(folder.resolve("contribution.json")))
                    .contains("\"invented\" : true")
                    .contains("INVENTED DATA");
        }
    }

    /** Expected: {@link RailTruth}, within four standard errors. */
    @Test
    void letsTheRailModelFindItsTruth() throws Exception {
        Analyzer<?> rail = AnalyzerCatalogue.discover().find("rail-model").orElseThrow();
        Map<String, Analysis.Estimate> found = new TreeMap<>();
        ((Analysis.Estimated) concluded(rail)).estimates().forEach(each -> found.put(each.name(), each));
        RailTruth truth = RailTruth.ofTheDemo();
        Map<String, Double> expected = Map.of(
                "restitution", truth.restitution(),
                "restitution.humidity", truth.restitutionHumidity(),
                "friction", truth.friction(),
                "friction.humidity", 100 * Math.expm1(truth.frictionHumidity()),
                "friction.temperature", 100 * Math.expm1(truth.frictionTemperature()));

        expected.forEach((name, value) -> assertThat(found.get(name).value())
                .as(name)
                .isEqualTo(value, within(4 * found.get(name).standardError())));
    }

    private static <S> Analysis concluded(Analyzer<S> analyzer) throws IOException {
        LocalSummaries<S> read = LocalSummaries.read(analyzer, folders, bytes -> {});
        return AnalysisRun.conclude(analyzer, read.source(), Map.of()).analysis();
    }

    // among 1,560 normal values and 360 paths a few lie far out in a session of twenty: chance, not a fault of the
    // folders
    @Test
    void passesTheChecksWithoutWarningsButOfOutliers() throws Exception {
        LocalSummaries<?> read = LocalSummaries.read(analyzer(), folders, bytes -> {});

        assertThat(read.isRefused()).isFalse();
        assertThat(read.summaries()).hasSize(60);
        read.reports()
                .forEach((folder, report) -> assertThat(report.findings())
                        .as(folder.toString())
                        .noneMatch(finding -> finding.severity() != Severity.NOTE
                                && !finding.check().equals("statistics.outlier")));
    }

    @Test
    void letsThePooledAnalysisFindTheTruthWithin4StandardErrors() throws Exception {
        Analysis.Estimated answer = analysed(folders);

        assertNear(answer, "intercept", TRUTH.interceptDeg());
        assertNear(answer, "humidity", TRUTH.humidityDeg());
        assertNear(answer, "humidity.squared", TRUTH.humiditySquaredDeg());
        assertNear(answer, "temperature", TRUTH.temperatureDeg());
        double residual = answer.variance().stream()
                .filter(one -> one.name().equals("residual"))
                .findFirst()
                .orElseThrow()
                .sd()
                .getAsDouble();
        // the standard error of a standard deviation from n normal values is near sd/sqrt(2n)
        assertThat(Math.abs(residual - TRUTH.trialSd())).isLessThan(4 * TRUTH.trialSd() / Math.sqrt(2 * 1200));
    }

    private static void assertNear(Analysis.Estimated answer, String name, double truth) {
        Analysis.Estimate estimate = answer.estimates().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
        assertThat(Math.abs(estimate.value() - truth))
                .as("%s: %s, truth %s, standard error %s", name, estimate.value(), truth, estimate.standardError())
                .isLessThan(4 * estimate.standardError());
    }

    private static Analysis.Estimated analysed(List<Path> paths) throws IOException {
        return (Analysis.Estimated) concluded(analyzer(), paths).analysis();
    }

    private static <S> AnalysisRun concluded(Analyzer<S> analyzer, List<Path> paths) throws IOException {
        String shot = DemoShots.ofTheCatalogue().pooled().id();
        LocalSummaries<S> local = LocalSummaries.read(analyzer, paths, bytes -> {});
        return AnalysisRun.conclude(analyzer, local.source(), Map.of("shot", shot));
    }

    private static Analyzer<?> analyzer() {
        return AnalyzerCatalogue.discover().find("rebound-humidity").orElseThrow();
    }

    private static Map<String, String> content(Path folder) throws IOException {
        Map<String, String> content = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                content.put(folder.relativize(file).toString(), Files.readString(file));
            }
        }
        return content;
    }
}
