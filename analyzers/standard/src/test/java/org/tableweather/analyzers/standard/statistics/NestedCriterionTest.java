package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;

/** One evaluation of the criterion against golden/unit_eval.json, an independent implementation. */
class NestedCriterionTest {

    private static final JsonNode GOLDEN = Golden.json("unit_eval.json");

    @ParameterizedTest
    @EnumSource(Method.class)
    void evaluatesCriterionAndGradientAtAFixedPoint(Method method) {
        JsonNode expected = GOLDEN.get(method.name());
        NestedCriterion criterion = criterion(method);
        double[] gradient = new double[4];

        double value = criterion.evaluate(Golden.numbers(expected.get("phi")), gradient);

        assertThat(value).isEqualTo(expected.get("D").asDouble(), within(1e-10));
        assertThat(gradient).containsExactly(Golden.numbers(expected.get("grad_phi")), within(1e-9));
        assertThat(criterion.top.coefficients).containsExactly(Golden.numbers(expected.get("b")), within(1e-12));
        assertThat(criterion.sigma2).isEqualTo(expected.get("s2").asDouble(), within(1e-12));
        assertMatrix(criterion.reduction.total, 0, expected.get("P"));
        assertMatrix(criterion.reduction.rests, 0, expected.get("P_room0"));
        assertMatrix(criterion.reduction.shrinks, 0, expected.get("K_room0"));
    }

    @ParameterizedTest
    @EnumSource(Method.class)
    void gradientIsTheSlopeOfTheCriterion(Method method) {
        NestedCriterion criterion = criterion(method);
        double[] phi = {0.7, 0.9, -0.2, 0.4};
        double[] gradient = new double[5];
        double[] ignored = new double[5];
        criterion.evaluate(phi, 1.3, gradient);

        for (int i = 0; i < 4; i++) {
            double[] above = phi.clone();
            double[] below = phi.clone();
            above[i] += 1e-5;
            below[i] -= 1e-5;
            double slope = (criterion.evaluate(above, 1.3, ignored) - criterion.evaluate(below, 1.3, ignored)) / 2e-5;
            assertThat(gradient[i]).isEqualTo(slope, within(1e-6));
        }
        double up = 1.3 * Math.exp(2e-5);
        double down = 1.3 * Math.exp(-2e-5);
        double slope = (criterion.evaluate(phi, up, ignored) - criterion.evaluate(phi, down, ignored)) / 2e-5;
        assertThat(gradient[4]).isEqualTo(slope, within(1e-6));
    }

    @ParameterizedTest
    @EnumSource(Method.class)
    void hessianIsTheSlopeOfTheGradient(Method method) {
        NestedCriterion criterion = criterion(method);

        assertHessian(criterion, new double[] {0.7, 0.9, -0.2, 0.4});
        assertHessian(criterion, new double[] {0, 0.9, -0.2, 0});
    }

    static void assertHessian(NestedCriterion criterion, double[] phi) {
        double[] ignored = new double[phi.length];
        criterion.evaluate(phi, ignored);
        double[][] hessian = criterion.hessian(phi, ignored);
        for (int i = 0; i < phi.length; i++) {
            double[] above = phi.clone();
            double[] below = phi.clone();
            double[] slopeAbove = new double[phi.length];
            double[] slopeBelow = new double[phi.length];
            above[i] += 1e-5;
            below[i] -= 1e-5;
            criterion.evaluate(above, slopeAbove);
            criterion.evaluate(below, slopeBelow);
            for (int j = 0; j < phi.length; j++) {
                double slope = (slopeAbove[j] - slopeBelow[j]) / 2e-5;
                assertThat(hessian[i][j])
                        .as("%d, %d", i, j)
                        .isEqualTo(slope, within(1e-6 * Math.max(1, Math.abs(slope))));
            }
        }
    }

    @Test
    void sessionsOfOneCountAreWeighedTogetherAsEachByItself() {
        Random random = new Random(5);
        List<RoomSessions> rooms = new ArrayList<>();
        for (int room = 0; room < 6; room++) {
            List<Moments> sessions = new ArrayList<>();
            for (int session = 0; session < 7; session++) {
                sessions.add(drawn(random, 1 + random.nextInt(3)));
            }
            rooms.add(new RoomSessions("r" + room, sessions));
        }
        NestedData data = new NestedData(rooms);
        SessionGroups groups = new SessionGroups(data);
        double logarithms = groups.weigh(0.3);
        double[] sums = new double[Moments.packedLength(data.width)];

        double expected = 0;
        for (int room = 0; room < data.rooms; room++) {
            for (int power = 1; power <= 3; power++) {
                groups.outer(room, power, sums);
                for (int i = 0; i < data.width; i++) {
                    double sum = 0;
                    for (int s = data.firstSession[room]; s < data.firstSession[room + 1]; s++) {
                        double f = data.count[s] / (1 + 0.3 * data.count[s]);
                        sum += Math.pow(f, power) * data.mean[s * data.width + i] * data.mean[s * data.width];
                        expected += power == 1 && i == 0 ? Math.log(1 + 0.3 * data.count[s]) : 0;
                        assertThat(groups.weight(s)).isEqualTo(f);
                    }
                    assertThat(sums[Moments.packed(i, 0)]).isEqualTo(sum, within(1e-12));
                }
            }
        }
        assertThat(logarithms).isEqualTo(expected, within(1e-12));
    }

    private static Moments drawn(Random random, int trials) {
        MomentsBuilder builder = new MomentsBuilder(2);
        for (int trial = 0; trial < trials; trial++) {
            builder.add(random.nextGaussian(), random.nextGaussian());
        }
        return builder.build();
    }

    @Test
    void criterionIsEvenInTheSessionRatioAndInEachColumnOfTheFactor() {
        NestedCriterion criterion = criterion(Method.REML);
        double[] gradient = new double[4];
        double value = criterion.evaluate(new double[] {0.7, 0.9, -0.2, 0.4}, gradient);

        assertThat(criterion.evaluate(new double[] {-0.7, -0.9, 0.2, -0.4}, gradient))
                .isEqualTo(value);
        assertThat(criterion.parameters.tidy(new double[] {-0.7, -0.9, 0.2, -0.4}))
                .containsExactly(0.7, 0.9, -0.2, 0.4);
    }

    @ParameterizedTest
    @EnumSource(Method.class)
    void findsTheOptimumWithCorrelationAtItsBound(Method method) {
        JsonNode expected = GOLDEN.get(method.name()).get("optimum");
        NestedFit fit = (NestedFit)
                NestedModel.withDefaults().with(method).withRandom(0, 1).fit(rooms());

        assertThat(fit.criterion()).isEqualTo(expected.get("D").asDouble(), within(1e-9));
        assertThat(fit.cautions()).containsExactly(Caution.CORRELATION_AT_BOUND);
        assertThat(fit.correlation()).hasValue(-1);
        assertClose(fit.sigma2(), expected.get("s2"));
        assertClose(fit.sessionVariance().getAsDouble(), expected.get("v_s"));
        for (int i = 0; i < 2; i++) {
            NestedFit.Quantity coefficient = fit.coefficient(i).orElseThrow();
            assertClose(coefficient.value(), expected.get("beta").get(i));
            assertClose(coefficient.standardError(), expected.get("se").get(i));
            assertClose(coefficient.df(), expected.get("satt_df").get(i));
            for (int j = 0; j < 2; j++) {
                assertClose(fit.covariance(i, j), expected.get("vcov").get(i).get(j));
                assertClose(
                        fit.roomCovariance()[i][j], expected.get("Sigma").get(i).get(j));
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Method.class)
    void predictsRoomsSessionsAndCurves(Method method) {
        JsonNode expected = GOLDEN.get(method.name()).get("optimum");
        NestedFit fit = (NestedFit)
                NestedModel.withDefaults().with(method).withRandom(0, 1).fit(rooms());

        int session = 0;
        for (int room = 0; room < fit.rooms().size(); room++) {
            NestedFit.RoomEffect effect = fit.rooms().get(room);
            for (int u = 0; u < 2; u++) {
                assertClose(effect.effects()[u], expected.get("u").get(room).get(u));
                for (int v = 0; v < 2; v++) {
                    assertClose(
                            effect.variance()[u][v],
                            expected.get("condvar_u").get(room).get(u).get(v));
                }
            }
            for (NestedFit.SessionEffect each : effect.sessions()) {
                assertClose(each.effect(), expected.get("w").get(session));
                assertClose(each.variance(), expected.get("condvar_w").get(session++));
            }
        }
        assertThat(session).isEqualTo(18);
        for (JsonNode point : expected.get("predict")) {
            double[] row = {1, point.get("rh").asDouble()};
            assertClose(fit.contrast(row).value(), point.get("new").get(0));
            assertClose(fit.contrast(row).standardError(), point.get("new").get(1));
            assertClose(fit.inNewRoom(row).standardError(), point.get("new").get(2));
            assertClose(fit.inRoom(0, row).value(), point.get("room0").get(0));
            assertClose(fit.inRoom(0, row).standardError(), point.get("room0").get(1));
        }
    }

    private static void assertClose(double actual, JsonNode expected) {
        assertThat(Golden.relative(actual, expected.asDouble()))
                .as("%s, not %s", actual, expected)
                .isLessThan(1e-7);
    }

    private static void assertMatrix(double[] actual, int offset, JsonNode expected) {
        int size = expected.size();
        Offset<Double> close = within(1e-10);
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                assertThat(actual[offset + i * size + j])
                        .isEqualTo(expected.get(i).get(j).asDouble(), close);
            }
        }
    }

    private static NestedCriterion criterion(Method method) {
        NestedData data = new NestedData(rooms());
        double[] scale = {data.rms[0], data.rms[1]};
        NestedParameters parameters = new NestedParameters(scale, true, NestedModel.Covariance.FREE);
        return new NestedCriterion(data, parameters, new int[] {0, 1}, method);
    }

    private static List<RoomSessions> rooms() {
        JsonNode trials = GOLDEN.get("trials");
        Map<Integer, Map<Integer, MomentsBuilder>> groups = new LinkedHashMap<>();
        for (int i = 0; i < trials.get("y").size(); i++) {
            groups.computeIfAbsent(trials.get("room").get(i).asInt(), key -> new LinkedHashMap<>())
                    .computeIfAbsent(trials.get("session").get(i).asInt(), key -> new MomentsBuilder(2))
                    .add(
                            trials.get("rh").get(i).asDouble(),
                            trials.get("y").get(i).asDouble());
        }
        List<RoomSessions> rooms = new ArrayList<>();
        groups.forEach((room, sessions) -> rooms.add(new RoomSessions(
                room.toString(),
                sessions.values().stream().map(MomentsBuilder::build).toList())));
        return rooms;
    }
}
