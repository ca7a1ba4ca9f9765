package org.tableweather.analyzers.standard.statistics.decay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class DecayModelTest {

    private static final GoldenFile NIST = GoldenFile.read("decay/nist.properties");
    private static final GoldenFile GOLDEN = GoldenFile.read("decay/decay.properties");

    /** All eleven certified digits of the parameters, ten of the standard deviation. */
    @ParameterizedTest
    @ValueSource(strings = {"misra1a", "boxbod"})
    void meetsCertifiedValues(String name) {
        double[] x = NIST.numbers(name + ".x");
        double[] y = NIST.numbers(name + ".y");
        List<DecayPoint> points = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            points.add(DecayPoint.of(x[i], y[i]));
        }

        DecayFit fit = DecayModel.fit(List.of(points), DecayStart.ZERO).orThrow();

        GoldenFile.assertNear(1 / fit.timeConstantHours(), NIST.number(name + ".b2"), 1e-10);
        GoldenFile.assertNear(fit.levels().get(0)[0], NIST.number(name + ".b1"), 1e-10);
        GoldenFile.assertNear(fit.relativeError() / fit.timeConstantHours(), NIST.number(name + ".b2.sd"), 1e-9);
        GoldenFile.assertNear(fit.residualSumOfSquares(), NIST.number(name + ".rss"), 1e-9);
    }

    private static List<List<DecayPoint>> golden() throws IOException {
        List<List<DecayPoint>> steps = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(DecayModelTest.class.getResourceAsStream("/golden/decay/decay.csv")),
                StandardCharsets.UTF_8))) {
            reader.readLine();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] cells = line.split(",");
                steps.get(Integer.parseInt(cells[0]) - 1)
                        .add(DecayPoint.of(Double.parseDouble(cells[1]), Double.parseDouble(cells[2])));
            }
        }
        return steps;
    }

    @Test
    void meetsPublishedSoftwareForSeveralSteps() throws IOException {
        DecayFit fit = DecayModel.fit(golden(), DecayStart.UNKNOWN).orThrow();

        GoldenFile.assertNear(fit.timeConstantHours(), GOLDEN.number("tau"), 1e-6);
        GoldenFile.assertNear(fit.relativeError(), GOLDEN.number("error"), 1e-5);
        GoldenFile.assertNear(fit.residualSumOfSquares(), GOLDEN.number("rss"), 1e-11);
        GoldenFile.assertNear(fit.constantSumOfSquares(), GOLDEN.number("constant"), 1e-11);
        GoldenFile.assertNear(fit.profile().lower(), GOLDEN.number("lower"), 1e-8);
        GoldenFile.assertNear(fit.profile().upper(), GOLDEN.number("upper"), 1e-8);
        assertThat(fit.residualDf()).isEqualTo((long) GOLDEN.number("df"));
        for (int step = 0; step < 3; step++) {
            GoldenFile.assertNear(fit.levels().get(step)[0], GOLDEN.numbers("levels")[2 * step], 1e-6);
            GoldenFile.assertNear(fit.levels().get(step)[1], GOLDEN.numbers("levels")[2 * step + 1], 1e-6);
        }
    }

    /** Observations at one time count as one point with their scatter: every figure stays. */
    @Test
    void pointsOfSeveralObservationsLoseNothing() {
        Random random = new Random(8);
        List<DecayPoint> single = new ArrayList<>();
        List<DecayPoint> gathered = new ArrayList<>();
        for (double hours : new double[] {0.5, 1, 2, 4, 8}) {
            double level = 3 - 2 * Math.exp(-hours / 2.5);
            double first = level + 0.2 * random.nextGaussian();
            double second = level + 0.2 * random.nextGaussian();
            single.add(DecayPoint.of(hours, first));
            single.add(DecayPoint.of(hours, second));
            gathered.add(new DecayPoint(hours, 2, (first + second) / 2, (first - second) * (first - second) / 2));
        }

        DecayFit one = DecayModel.fit(List.of(single), DecayStart.UNKNOWN).orThrow();
        DecayFit other = DecayModel.fit(List.of(gathered), DecayStart.UNKNOWN).orThrow();

        GoldenFile.assertNear(other.timeConstantHours(), one.timeConstantHours(), 1e-9);
        GoldenFile.assertNear(other.residualSumOfSquares(), one.residualSumOfSquares(), 1e-12);
        GoldenFile.assertNear(other.constantSumOfSquares(), one.constantSumOfSquares(), 1e-12);
        assertThat(other.residualDf()).isEqualTo(one.residualDf());
    }

    /** 400 drawn pools of two steps: the interval holds the truth in 95 %, within four Monte Carlo standard errors of 1.1 %. */
    @Test
    void theProfileCoversTheTruth() {
        Random random = new Random(21);
        int held = 0;
        int draws = 400;
        for (int draw = 0; draw < draws; draw++) {
            List<List<DecayPoint>> steps = new ArrayList<>();
            for (int step = 0; step < 2; step++) {
                List<DecayPoint> points = new ArrayList<>();
                for (int i = 0; i < 20; i++) {
                    double hours = 0.2 + 0.7 * i;
                    points.add(
                            DecayPoint.of(hours, 30 + step + 2 * Math.exp(-hours / 3) + 0.4 * random.nextGaussian()));
                }
                steps.add(points);
            }
            held += DecayModel.fit(steps, DecayStart.UNKNOWN)
                            .orThrow()
                            .profile()
                            .contains(3)
                    ? 1
                    : 0;
        }
        assertThat(held / (double) draws).isCloseTo(0.95, within(0.044));
    }

    @Test
    void refusesWhatCannotBeFitted() {
        assertThat(cause(List.of())).isEqualTo(Cause.TOO_FEW);
        assertThat(cause(List.of(List.of(DecayPoint.of(1, 1), DecayPoint.of(2, 2)))))
                .isEqualTo(Cause.TOO_FEW);
        List<DecayPoint> atOnce = List.of(
                DecayPoint.of(0, 1),
                DecayPoint.of(0, 2),
                DecayPoint.of(0, 3),
                DecayPoint.of(0, 4),
                DecayPoint.of(0, 5));
        assertThat(cause(List.of(atOnce))).isEqualTo(Cause.NO_VARIATION);
        List<DecayPoint> exact = new ArrayList<>();
        for (int i = 1; i < 8; i++) {
            exact.add(DecayPoint.of(i, 5 - Math.exp(-i / 2.0)));
        }
        assertThat(cause(List.of(exact))).isEqualTo(Cause.NO_VARIATION);
        assertThatThrownBy(() -> DecayPoint.of(-1, 2)).hasMessageContaining("hours >= 0");
    }

    private static Cause cause(List<List<DecayPoint>> steps) {
        Answer<DecayFit> answer = DecayModel.fit(steps, DecayStart.UNKNOWN);
        return answer.<Cause>fold(fit -> Cause.COLLINEAR, Refusal::cause);
    }

    /** Scatter alone sets no bound to the time constant on one side at least, in most draws. */
    @Test
    void scatterAloneBoundsNothing() {
        Random random = new Random(4);
        int open = 0;
        for (int draw = 0; draw < 50; draw++) {
            List<DecayPoint> points = new ArrayList<>();
            for (int i = 1; i <= 12; i++) {
                points.add(DecayPoint.of(i, random.nextGaussian()));
            }
            DecayFit fit = DecayModel.fit(List.of(points), DecayStart.UNKNOWN).orThrow();
            open += fit.profile().lower() == 0
                            || Double.isInfinite(fit.profile().upper())
                    ? 1
                    : 0;
        }
        assertThat(open).isGreaterThan(35);
    }
}
