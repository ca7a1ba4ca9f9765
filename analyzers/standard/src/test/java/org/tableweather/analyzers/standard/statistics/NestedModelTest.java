package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton.Minimum;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel.Covariance;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;
import org.tableweather.analyzers.standard.statistics.NestedModel.Sessions;
import org.tableweather.analyzers.standard.statistics.NestedRefusal.Cause;

class NestedModelTest {

    private static final NestedModel SLOPES = NestedModel.withDefaults().withRandom(0, 1);

    @Nested
    class AtTheBoundary {

        private final JsonNode golden = Golden.json("boundary.json");

        @Test
        void reportsARoomVarianceOfZero() {
            JsonNode expected = golden.get("dyestuff2");
            NestedFit fit = fitted(NestedModel.withDefaults().with(Sessions.ALIKE), dyestuff2());

            assertThat(fit.criterion()).isEqualTo(expected.get("lmer_crit").asDouble(), within(1e-9));
            assertThat(fit.roomCovariance()[0][0]).isEqualTo(0, within(1e-12));
            assertThat(fit.cautions()).containsExactly(Caution.ROOM_ZERO);
            Quantity mean = fit.coefficient(0).orElseThrow();
            assertThat(mean.value()).isEqualTo(expected.get("beta").get(0).asDouble(), within(1e-12));
            assertThat(mean.standardError()).isEqualTo(expected.get("se").get(0).asDouble(), within(1e-9));
            assertThat(mean.df()).isEqualTo(expected.get("df").get(0).asDouble(), within(1e-6));
        }

        private static List<RoomSessions> dyestuff2() {
            return Golden.rooms("data/dyestuff2.csv", row -> row.get("Batch"), row -> "", row ->
                    new double[] {Golden.number(row, "Yield")});
        }

        @Test
        void leavesTheSaddleAtAVarianceOfZero() {
            NestedCriterion criterion = criterion(GoldenCase.DYESTUFF, new int[] {0});
            Minimum found = SaddleFreeNewton.minimise(criterion, new double[] {0});

            assertThat(found.converged()).isTrue();
            JsonNode expected = golden.get("dyestuff_start_at_saddle").get("lmer_crit");
            assertThat(found.value()).isEqualTo(expected.asDouble(), within(1e-9));
        }

        @Test
        void leavesTheSaddleAtACorrelationOfOne() {
            NestedCriterion criterion = criterion(GoldenCase.ORTHODONT, new int[] {0, 2});
            Minimum found = SaddleFreeNewton.minimise(criterion, new double[] {0.5, 0.5, 0});

            assertThat(found.converged()).isTrue();
            JsonNode expected = golden.get("orthodont").get("lmer_crit");
            assertThat(found.value()).isEqualTo(expected.asDouble(), within(1e-9));
        }

        private static NestedCriterion criterion(GoldenCase each, int[] random) {
            NestedData data = new NestedData(each.rooms());
            double[] scale = new double[random.length];
            for (int u = 0; u < scale.length; u++) {
                scale[u] = data.rms[random[u]];
            }
            NestedParameters parameters = new NestedParameters(scale, false, Covariance.FREE);
            return new NestedCriterion(data, parameters, random, Method.REML);
        }

        /** Draw 129 leaves the plain search creeping on a bent ridge, some 1e-6 above its end, after 60 steps. */
        @Test
        void reachesTheEndOfABentRidge() {
            List<RoomSessions> rooms = rooms(20, 1, 5, 129, Spread.USUAL);
            NestedData data = new NestedData(rooms);
            NestedParameters parameters =
                    new NestedParameters(new double[] {data.rms[0], data.rms[1]}, false, Covariance.FREE);
            NestedCriterion criterion = new NestedCriterion(data, parameters, new int[] {0, 1}, Method.REML);
            Minimum plain = SaddleFreeNewton.minimise(criterion, parameters.start(0.5, 0.5));
            NestedFit fit = fitted(SLOPES, rooms);

            assertThat(plain.converged()).isFalse();
            assertThat(fit.converged()).isTrue();
            assertThat(fit.criterion()).isLessThan(plain.value());
            assertThat(fit.cautions()).contains(Caution.CORRELATION_AT_BOUND).doesNotContain(Caution.NOT_CONVERGED);
        }

        @Test
        void reportsASessionVarianceOfZero() {
            List<RoomSessions> alike =
                    mapped(rooms(8, 4, 5, 21, Spread.USUAL), part -> part.minus(part.mean(0), part.mean(1)));
            NestedFit fit = fitted(NestedModel.withDefaults(), alike);

            assertThat(fit.cautions()).contains(Caution.SESSION_ZERO);
            assertThat(fit.sessionVariance()).hasValue(0);
        }
    }

    @Nested
    class NearAnotherFit {

        @Test
        void findsTheSameOptimumInFewerEvaluations() {
            List<RoomSessions> rooms = rooms(60, 4, 5, 3, Spread.USUAL);
            NestedFit plain = fitted(SLOPES, rooms);
            NestedFit near = (NestedFit) SLOPES.fit(rooms, plain);

            assertThat(near.criterion()).isEqualTo(plain.criterion(), within(1e-9));
            assertThat(near.coefficient(1).orElseThrow().df())
                    .isEqualTo(plain.coefficient(1).orElseThrow().df(), within(1e-5));
            assertThat(near.evaluations()).isLessThan(plain.evaluations());
        }

        @Test
        void beginsAsEverInASmallPool() {
            List<RoomSessions> rooms = rooms(8, 4, 5, 3, Spread.USUAL);
            NestedFit plain = fitted(SLOPES, rooms);
            NestedFit near = (NestedFit) SLOPES.fit(rooms, plain);

            assertThat(near.evaluations()).isEqualTo(plain.evaluations());
            assertThat(near.sigma2()).isEqualTo(plain.sigma2());
        }
    }

    @Nested
    class Degenerate {

        @Test
        void dropsAColumnThatTheOthersDetermine() {
            List<RoomSessions> rooms = rooms(8, 4, 5, 1, Spread.USUAL);
            List<RoomSessions> twice = mapped(
                    rooms, part -> part.transform(new double[][] {{1, 0}, {3, 0}, {0, 1}}, new double[] {0, 2, 0}));

            NestedFit plain = fitted(SLOPES, rooms);
            NestedFit fit = fitted(SLOPES, twice);

            assertThat(fit.dropped()).containsExactly(2);
            assertThat(fit.cautions()).contains(Caution.COLUMNS_DROPPED);
            assertThat(fit.coefficient(2)).isEmpty();
            assertThat(fit.criterion()).isEqualTo(plain.criterion(), within(1e-9));
            assertThat(fit.contrast(new double[] {1, 0.5, 7}))
                    .usingRecursiveComparison()
                    .withEqualsForType((a, b) -> Math.abs(a - b) < 1e-9, Double.class)
                    .isEqualTo(plain.contrast(new double[] {1, 0.5}));
        }

        @Test
        void dropsTheRoomSlopeWithItsColumn() {
            List<RoomSessions> rooms = mapped(
                    rooms(8, 4, 5, 1, Spread.USUAL),
                    part -> part.transform(new double[][] {{0, 0}, {0, 1}}, new double[] {3, 0}));

            NestedFit fit = fitted(SLOPES, rooms);

            assertThat(fit.random()).containsExactly(0);
            assertThat(fit.coefficient(1)).isEmpty();
            assertThat(fit.correlation()).isEmpty();
        }

        @Test
        void holdsSessionAndTrialScatterTogetherWhenEverySessionHasOneTrial() {
            NestedFit fit = fitted(SLOPES, rooms(12, 4, 1, 2, Spread.USUAL));

            assertThat(fit.cautions()).contains(Caution.SESSION_IN_RESIDUAL).doesNotContain(Caution.SESSION_IN_ROOM);
            assertThat(fit.sessionVariance()).isEmpty();
        }

        @Test
        void holdsRoomAndSessionScatterTogetherWhenEveryRoomHasOneSession() {
            NestedFit fit = fitted(SLOPES, rooms(20, 1, 6, 3, Spread.USUAL));

            assertThat(fit.cautions()).contains(Caution.SESSION_IN_ROOM);
            assertThat(fit.sessionVariance()).isEmpty();
        }

        @Test
        void saysWhenASlopeVarianceRestsOnSpreadAlone() {
            List<RoomSessions> rooms = mapped(
                    rooms(20, 1, 6, 3, Spread.USUAL),
                    part -> new Moments(part.n(), part.mean(), new double[] {0, 0, part.cross(1, 1)}));

            assertThat(fitted(SLOPES, rooms).cautions()).contains(Caution.SLOPE_FROM_SPREAD);
        }

        /** One session without effects is ordinary least squares, by definition. */
        @Test
        void oneRoomWithOneSessionIsLeastSquares() {
            List<RoomSessions> rooms = rooms(1, 1, 30, 4, Spread.USUAL);
            NestedFit fit = fitted(SLOPES, rooms);

            assertThat(fit.cautions()).contains(Caution.ONE_ROOM);
            assertLeastSquares(fit, rooms.get(0).sessions().get(0));
        }

        @Test
        void oneTrialInEachRoomIsLeastSquares() {
            List<RoomSessions> rooms = rooms(15, 1, 1, 5, Spread.USUAL);
            NestedFit fit = fitted(SLOPES, rooms);

            assertThat(fit.cautions()).contains(Caution.ROOM_IN_RESIDUAL);
            assertLeastSquares(fit, Moments.merged(NestedData.sessionsOf(rooms)));
        }

        private static void assertLeastSquares(NestedFit fit, Moments moments) {
            LinearRegression expected = LinearRegression.withIntercept(moments);
            assertThat(fit.random()).isEmpty();
            for (int i = 0; i < 2; i++) {
                Quantity actual = fit.coefficient(i).orElseThrow();
                assertThat(actual.value()).isEqualTo(expected.coefficients()[i], within(1e-10));
                assertThat(actual.standardError()).isEqualTo(expected.standardError(i), within(1e-10));
                assertThat(actual.df()).isEqualTo(expected.residualDf(), within(1e-9));
            }
        }

        @Test
        void analysesMeansWhenTheResponseNeverVariesWithinASession() {
            List<RoomSessions> rooms = rooms(8, 4, 5, 6, Spread.USUAL);
            List<RoomSessions> flat =
                    mapped(rooms, part -> new Moments(part.n(), part.mean(), new double[] {part.cross(0, 0), 0, 0}));
            List<RoomSessions> means = mapped(rooms, part -> new Moments(1, part.mean(), new double[3]));

            NestedFit fit = fitted(SLOPES, flat);

            assertThat(fit.cautions()).contains(Caution.MEANS_ONLY);
            assertThat(fit.contrast(new double[] {1, 1}))
                    .isEqualTo(fitted(SLOPES, means).contrast(new double[] {1, 1}));
        }

        @Test
        void fitsTwoRoomsWithHardlyADegreeOfFreedom() {
            NestedFit fit = fitted(SLOPES, rooms(2, 8, 10, 7, Spread.WIDE));

            assertThat(fit.cautions()).contains(Caution.FEW_ROOMS);
            assertThat(fit.coefficient(0).orElseThrow().df()).isLessThan(4);
        }

        @Test
        void leavesOutEmptySessionsAndRooms() {
            List<RoomSessions> rooms = rooms(6, 4, 5, 8, Spread.USUAL);
            List<RoomSessions> padded = new ArrayList<>(rooms);
            padded.add(new RoomSessions("empty", List.of(Moments.none(2))));

            assertThat(fitted(SLOPES, padded).criterion())
                    .isEqualTo(fitted(SLOPES, rooms).criterion());
        }
    }

    @Nested
    class Refuses {

        @Test
        void noRows() {
            assertThat(refusal(List.of()).cause()).isEqualTo(Cause.NO_DATA);
            assertThat(refusal(List.of(new RoomSessions("a", List.of(Moments.none(2)))))
                            .cause())
                    .isEqualTo(Cause.NO_DATA);
        }

        @Test
        void noMoreRowsThanCoefficients() {
            NestedRefusal refusal = refusal(rooms(2, 1, 1, 1, Spread.USUAL));

            assertThat(refusal.cause()).isEqualTo(Cause.TOO_FEW_ROWS);
            assertThat(refusal.detail()).isEqualTo("2 rows for 2 coefficients");
        }

        @Test
        void aResponseThatTheCovariateReproduces() {
            List<RoomSessions> exact = mapped(
                    rooms(6, 4, 5, 9, Spread.USUAL),
                    part -> part.transform(new double[][] {{1, 0}, {2, 0}}, new double[] {0, 5}));

            assertThat(refusal(exact).cause()).isEqualTo(Cause.EXACT_FIT);
        }

        @Test
        void aResponseThatNeverVaries() {
            List<RoomSessions> constant = mapped(
                    rooms(6, 4, 5, 9, Spread.USUAL),
                    part -> part.transform(new double[][] {{1, 0}, {0, 0}}, new double[] {0, 5}));

            assertThat(refusal(constant).cause()).isEqualTo(Cause.EXACT_FIT);
        }

        @Test
        void aResponseThatTheRoomsReproduce() {
            List<RoomSessions> rooms = new ArrayList<>();
            for (RoomSessions room : rooms(6, 4, 5, 9, Spread.USUAL)) {
                double level = room.key().hashCode();
                rooms.add(new RoomSessions(
                        room.key(),
                        room.sessions().stream()
                                .map(part -> part.transform(new double[][] {{1, 0}, {0, 0}}, new double[] {0, level}))
                                .toList()));
            }

            assertThat(refusal(rooms).cause()).isEqualTo(Cause.EXACT_FIT);
        }

        @Test
        void aRowOfAnotherWidth() {
            NestedFit fit = fitted(SLOPES, rooms(6, 4, 5, 8, Spread.USUAL));

            assertThatThrownBy(() -> fit.contrast(new double[] {1})).hasMessage("a row needs 2 entries, got 1");
        }

        private static NestedRefusal refusal(List<RoomSessions> rooms) {
            return (NestedRefusal) SLOPES.fit(rooms);
        }
    }

    @Nested
    class Invariant {

        /** An independent implementation keeps b to 1e-8 and s² to 1e-13 on 1e5 trials moved by 1e6. */
        @Test
        void toALargeShiftOfTheResponse() {
            List<RoomSessions> rooms = rooms(10, 5, 100, 10, Spread.USUAL);
            NestedFit near = fitted(SLOPES, rooms);
            NestedFit far = fitted(SLOPES, mapped(rooms, part -> part.minus(0, -1e6)));

            assertThat(Golden.relative(slope(far).value(), slope(near).value())).isLessThan(1e-8);
            assertThat(Golden.relative(far.sigma2(), near.sigma2())).isLessThan(1e-12);
            assertThat(far.coefficient(0).orElseThrow().value() - 1e6)
                    .isEqualTo(near.coefficient(0).orElseThrow().value(), within(1e-8));
        }

        /** A free covariance of intercept and slope does not care where the covariate is zero. */
        @Test
        void toTheOriginOfTheCovariate() {
            List<RoomSessions> rooms = rooms(10, 5, 10, 12, Spread.USUAL);
            List<RoomSessions> moved = mapped(rooms, part -> part.minus(1.5, 0));

            assertThat(fitted(SLOPES, moved).criterion())
                    .isEqualTo(fitted(SLOPES, rooms).criterion(), within(1e-9));
            NestedModel diagonal = SLOPES.with(Covariance.DIAGONAL);
            assertThat(Math.abs(fitted(diagonal, moved).criterion()
                            - fitted(diagonal, rooms).criterion()))
                    .isGreaterThan(1e-3);
        }

        @Test
        void toTheOrderOfRoomsUpToRounding() {
            List<RoomSessions> rooms = rooms(10, 5, 10, 13, Spread.USUAL);
            List<RoomSessions> reversed = new ArrayList<>(rooms);
            Collections.reverse(reversed);
            NestedFit forwards = fitted(SLOPES, rooms);
            NestedFit backwards = fitted(SLOPES, reversed);

            assertThat(backwards.criterion()).isEqualTo(forwards.criterion(), within(1e-9));
            assertThat(slope(backwards).value()).isEqualTo(slope(forwards).value(), within(1e-9));
            assertThat(fitted(SLOPES, rooms).criterion()).isEqualTo(forwards.criterion());
        }

        private static Quantity slope(NestedFit fit) {
            return fit.coefficient(1).orElseThrow();
        }
    }

    /** How much rooms and sessions differ in the invented data. */
    private enum Spread {
        USUAL(1, 0.5),
        WIDE(10, 0.5);

        final double room;
        final double session;

        Spread(double room, double session) {
            this.room = room;
            this.session = session;
        }
    }

    private static List<RoomSessions> rooms(int rooms, int sessions, int trials, long seed, Spread spread) {
        Random random = new Random(seed);
        List<RoomSessions> all = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            double intercept = spread.room * random.nextGaussian();
            double slope = 0.25 * spread.room * random.nextGaussian();
            List<Moments> parts = new ArrayList<>();
            for (int session = 0; session < sessions; session++) {
                double shift = spread.session * random.nextGaussian();
                double climate = random.nextGaussian();
                MomentsBuilder builder = new MomentsBuilder(2);
                for (int trial = 0; trial < trials; trial++) {
                    double x = climate + 0.05 * random.nextGaussian();
                    builder.add(x, 30 + intercept + shift + (slope - 0.8) * x + 2 * random.nextGaussian());
                }
                parts.add(builder.build());
            }
            all.add(new RoomSessions("room " + room, parts));
        }
        return all;
    }

    private static List<RoomSessions> mapped(List<RoomSessions> rooms, UnaryOperator<Moments> change) {
        return rooms.stream()
                .map(room -> new RoomSessions(
                        room.key(), room.sessions().stream().map(change).toList()))
                .toList();
    }

    private static NestedFit fitted(NestedModel model, List<RoomSessions> rooms) {
        NestedOutcome outcome = model.fit(rooms);
        assertThat(outcome).isInstanceOf(NestedFit.class);
        return (NestedFit) outcome;
    }
}
