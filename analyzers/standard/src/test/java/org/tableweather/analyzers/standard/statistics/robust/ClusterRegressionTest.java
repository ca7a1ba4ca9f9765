package org.tableweather.analyzers.standard.statistics.robust;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class ClusterRegressionTest {

    private static final double TIGHT = 1e-11;

    private static GoldenFile golden(String data) {
        return GoldenFile.read("robust/" + data + ".properties");
    }

    private static List<Cluster> clusters(GoldenFile golden, double shift) {
        int columns = golden.numbers("coef").length;
        List<Cluster> clusters = new ArrayList<>();
        for (String label : golden.words("clusters")) {
            MomentsBuilder builder = new MomentsBuilder(columns);
            int rows = golden.numbers(label + ".0").length;
            for (int i = 0; i < rows; i++) {
                double[] row = new double[columns];
                for (int column = 0; column < columns; column++) {
                    row[column] = golden.numbers(label + "." + column)[i] + (column == 0 ? shift : 0);
                }
                builder.add(row);
            }
            clusters.add(new Cluster(label, builder.build()));
        }
        return clusters;
    }

    private static RobustFit fit(GoldenFile golden, Correction correction) {
        return ClusterRegression.withDefaults()
                .with(correction)
                .fit(clusters(golden, 0))
                .orThrow();
    }

    @ParameterizedTest
    @CsvSource({
        "sleepstudy, CR0", "sleepstudy, CR1", "sleepstudy, CR1S", "sleepstudy, CR2", "sleepstudy, CR3",
        "orthodont, CR0", "orthodont, CR1", "orthodont, CR1S", "orthodont, CR2", "orthodont, CR3",
        "chickweight, CR0", "chickweight, CR1", "chickweight, CR1S", "chickweight, CR2", "chickweight, CR3"
    })
    void meetsTheStandardErrorsOfPublishedSoftware(String data, Correction correction) {
        GoldenFile golden = golden(data);
        RobustFit fit = fit(golden, correction);
        GoldenFile.assertNear(fit.residualVariance(), golden.number("sigma2"), TIGHT);
        for (int i = 0; i < fit.coefficients(); i++) {
            RobustEffect effect = fit.coefficient(i);
            GoldenFile.assertNear(effect.value(), golden.numbers("coef")[i], TIGHT);
            GoldenFile.assertNear(effect.standardError(), golden.numbers("se." + correction)[i], TIGHT);
            GoldenFile.assertNear(effect.naiveStandardError(), golden.numbers("se.classic")[i], TIGHT);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"sleepstudy", "orthodont", "chickweight"})
    void meetsTheDegreesOfFreedomOfPublishedSoftware(String data) {
        GoldenFile golden = golden(data);
        RobustFit fit = fit(golden, Correction.CR2);
        for (int i = 0; i < fit.coefficients(); i++) {
            RobustEffect effect = fit.coefficient(i);
            GoldenFile.assertNear(effect.df(), golden.numbers("df")[i], TIGHT);
            GoldenFile.assertNear(effect.statistic(), golden.numbers("t")[i], TIGHT);
            GoldenFile.assertNear(effect.pValue(), golden.numbers("p")[i], 1e-9);
            for (int j = 0; j < fit.coefficients(); j++) {
                GoldenFile.assertNear(fit.covariance(i, j), golden.numbers("vcov." + i)[j], 1e-9);
            }
        }
        assertThat(fit.decisive()).isEmpty();
    }

    /** A shift of a column moves only the intercept: to {@code b₀ − shift b₁}. */
    @Test
    void keepsItsDigitsFarFromTheOrigin() {
        GoldenFile golden = golden("sleepstudy");
        RobustFit plain = fit(golden, Correction.CR2);
        RobustFit far =
                ClusterRegression.withDefaults().fit(clusters(golden, 1e6)).orThrow();
        GoldenFile.assertNear(
                far.coefficient(1).standardError(), plain.coefficient(1).standardError(), 1e-9);
        GoldenFile.assertNear(far.contrast(1, 1e6).value(), plain.coefficient(0).value(), 1e-9);
        GoldenFile.assertNear(far.contrast(1, 1e6).df(), plain.coefficient(0).df(), 1e-8);
    }

    /** With one row per cluster CR2 is the HC2 covariance: {@code Σ xᵢxᵢ' eᵢ²/(1 − hᵢ)} for a mean is {@code s²/n}. */
    @Test
    void oneRowPerClusterGivesTheStandardErrorOfAMean() {
        List<Cluster> clusters = new ArrayList<>();
        double[] values = {2, 4, 4, 4, 5, 5, 7, 9};
        for (double value : values) {
            clusters.add(cluster("c" + clusters.size(), new double[] {value}));
        }
        RobustEffect mean =
                ClusterRegression.withDefaults().fit(clusters).orThrow().coefficient(0);
        assertThat(mean.value()).isCloseTo(5, within(1e-14));
        assertThat(mean.standardError()).isCloseTo(Math.sqrt(32.0 / 7 / 8), within(1e-14));
        assertThat(mean.df()).isCloseTo(7, within(1e-11));
    }

    @Test
    void namesTheClusterThatDecidesAlone() {
        List<Cluster> clusters = List.of(
                cluster("plain", new double[] {0, 1}, new double[] {0, 2}, new double[] {0, 4}),
                cluster("also plain", new double[] {0, 3}, new double[] {0, 5}, new double[] {0, 4}),
                cluster("the only damp one", new double[] {1, 3}, new double[] {1, 5}));
        RobustFit fit = ClusterRegression.withDefaults().fit(clusters).orThrow();
        assertThat(fit.decisive()).containsExactly("the only damp one");
        assertThat(fit.coefficient(1).standardError()).isFinite();
    }

    @Test
    void declinesWhatCannotBeEstimated() {
        Cluster a = cluster("a", new double[] {0, 1}, new double[] {1, 2}, new double[] {2, 4});
        Cluster b = cluster("b", new double[] {0, 2}, new double[] {1, 2}, new double[] {2, 3});
        Cluster flat = cluster("flat", new double[] {1, 2}, new double[] {1, 5});
        Cluster single = cluster("single", new double[] {0, 2});
        Cluster exact = cluster("exact", new double[] {0, 0}, new double[] {1, 2}, new double[] {2, 4});
        assertRefused(List.of(a), Cause.TOO_FEW);
        assertRefused(List.of(single, single), Cause.TOO_FEW);
        assertRefused(List.of(flat, flat), Cause.COLLINEAR);
        assertRefused(List.of(exact, exact), Cause.NO_VARIATION);
        assertThat(ClusterRegression.withDefaults().fit(List.of(a, b)).orThrow().clusters())
                .isEqualTo(2);
    }

    @Test
    void misuseThrows() {
        Cluster wide = cluster("wide", new double[] {0, 1}, new double[] {1, 2});
        Cluster narrow = cluster("narrow", new double[] {0}, new double[] {1});
        assertThatThrownBy(() -> ClusterRegression.withDefaults().fit(List.of(wide, narrow)))
                .hasMessageContaining("columns");
        assertThatThrownBy(() -> new Cluster("empty", Moments.none(2))).hasMessageContaining("empty");
        RobustFit fit = fit(golden("sleepstudy"), Correction.CR2);
        assertThatThrownBy(() -> fit.contrast(1)).hasMessageContaining("2 weights, got 1");
    }

    private static Cluster cluster(String label, double[]... rows) {
        MomentsBuilder builder = new MomentsBuilder(rows[0].length);
        for (double[] row : rows) {
            builder.add(row);
        }
        return new Cluster(label, builder.build());
    }

    private static void assertRefused(List<Cluster> clusters, Cause cause) {
        Answer<RobustFit> answer = ClusterRegression.withDefaults().fit(clusters);
        assertThat(answer.<Object>fold(value -> value, Refusal::cause)).isEqualTo(cause);
    }
}
