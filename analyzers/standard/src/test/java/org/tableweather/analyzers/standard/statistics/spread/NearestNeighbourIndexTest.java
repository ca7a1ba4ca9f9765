package org.tableweather.analyzers.standard.statistics.spread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class NearestNeighbourIndexTest {

    private static final GoldenFile GOLDEN = GoldenFile.read("spread/nearest-neighbour.properties");

    private static NearestNeighbourIndex measure(EdgeCorrection correction) {
        List<BallPosition> positions = new ArrayList<>();
        for (int i = 0; i < 15; i++) {
            positions.add(new BallPosition(GOLDEN.numbers("x")[i], GOLDEN.numbers("y")[i]));
        }
        return NearestNeighbourIndex.of(positions, 100, 50, correction).orThrow();
    }

    /** The software carries Donnelly's last constant to one digit more, 0.0412: 1e-4 in the index. */
    @Test
    void meetsPublishedSoftware() {
        NearestNeighbourIndex plain = measure(EdgeCorrection.NONE);
        GoldenFile.assertNear(plain.observed(), GOLDEN.number("mean"), 1e-13);
        GoldenFile.assertNear(plain.index(), GOLDEN.number("index.none"), 1e-13);
        GoldenFile.assertNear(plain.pValue(), GOLDEN.number("p.none"), 1e-9);
        NearestNeighbourIndex corrected = measure(EdgeCorrection.DONNELLY);
        double theirs = (0.0412 - 0.041) / Math.sqrt(15) * 300 / 15;
        GoldenFile.assertNear(
                corrected.observed() / (corrected.expected() + theirs), GOLDEN.number("index.donnelly"), 1e-13);
    }

    @Test
    void meetsTheExpectedDistances() {
        assertThat(EdgeCorrection.NONE.mean(15, 5000, 300)).isCloseTo(GOLDEN.number("expected.none.15"), within(5e-6));
        for (int n : new int[] {9, 15, 16}) {
            assertThat(EdgeCorrection.DONNELLY.mean(n, 5000, 300))
                    .isCloseTo(GOLDEN.number("expected.donnelly." + n), within(5e-6));
        }
    }

    /** 40,000 random scatters: the correction's mean within 0.3 %, its standard error within 2 %. */
    @ParameterizedTest
    @CsvSource({"9, 0.003", "15, 0.003", "30, 0.003"})
    void theCorrectionMeetsSimulation(int balls, double tolerance) {
        Random random = new Random(balls);
        int scatters = 40_000;
        double sum = 0;
        double squares = 0;
        double expected = 0;
        double error = 0;
        for (int i = 0; i < scatters; i++) {
            List<BallPosition> positions = new ArrayList<>();
            for (int ball = 0; ball < balls; ball++) {
                positions.add(new BallPosition(100 * random.nextDouble(), 50 * random.nextDouble()));
            }
            NearestNeighbourIndex index = NearestNeighbourIndex.of(positions, 100, 50, EdgeCorrection.DONNELLY)
                    .orThrow();
            sum += index.observed();
            squares += index.observed() * index.observed();
            expected = index.expected();
            error = index.standardError();
        }
        double mean = sum / scatters;
        GoldenFile.assertNear(expected, mean, tolerance);
        GoldenFile.assertNear(error, Math.sqrt(squares / scatters - mean * mean), 0.02);
    }

    /** A rack: every ball touches another, so the mean distance is the diameter. */
    @Test
    void aRackIsClustered() {
        List<BallPosition> rack = new ArrayList<>();
        for (int row = 0; row < 5; row++) {
            for (int ball = 0; ball <= row; ball++) {
                rack.add(new BallPosition(75 + row * 2.25 * Math.sqrt(0.75), 25 + (ball - row / 2.0) * 2.25));
            }
        }
        NearestNeighbourIndex index =
                NearestNeighbourIndex.of(rack, 100, 50, EdgeCorrection.DONNELLY).orThrow();
        assertThat(index.balls()).isEqualTo(15);
        assertThat(index.observed()).isCloseTo(2.25, within(1e-12));
        assertThat(index.index()).isLessThan(0.25);
        assertThat(index.z()).isLessThan(-5);
    }

    @Test
    void oneBallHasNoNeighbour() {
        List<BallPosition> one = List.of(new BallPosition(1, 1));
        assertThat(NearestNeighbourIndex.of(one, 2, 2, EdgeCorrection.NONE)
                        .<Object>fold(value -> value, Refusal::cause))
                .isEqualTo(Cause.TOO_FEW);
    }

    @Test
    void misuseThrows() {
        List<BallPosition> off = List.of(new BallPosition(1, 1), new BallPosition(3, 1));
        assertThatThrownBy(() -> NearestNeighbourIndex.of(off, 2, 2, EdgeCorrection.NONE))
                .hasMessageContaining("outside");
        assertThatThrownBy(() -> NearestNeighbourIndex.of(off, 0, 2, EdgeCorrection.NONE))
                .hasMessageContaining("above 0");
    }
}
