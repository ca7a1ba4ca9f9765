package org.tableweather.analyzers.standard.statistics.binomial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class BinomialMixedModelTest {

    private static final GoldenFile GOLDEN = GoldenFile.read("binomial/cbpp.properties");

    private static List<BinomialCell> cbpp() {
        String[] herds = GOLDEN.words("herd");
        double[] periods = GOLDEN.numbers("period");
        List<BinomialCell> cells = new ArrayList<>();
        for (int i = 0; i < herds.length; i++) {
            double[] columns = {is(periods[i], 2), is(periods[i], 3), is(periods[i], 4)};
            long incidence = (long) GOLDEN.numbers("incidence")[i];
            cells.add(new BinomialCell(herds[i], columns, incidence, (long) GOLDEN.numbers("size")[i]));
        }
        return cells;
    }

    private static double is(double period, double which) {
        return period == which ? 1 : 0;
    }

    /** 40-digit arithmetic; standard errors are from differences here, to eight digits. */
    @ParameterizedTest
    @ValueSource(ints = {1, 9})
    void meetsTheExactTop(int points) {
        BinomialFit fit =
                BinomialMixedModel.withDefaults().withPoints(points).fit(cbpp()).orThrow();
        double[] exact = GOLDEN.numbers("exact." + points);
        double[] errors = GOLDEN.numbers("exact." + points + ".se");
        for (int i = 0; i < fit.coefficients(); i++) {
            GoldenFile.assertNear(fit.coefficient(i).value(), exact[i], 1e-11);
            GoldenFile.assertNear(fit.coefficient(i).standardError(), errors[i], 1e-8);
        }
        GoldenFile.assertNear(fit.clusterSd(), exact[4], 1e-11);
        GoldenFile.assertNear(fit.clusterSdStandardError().orElseThrow(), errors[4], 1e-8);
        assertThat(fit.logLikelihood()).isCloseTo(GOLDEN.number("exact." + points + ".logLik"), within(1e-11));
    }

    /** The software stops at 2e-8 for one point, as the exact top shows, and at 1e-8 for more. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 9, 15, 25})
    void meetsPublishedSoftware(int points) {
        BinomialFit fit =
                BinomialMixedModel.withDefaults().withPoints(points).fit(cbpp()).orThrow();
        double tolerance = points == 1 ? 3e-8 : 1e-8;
        GoldenFile.assertNear(fit.clusterSd(), GOLDEN.number(points + ".sd"), tolerance);
        for (int i = 0; i < fit.coefficients(); i++) {
            GoldenFile.assertNear(fit.coefficient(i).value(), GOLDEN.numbers(points + ".fixef")[i], tolerance);
            GoldenFile.assertNear(fit.coefficient(i).standardError(), GOLDEN.numbers(points + ".se")[i], 1e-6);
        }
        GoldenFile.assertNear(fit.clusterSdStandardError().orElseThrow(), GOLDEN.number(points + ".sd.se"), 1e-6);
        double deviance = points == 1 ? -2 * fit.logLikelihood() : fit.deviance();
        assertThat(deviance).isCloseTo(GOLDEN.number(points + ".deviance"), within(points == 1 ? 2e-8 : 1e-9));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 9})
    void meetsTheConditionalModes(int points) {
        List<ClusterMode> modes = BinomialMixedModel.withDefaults()
                .withPoints(points)
                .fit(cbpp())
                .orThrow()
                .modes();
        assertThat(modes).hasSize(15);
        for (int i = 0; i < modes.size(); i++) {
            assertThat(modes.get(i).cluster()).isEqualTo(Integer.toString(i + 1));
            assertThat(modes.get(i).value()).isCloseTo(GOLDEN.numbers(points + ".mode")[i], within(1e-6));
            assertThat(modes.get(i).standardDeviation())
                    .isCloseTo(GOLDEN.numbers(points + ".mode.sd")[i], within(1e-6));
        }
    }

    @Test
    void laplaceHasTheWholeLikelihood() {
        BinomialFit fit =
                BinomialMixedModel.withDefaults().withPoints(1).fit(cbpp()).orThrow();
        assertThat(fit.logLikelihood()).isCloseTo(GOLDEN.number("1.logLik"), within(1e-8));
        assertThat(fit.akaike()).isCloseTo(GOLDEN.number("1.AIC"), within(2e-8));
        assertThat(fit.clusters()).isEqualTo(15);
        assertThat(fit.attempts()).isEqualTo(842);
    }

    @Test
    void manyPointsMeetAnIndependentImplementation() {
        BinomialFit fit =
                BinomialMixedModel.withDefaults().withPoints(50).fit(cbpp()).orThrow();
        double[] expected = GOLDEN.numbers("ml60");
        assertThat(fit.clusterSd()).isCloseTo(expected[0], within(2e-7));
        for (int i = 0; i < fit.coefficients(); i++) {
            assertThat(fit.coefficient(i).value()).isCloseTo(expected[i + 1], within(2e-7));
        }
    }

    @Test
    void showsTheNaiveAnswerBeside() {
        BinomialFit fit = BinomialMixedModel.withDefaults().fit(cbpp()).orThrow();
        assertThat(fit.naiveLogLikelihood()).isCloseTo(GOLDEN.number("glm.logLik"), within(1e-10));
        for (int i = 0; i < fit.coefficients(); i++) {
            GoldenFile.assertNear(fit.naiveCoefficient(i).value(), GOLDEN.numbers("glm.coef")[i], 1e-8);
            GoldenFile.assertNear(fit.naiveCoefficient(i).standardError(), GOLDEN.numbers("glm.se")[i], 1e-6);
        }
    }

    /** Odds do not depend on where a column is counted from, nor on its unit. */
    @Test
    void aShiftedAndStretchedColumnGivesTheSameOdds() {
        List<BinomialCell> plain = drawn(20, 1, 0.8, 3);
        List<BinomialCell> moved = plain.stream()
                .map(c ->
                        new BinomialCell(c.cluster(), new double[] {50 + 10 * c.columns()[0]}, c.made(), c.attempts()))
                .toList();
        BinomialFit first = BinomialMixedModel.withDefaults().fit(plain).orThrow();
        BinomialFit second = BinomialMixedModel.withDefaults().fit(moved).orThrow();
        GoldenFile.assertNear(
                second.coefficient(1).value() * 10, first.coefficient(1).value(), 1e-9);
        GoldenFile.assertNear(
                second.contrast(1, 60).standardError(), first.contrast(1, 1).standardError(), 1e-8);
        GoldenFile.assertNear(
                second.contrast(1, 60).value(), first.contrast(1, 1).value(), 1e-8);
    }

    /** Splitting a cell in two changes only the binomial constant. */
    @Test
    void splittingACellChangesNothing() {
        List<BinomialCell> split = new ArrayList<>(cbpp());
        BinomialCell whole = split.remove(0);
        split.add(0, new BinomialCell(whole.cluster(), whole.columns(), 1, 6));
        split.add(1, new BinomialCell(whole.cluster(), whole.columns(), whole.made() - 1, whole.attempts() - 6));
        BinomialFit first = BinomialMixedModel.withDefaults().fit(cbpp()).orThrow();
        BinomialFit second = BinomialMixedModel.withDefaults().fit(split).orThrow();
        for (int i = 0; i < first.coefficients(); i++) {
            GoldenFile.assertNear(
                    second.coefficient(i).value(), first.coefficient(i).value(), 1e-9);
        }
        GoldenFile.assertNear(second.clusterSd(), first.clusterSd(), 1e-9);
    }

    /** Truth: slope −0.4, room sd 0.7; 60 rooms of 5 sessions with 40 attempts. Four standard errors. */
    @Test
    void findsTheTruthItWasDrawnFrom() {
        BinomialFit fit =
                BinomialMixedModel.withDefaults().fit(drawn(60, 5, 0.7, 11)).orThrow();
        BinomialEffect slope = fit.coefficient(1);
        assertThat(slope.value()).isCloseTo(-0.4, within(4 * slope.standardError()));
        assertThat(fit.clusterSd())
                .isCloseTo(0.7, within(4 * fit.clusterSdStandardError().orElseThrow()));
        assertThat(slope.standardError()).isLessThan(0.05);
    }

    @Test
    void roomsThatDifferOnlyByLuckHaveNoVariance() {
        List<BinomialCell> alike = List.of(
                new BinomialCell("a", new double[] {0}, 10, 20), new BinomialCell("a", new double[] {1}, 12, 20),
                new BinomialCell("b", new double[] {0}, 10, 20), new BinomialCell("b", new double[] {1}, 12, 20),
                new BinomialCell("c", new double[] {0}, 10, 20), new BinomialCell("c", new double[] {1}, 12, 20));
        BinomialFit fit = BinomialMixedModel.withDefaults().fit(alike).orThrow();
        assertThat(fit.clusterSd()).isZero();
        assertThat(fit.clusterSdStandardError()).isEmpty();
        assertThat(fit.coefficient(0).value()).isCloseTo(0, within(1e-12));
        assertThat(fit.coefficient(1).value()).isCloseTo(Math.log(1.5), within(1e-9));
        assertThat(fit.coefficient(1).oddsRatio()).isCloseTo(1.5, within(1e-9));
        assertThat(fit.coefficient(1).standardError())
                .isCloseTo(fit.naiveCoefficient(1).standardError(), within(1e-9));
        assertThat(fit.logLikelihood()).isCloseTo(fit.naiveLogLikelihood(), within(1e-10));
        assertThat(fit.modes()).allSatisfy(mode -> assertThat(mode.value()).isZero());
    }

    @Test
    void declinesWhatCannotBeEstimated() {
        double[] none = {};
        assertRefused(List.of(new BinomialCell("a", none, 1, 3)), Cause.TOO_FEW);
        assertRefused(List.of(new BinomialCell("a", none, 1, 1), new BinomialCell("b", none, 0, 1)), Cause.TOO_FEW);
        assertRefused(
                List.of(new BinomialCell("a", none, 3, 3), new BinomialCell("b", none, 2, 2)), Cause.NO_VARIATION);
        assertRefused(
                List.of(new BinomialCell("a", new double[] {4}, 1, 3), new BinomialCell("b", new double[] {4}, 2, 3)),
                Cause.COLLINEAR);
        assertRefused(
                List.of(
                        new BinomialCell("a", new double[] {30}, 5, 5),
                        new BinomialCell("a", new double[] {60}, 0, 5),
                        new BinomialCell("b", new double[] {35}, 6, 6),
                        new BinomialCell("b", new double[] {70}, 0, 6)),
                Cause.SEPARATION);
    }

    @Test
    void misuseThrows() {
        assertThatThrownBy(() -> new BinomialCell("cellar", new double[0], 4, 3))
                .hasMessageContaining("cellar");
        assertThatThrownBy(() -> new BinomialCell("cellar", new double[] {Double.NaN}, 1, 3))
                .hasMessageContaining("finite");
        assertThatThrownBy(() -> BinomialMixedModel.withDefaults().withPoints(0))
                .hasMessageContaining("1 to 50");
        List<BinomialCell> uneven =
                List.of(new BinomialCell("a", new double[1], 1, 3), new BinomialCell("b", new double[2], 1, 3));
        assertThatThrownBy(() -> BinomialMixedModel.withDefaults().fit(uneven)).hasMessageContaining("columns");
    }

    private static List<BinomialCell> drawn(int rooms, int sessions, double sd, long seed) {
        Random random = new Random(seed);
        List<BinomialCell> cells = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            double departure = sd * random.nextGaussian();
            for (int session = 0; session < sessions; session++) {
                double humidity = random.nextGaussian();
                double p = 1 / (1 + Math.exp(-(0.3 - 0.4 * humidity + departure)));
                long made = random.doubles(40).filter(d -> d < p).count();
                cells.add(new BinomialCell("room " + room, new double[] {humidity}, made, 40));
            }
        }
        return cells;
    }

    private static void assertRefused(List<BinomialCell> cells, Cause cause) {
        Answer<BinomialFit> answer = BinomialMixedModel.withDefaults().fit(cells);
        assertThat(answer.<Object>fold(value -> value, Refusal::cause)).isEqualTo(cause);
    }
}
