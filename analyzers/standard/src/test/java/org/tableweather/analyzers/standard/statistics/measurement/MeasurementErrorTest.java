package org.tableweather.analyzers.standard.statistics.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

/** The truth of every simulation is known; sources of the formulas: Fuller 1987; Carroll et al. 2006. */
class MeasurementErrorTest {

    private static final double TRUTH = -0.08;
    private static final int ROOMS = 40;
    private static final int SESSIONS = 5;
    private static final double ROOM_SD = 8;
    private static final double CLIMATE_SD = 6;
    private static final InstrumentError ERROR = new InstrumentError(3, 2);

    /** Rooms' mean humidities and session climates scatter; each room has its hygrometer; no room effect on the response. */
    private static List<SessionPoint> pool(Random random) {
        List<SessionPoint> sessions = new ArrayList<>();
        for (int room = 0; room < ROOMS; room++) {
            double mean = 50 + ROOM_SD * random.nextGaussian();
            double offset = ERROR.offsetSd() * random.nextGaussian();
            for (int session = 0; session < SESSIONS; session++) {
                double humidity = mean + CLIMATE_SD * random.nextGaussian();
                double measured = humidity + offset + ERROR.readingSd() * random.nextGaussian();
                double response = 30 + TRUTH * humidity + 0.3 * random.nextGaussian();
                sessions.add(new SessionPoint("room " + room, "hygrometer " + room, measured, response));
            }
        }
        return sessions;
    }

    private static void assertRefused(Answer<?> answer, Cause cause) {
        assertThat(answer.<Object>fold(value -> value, Refusal::cause)).isEqualTo(cause);
    }

    @Nested
    class Calibration {

        /** True over measured mean squares, from the pool's own variances: the attenuation of the naive slope. */
        private static double reliability(SlopeKind kind) {
            double sessions = ROOMS * SESSIONS;
            double inRoom = ROOMS * (SESSIONS - 1.0);
            double ofOffset = sessions - sessions * SESSIONS * SESSIONS / (SESSIONS * sessions);
            double climate = CLIMATE_SD * CLIMATE_SD;
            double room = ROOM_SD * ROOM_SD;
            double reading = ERROR.readingSd() * ERROR.readingSd();
            double offset = ERROR.offsetSd() * ERROR.offsetSd();
            return switch (kind) {
                case WITHIN_ROOMS -> climate / (climate + reading);
                case BETWEEN_ROOMS ->
                    (climate * (sessions - 1 - inRoom) + room * ofOffset)
                            / ((climate + reading) * (sessions - 1 - inRoom) + (room + offset) * ofOffset);
                case OVER_ALL ->
                    (climate * (sessions - 1) + room * ofOffset)
                            / ((climate + reading) * (sessions - 1) + (room + offset) * ofOffset);
            };
        }

        /** 500 seeded pools. The naive slope shows its known bias; the corrected one is within 1 % of the truth. */
        @ParameterizedTest
        @EnumSource(SlopeKind.class)
        void takesTheKnownBiasOut(SlopeKind kind) {
            Random random = new Random(2026);
            int pools = 500;
            double naive = 0;
            double corrected = 0;
            double squares = 0;
            double errors = 0;
            int covered = 0;
            for (int pool = 0; pool < pools; pool++) {
                CorrectedSlope slope = RegressionCalibration.of(kind, ERROR)
                        .correct(pool(random))
                        .orThrow();
                naive += slope.naive() / pools;
                corrected += slope.corrected() / pools;
                squares += (slope.corrected() - TRUTH) * (slope.corrected() - TRUTH) / pools;
                errors += slope.standardError() * slope.standardError() / pools;
                covered += slope.interval().contains(TRUTH) ? 1 : 0;
            }
            assertThat(naive).isCloseTo(TRUTH * reliability(kind), within(0.01 * Math.abs(TRUTH)));
            assertThat(corrected).isCloseTo(TRUTH, within(0.01 * Math.abs(TRUTH)));
            assertThat(reliability(kind)).isLessThan(0.92);
            assertThat(Math.sqrt(errors / squares)).isBetween(0.9, 1.15);
            assertThat((double) covered / pools).isBetween(0.92, 0.98);
        }

        /** What errors alone add to the squares, averaged over 20,000 draws, with an instrument that moves between rooms. */
        @ParameterizedTest
        @EnumSource(SlopeKind.class)
        void expectsWhatErrorsAdd(SlopeKind kind) {
            String[] rooms = {"a", "a", "a", "b", "b", "c", "c", "c", "c"};
            String[] instruments = {"x", "x", "y", "x", "x", "z", "z", "z", "y"};
            Random random = new Random(kind.ordinal());
            int draws = 20_000;
            double mean = 0;
            double expected = 0;
            for (int draw = 0; draw < draws; draw++) {
                double[] offsets = {3 * random.nextGaussian(), 3 * random.nextGaussian(), 3 * random.nextGaussian()};
                List<SessionPoint> sessions = new ArrayList<>();
                for (int i = 0; i < rooms.length; i++) {
                    double error = offsets[instruments[i].charAt(0) - 'x'] + 2 * random.nextGaussian();
                    sessions.add(new SessionPoint(rooms[i], instruments[i], error, 0));
                }
                SlopeSums sums = new SlopeSums(sessions);
                mean += sums.squares(kind) / draws;
                expected = sums.errorSquares(kind, ERROR);
            }
            GoldenFile.assertNear(mean, expected, 0.03);
        }

        @Test
        void offsetsDoNotTouchTheSlopeWithinRooms() {
            List<SessionPoint> plain = pool(new Random(7));
            List<SessionPoint> shifted = plain.stream()
                    .map(s -> new SessionPoint(
                            s.room(), s.instrument(), s.measured() + s.room().hashCode() % 16, s.response()))
                    .toList();
            RegressionCalibration within = RegressionCalibration.of(SlopeKind.WITHIN_ROOMS, ERROR);
            CorrectedSlope first = within.correct(plain).orThrow();
            CorrectedSlope second = within.correct(shifted).orThrow();
            GoldenFile.assertNear(second.corrected(), first.corrected(), 1e-12);
            GoldenFile.assertNear(second.standardError(), first.standardError(), 1e-11);
            RegressionCalibration offsetOnly =
                    RegressionCalibration.of(SlopeKind.WITHIN_ROOMS, InstrumentError.ofAccuracy(5));
            assertThat(offsetOnly.correct(plain).orThrow().reliability()).isEqualTo(1);
        }

        @Test
        void declinesWhatTheErrorSwamps() {
            List<SessionPoint> sessions = pool(new Random(3));
            RegressionCalibration over = RegressionCalibration.of(SlopeKind.OVER_ALL, new InstrumentError(0, 12));
            assertRefused(over.correct(sessions), Cause.ERROR_SWAMPS);
            assertRefused(over.correct(sessions.subList(0, 10)), Cause.TOO_FEW);
            List<SessionPoint> still = sessions.stream()
                    .map(s -> new SessionPoint(s.room(), s.instrument(), 50, s.response()))
                    .toList();
            assertRefused(over.correct(still), Cause.NO_VARIATION);
        }

        /** JCGM 100: even over ± 3 has the standard deviation √3. */
        @Test
        void readsAStatedAccuracy() {
            assertThat(InstrumentError.ofAccuracy(3).offsetSd()).isCloseTo(Math.sqrt(3), within(1e-15));
            assertThat(InstrumentError.ofAccuracy(3).withReadingSd(1).readingSd())
                    .isEqualTo(1);
            assertThatThrownBy(() -> new InstrumentError(-1, 0)).hasMessageContaining("at least 0");
            assertThatThrownBy(() -> new SessionPoint("cellar", "h", Double.NaN, 0))
                    .hasMessageContaining("cellar");
        }
    }

    @Nested
    class SimulationExtrapolation {

        private static int[] instruments() {
            int[] instruments = new int[ROOMS * SESSIONS];
            for (int i = 0; i < instruments.length; i++) {
                instruments[i] = i / SESSIONS;
            }
            return instruments;
        }

        /** Least squares over all sessions; the variance is that of independent sessions. */
        private static SlopeEstimate leastSquares(List<SessionPoint> sessions, double[] shifts) {
            int n = sessions.size();
            double meanX = 0;
            double meanY = 0;
            for (int i = 0; i < n; i++) {
                meanX += (sessions.get(i).measured() + shifts[i]) / n;
                meanY += sessions.get(i).response() / n;
            }
            double xx = 0;
            double xy = 0;
            double yy = 0;
            for (int i = 0; i < n; i++) {
                double x = sessions.get(i).measured() + shifts[i] - meanX;
                double y = sessions.get(i).response() - meanY;
                xx += x * x;
                xy += x * y;
                yy += y * y;
            }
            double slope = xy / xx;
            return new SlopeEstimate(slope, (yy - slope * xy) / (n - 2) / xx);
        }

        /** In many sessions the slope under added error is a/(c + ζ): the rational curve is regression calibration. */
        @Test
        void theRationalCurveIsRegressionCalibration() {
            List<SessionPoint> sessions = pool(new Random(5));
            double expected = RegressionCalibration.of(SlopeKind.OVER_ALL, ERROR)
                    .correct(sessions)
                    .orThrow()
                    .corrected();
            SimexResult result = Simex.withDefaults(1)
                    .with(Extrapolant.RATIONAL)
                    .withReplicates(2000)
                    .correct(instruments(), ERROR, shifts -> leastSquares(sessions, shifts))
                    .orThrow();
            GoldenFile.assertNear(result.corrected(), expected, 0.01);
            assertThat(Math.abs(result.naive().slope())).isLessThan(0.95 * Math.abs(expected));
        }

        /** 300 seeded pools: nearer to the truth than the naive slope, and its standard error is that of the pools. */
        @Test
        void takesMostOfTheBiasOut() {
            Random random = new Random(99);
            InstrumentError readings = new InstrumentError(0, Math.sqrt(13));
            int pools = 300;
            double naive = 0;
            double corrected = 0;
            double squares = 0;
            double errors = 0;
            for (int pool = 0; pool < pools; pool++) {
                List<SessionPoint> sessions = independent(random);
                SimexResult result = Simex.withDefaults(pool)
                        .withReplicates(60)
                        .correct(instruments(), readings, shifts -> leastSquares(sessions, shifts))
                        .orThrow();
                naive += result.naive().slope() / pools;
                corrected += result.corrected() / pools;
                squares += result.corrected() * result.corrected() / pools;
                errors += Math.pow(result.standardError().orElseThrow(), 2) / pools;
            }
            double reliability = 100 / 113.0;
            assertThat(naive).isCloseTo(TRUTH * reliability, within(0.01 * Math.abs(TRUTH)));
            assertThat(corrected).isCloseTo(TRUTH, within(0.02 * Math.abs(TRUTH)));
            double empirical = Math.sqrt(squares - corrected * corrected);
            assertThat(Math.sqrt(errors) / empirical).isBetween(0.85, 1.15);
        }

        private static List<SessionPoint> independent(Random random) {
            List<SessionPoint> sessions = new ArrayList<>();
            for (int i = 0; i < ROOMS * SESSIONS; i++) {
                double humidity = 50 + 10 * random.nextGaussian();
                double measured = humidity + Math.sqrt(13) * random.nextGaussian();
                double response = 30 + TRUTH * humidity + 0.3 * random.nextGaussian();
                sessions.add(new SessionPoint("room", "hygrometer", measured, response));
            }
            return sessions;
        }

        @Test
        void extrapolantsFollowTheirOwnCurves() {
            double[] factors = {0, 0.5, 1, 1.5, 2};
            double[] line = new double[5];
            double[] bowl = new double[5];
            double[] rational = new double[5];
            for (int i = 0; i < 5; i++) {
                line[i] = 2 - 3 * factors[i];
                bowl[i] = 1 + factors[i] - 0.5 * factors[i] * factors[i];
                rational[i] = 0.2 + 3 / (4 + factors[i]);
            }
            assertThat(Extrapolant.LINEAR.atNoError(factors, line).orElseThrow())
                    .isCloseTo(5, within(1e-12));
            assertThat(Extrapolant.QUADRATIC.atNoError(factors, bowl).orElseThrow())
                    .isCloseTo(-0.5, within(1e-11));
            assertThat(Extrapolant.RATIONAL.atNoError(factors, rational).orElseThrow())
                    .isCloseTo(1.2, within(1e-6));
        }

        @Test
        void aPoleAtNoErrorIsRefused() {
            double[] factors = {0, 0.5, 1, 1.5, 2};
            double[] values = new double[5];
            for (int i = 0; i < 5; i++) {
                values[i] = 1 / (0.7 + factors[i]);
            }
            assertThat(Extrapolant.RATIONAL.atNoError(factors, values)).isEmpty();
        }

        @Test
        void theSameSeedGivesTheSameBits() {
            List<SessionPoint> sessions = pool(new Random(5));
            ShiftedSlope slope = shifts -> leastSquares(sessions, shifts);
            Simex simex = Simex.withDefaults(4).withReplicates(20);
            assertThat(simex.correct(instruments(), ERROR, slope).orThrow())
                    .isEqualTo(simex.correct(instruments(), ERROR, slope).orThrow());
            assertThat(Simex.withDefaults(5)
                            .withReplicates(20)
                            .correct(instruments(), ERROR, slope)
                            .orThrow()
                            .corrected())
                    .isNotEqualTo(
                            simex.correct(instruments(), ERROR, slope).orThrow().corrected());
        }

        @Test
        void withoutErrorNothingChanges() {
            List<SessionPoint> sessions = pool(new Random(5));
            SimexResult result = Simex.withDefaults(4)
                    .withReplicates(5)
                    .correct(instruments(), new InstrumentError(0, 0), shifts -> leastSquares(sessions, shifts))
                    .orThrow();
            GoldenFile.assertNear(result.corrected(), result.naive().slope(), 1e-12);
            assertThat(result.curve()).hasSize(5);
        }

        @Test
        void misuseThrowsAndFaultyEstimatorsAreRefused() {
            assertThatThrownBy(() -> new Simex(new double[] {1, 0.5}, 10, Extrapolant.LINEAR, 1))
                    .hasMessageContaining("rise");
            assertThatThrownBy(() -> new Simex(new double[] {1}, 10, Extrapolant.LINEAR, 1))
                    .hasMessageContaining("2 factors");
            assertRefused(
                    Simex.withDefaults(1).correct(new int[] {0, 1}, ERROR, shifts -> new SlopeEstimate(Double.NaN, 1)),
                    Cause.NOT_CONVERGED);
        }
    }
}
