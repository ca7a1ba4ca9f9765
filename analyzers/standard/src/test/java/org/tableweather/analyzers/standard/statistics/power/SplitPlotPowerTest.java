package org.tableweather.analyzers.standard.statistics.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.special.Gamma;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class SplitPlotPowerTest {

    private static final GoldenFile GOLDEN = GoldenFile.read("power/power.properties");
    private static final SplitPlotDesign PLAN = new SplitPlotDesign(8, new double[] {-2, -1, 0, 1, 2}, 1, 20);
    private static final ScatterAssumption SCATTER = new ScatterAssumption(0.25, 0.5, 2);

    @Nested
    class Distributions {

        @Test
        void noncentralTMeetsRAndManyDigits() {
            double[] below = GOLDEN.numbers("t.below");
            assertThat(below).hasSize(175);
            for (int i = 0; i < below.length; i++) {
                double t = GOLDEN.numbers("t.t")[i];
                NoncentralT shifted = new NoncentralT(GOLDEN.numbers("t.df")[i], GOLDEN.numbers("t.ncp")[i]);
                double exact = GOLDEN.numbers("t.exact")[i];
                assertThat(shifted.below(t)).as(shifted + " at " + t).isCloseTo(below[i], within(1e-11));
                assertThat(shifted.below(t)).as(shifted + " at " + t).isCloseTo(exact, within(1e-14));
                assertThat(shifted.above(t)).as(shifted + " at " + t).isCloseTo(1 - exact, within(1e-14));
            }
        }

        @Test
        void noncentralFMeetsRAndManyDigits() {
            double[] below = GOLDEN.numbers("f.below");
            assertThat(below).hasSize(180);
            for (int i = 0; i < below.length; i++) {
                double f = GOLDEN.numbers("f.f")[i];
                NoncentralF shifted = new NoncentralF(
                        GOLDEN.numbers("f.d1")[i], GOLDEN.numbers("f.d2")[i], GOLDEN.numbers("f.ncp")[i]);
                double exact = GOLDEN.numbers("f.exact")[i];
                assertThat(shifted.below(f)).as(shifted + " at " + f).isCloseTo(below[i], within(1e-9));
                assertThat(shifted.below(f)).as(shifted + " at " + f).isCloseTo(exact, within(1e-14));
                assertThat(shifted.above(f)).as(shifted + " at " + f).isCloseTo(1 - exact, within(1e-14));
            }
        }

        /** {@code P(T ≤ t) = ∫ Φ(ts − δ) p(s) ds} over {@code s = √(χ²/ν)}, by Simpson's rule. */
        @ParameterizedTest
        @CsvSource({"1.5, 3, 1", "2.2, 7, 2.5", "-1, 12, -0.5", "40, 25, 38", "0.3, 5, 4"})
        void noncentralTMeetsQuadrature(double t, double df, double ncp) {
            int cells = 20_000;
            double top = 8;
            double sum = 0;
            for (int i = 0; i <= cells; i++) {
                double s = top * i / cells;
                double weight = i == 0 || i == cells ? 1 : i % 2 == 1 ? 4 : 2;
                sum += weight * new NormalDistribution().cumulativeProbability(t * s - ncp) * density(s, df);
            }
            assertThat(new NoncentralT(df, ncp).below(t)).isCloseTo(sum * top / cells / 3, within(1e-10));
        }

        private static double density(double s, double df) {
            if (s == 0) {
                return 0;
            }
            double log = Math.log(2)
                    + df / 2 * Math.log(df / 2)
                    - Gamma.logGamma(df / 2)
                    + (df - 1) * Math.log(s)
                    - df * s * s / 2;
            return Math.exp(log);
        }

        /** With many degrees of freedom {@code T} is {@code Z + δ}, to about {@code 1/ν}. */
        @ParameterizedTest
        @CsvSource({"1.96, 2.8", "1.96, 0", "-1, 0.5", "3, 60"})
        void noncentralTNearsTheNormal(double t, double ncp) {
            double normal = new NormalDistribution().cumulativeProbability(t - ncp);
            assertThat(new NoncentralT(1e6, ncp).below(t)).isCloseTo(normal, within(3e-6));
        }

        /** T² is F on 1 and ν with λ = δ². */
        @ParameterizedTest
        @CsvSource({"2.1, 9, 1.3", "0.4, 3, 0", "5, 40, 4"})
        void aSquaredTIsAnF(double t, double df, double ncp) {
            NoncentralT shifted = new NoncentralT(df, ncp);
            double outside = shifted.above(t) + shifted.below(-t);
            assertThat(new NoncentralF(1, df, ncp * ncp).above(t * t)).isCloseTo(outside, within(1e-13));
        }

        @Test
        void withoutEffectTheyAreTheCentralOnes() {
            assertThat(new NoncentralT(6, 0).below(1.3))
                    .isCloseTo(new TDistribution(6).cumulativeProbability(1.3), within(1e-14));
            assertThatThrownBy(() -> new NoncentralT(0, 1)).hasMessageContaining("df > 0");
            assertThatThrownBy(() -> new NoncentralF(1, 1, -1)).hasMessageContaining("noncentrality");
            assertThat(new NoncentralF(2, 3, 1).below(0)).isZero();
            assertThat(new NoncentralF(2, 3, 1).above(0)).isEqualTo(1);
        }
    }

    /** A published split-plot experiment, six blocks of three whole plots of four sub-plots: {@code golden/power/oats.R}. */
    @Nested
    class YatesOats {

        private static final GoldenFile OATS = GoldenFile.read("power/oats.properties");
        private static final SplitPlotDesign BLOCKS = new SplitPlotDesign(6, new double[] {-1, 0, 1}, 1, 4);

        private static SplitPlotPower power(double wholeVariance, double subVariance) {
            ScatterAssumption scatter = new ScatterAssumption(0, Math.sqrt(wholeVariance), Math.sqrt(subVariance));
            return SplitPlotPower.of(BLOCKS, scatter).with(RoomClaim.THESE_ROOMS);
        }

        /** nlme's standard error of the trend over whole plots; it prints the variances to seven digits. */
        @Test
        void theStandardErrorIsThatOfTheFittedMixedModel() {
            SplitPlotPower fitted = power(OATS.number("lme.wholeVariance"), OATS.number("lme.subVariance"));

            assertThat(fitted.standardError()).isCloseTo(OATS.number("lme.trendError"), within(5e-6));
        }

        /** Whole-plot error is its mean square over 4, less the sub-plots' share; chance by R's pf at the F of the experiment. */
        @Test
        void theChanceToFindTheVarietiesIsThatOfTheWholePlotTest() {
            double subVariance = OATS.number("aov.subMeanSquare");
            SplitPlotPower found = power((OATS.number("aov.wholeMeanSquare") - subVariance) / 4, subVariance);
            double[] means = OATS.numbers("means");
            double[] twice = Arrays.stream(means).map(mean -> 2 * mean).toArray();

            assertThat(OATS.numbers("aov.wholeDf")).containsExactly(2, 10);
            assertThat(found.ofAnyChange(means).orThrow()).isCloseTo(OATS.number("power"), within(1e-9));
            assertThat(found.ofAnyChange(twice).orThrow()).isCloseTo(OATS.number("power.twice"), within(1e-9));
        }
    }

    @Nested
    class Plans {

        @Test
        void meetsAOneSampleTestOfRoomSlopes() {
            double[] rooms = GOLDEN.numbers("plan.rooms");
            for (int i = 0; i < rooms.length; i++) {
                double power = SplitPlotPower.of(PLAN.withRooms((int) rooms[i]), SCATTER)
                        .ofSlope(GOLDEN.numbers("plan.slope")[i])
                        .orThrow();
                assertThat(power).isCloseTo(GOLDEN.numbers("plan.power")[i], within(1e-11));
            }
        }

        @Test
        void findsTheRoomsNeeded() {
            double[] slopes = GOLDEN.numbers("need.slope");
            for (int i = 0; i < slopes.length; i++) {
                assertThat(SplitPlotPower.of(PLAN, SCATTER).roomsNeeded(slopes[i], 0.8, 500))
                        .hasValue((int) GOLDEN.numbers("need.rooms")[i]);
            }
            assertThat(SplitPlotPower.of(PLAN, SCATTER).roomsNeeded(0.1, 0.8, 20))
                    .isEmpty();
        }

        @Test
        void meetsTheTestOfAnyChange() {
            SplitPlotDesign three = new SplitPlotDesign(4, new double[] {30, 45, 60}, 2, 20);
            double power =
                    SplitPlotPower.of(three, SCATTER).ofAnyChange(0, 0.5, 0.2).orThrow();
            assertThat(power).isCloseTo(GOLDEN.number("any.power"), within(1e-9));
            assertThatThrownBy(() -> SplitPlotPower.of(three, SCATTER).ofAnyChange(1, 2))
                    .hasMessageContaining("3 climates");
        }

        @Test
        void theDetectableSlopeIsFoundWithThatChance() {
            SplitPlotPower power = SplitPlotPower.of(PLAN, SCATTER);
            double slope = power.detectableSlope(0.9).orThrow();
            assertThat(power.ofSlope(slope).orThrow()).isCloseTo(0.9, within(1e-10));
            assertThat(power.ofSlope(-slope).orThrow()).isCloseTo(0.9, within(1e-10));
            assertThat(power.ofSlope(0).orThrow()).isCloseTo(0.05, within(1e-12));
        }

        /** Twenty times the trials help little while sessions scatter; sessions help; rooms that differ set a floor. */
        @Test
        void sessionsCountMoreThanTrials() {
            SplitPlotPower these = SplitPlotPower.of(PLAN, SCATTER).with(RoomClaim.THESE_ROOMS);
            SplitPlotDesign manyTrials = new SplitPlotDesign(8, PLAN.climates(), 1, 400);
            double plain = these.ofSlope(0.15).orThrow();
            double trials = these.with(manyTrials).ofSlope(0.15).orThrow();
            double sessions =
                    these.with(PLAN.withSessionsPerClimate(4)).ofSlope(0.15).orThrow();
            assertThat(plain).isLessThan(trials);
            assertThat(trials).isLessThan(sessions);
            assertThat(these.sessionsPerClimateNeeded(0.15, 0.95, 20)).isPresent();
            assertThat(SplitPlotPower.of(PLAN, SCATTER).sessionsPerClimateNeeded(0.15, 0.95, 200))
                    .isEmpty();
        }

        @Test
        void oneRoomSpeaksForItselfOnly() {
            SplitPlotPower one = SplitPlotPower.of(PLAN.withRooms(1), SCATTER);
            assertRefused(one.ofSlope(1), Cause.TOO_FEW);
            assertRefused(one.detectableSlope(0.8), Cause.TOO_FEW);
            SplitPlotPower itself = one.with(RoomClaim.THESE_ROOMS);
            assertThat(itself.df()).isEqualTo(3);
            assertThat(itself.ofSlope(1).orThrow()).isBetween(0.05, 1.0);
            SplitPlotDesign thin = new SplitPlotDesign(1, new double[] {0, 1}, 1, 20);
            assertRefused(SplitPlotPower.of(thin, SCATTER).ofAnyChange(0, 1), Cause.TOO_FEW);
        }

        /** 20,000 seeded pools with the true scatter; the two-stage t test of room slopes; four standard errors. */
        @Test
        void meetsSimulatedPools() {
            double slope = 0.3;
            double expected =
                    SplitPlotPower.of(PLAN.withRooms(6), SCATTER).ofSlope(slope).orThrow();
            double bound = new TDistribution(5).inverseCumulativeProbability(0.975);
            Random random = new Random(42);
            int pools = 20_000;
            int found = 0;
            for (int pool = 0; pool < pools; pool++) {
                double sum = 0;
                double squares = 0;
                for (int room = 0; room < 6; room++) {
                    double estimate = roomSlope(slope, random);
                    sum += estimate;
                    squares += estimate * estimate;
                }
                double error = Math.sqrt((squares - sum * sum / 6) / 5 / 6);
                found += Math.abs(sum / 6 / error) > bound ? 1 : 0;
            }
            double error = Math.sqrt(expected * (1 - expected) / pools);
            assertThat((double) found / pools).isCloseTo(expected, within(4 * error));
        }

        private static double roomSlope(double slope, Random random) {
            double own = slope + SCATTER.roomSlopeSd() * random.nextGaussian();
            double sum = 0;
            for (double climate : PLAN.climates()) {
                double trials = SCATTER.trialSd() / Math.sqrt(20) * random.nextGaussian();
                sum += climate * (own * climate + SCATTER.sessionSd() * random.nextGaussian() + trials);
            }
            return sum / 10;
        }

        @Test
        void misuseThrows() {
            assertThatThrownBy(() -> new SplitPlotDesign(0, new double[] {0, 1}, 1, 1))
                    .hasMessageContaining("at least 1");
            assertThatThrownBy(() -> new SplitPlotDesign(1, new double[] {1, 1}, 1, 1))
                    .hasMessageContaining("two different");
            assertThatThrownBy(() -> new ScatterAssumption(0.1, 0, 0)).hasMessageContaining("scatter");
            assertThatThrownBy(() -> SplitPlotPower.of(PLAN, SCATTER).withAlpha(0))
                    .hasMessageContaining("alpha");
            assertThatThrownBy(() -> SplitPlotPower.of(PLAN, SCATTER).detectableSlope(0.01))
                    .hasMessageContaining("power");
        }

        private static void assertRefused(Answer<?> answer, Cause cause) {
            assertThat(answer.<Object>fold(value -> value, Refusal::cause)).isEqualTo(cause);
        }
    }
}
