package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;

/** Penalised curves as mixed-model terms against R's mgcv 1.8.41 and golden/spline.json. */
class CubicSplineTest {

    /** mgcv's own smoothing parameter is good for some 1e-5 here. */
    private static final double MGCV = 1e-5;

    @Test
    void agreesWithOneSmoothOfMgcv() {
        JsonNode golden = Golden.json("mcycle_gam.json").get("values").get("mcycle_cr_k6");
        CubicSpline spline = new CubicSpline(Golden.numbers(golden.get("knots")));
        List<RoomSessions> rows = Golden.rooms("data/mcycle.csv", row -> "", row -> "", row -> {
            double times = Golden.number(row, "times");
            return joined(new double[] {times}, spline.at(times), new double[] {Golden.number(row, "accel")});
        });
        NestedFit fit = (NestedFit) NestedModel.withDefaults()
                .withSmooth(range(2, spline.columns()))
                .fit(rows);

        assertThat(fit.converged()).isTrue();
        assertRelative(fit.sigma2(), golden.get("scale").asDouble());
        double penalty = golden.get("S_scale").asDouble() * fit.sigma2() / fit.smoothVariance(0);
        assertRelative(penalty, golden.get("sp").get("s(times)").asDouble());
        // the intercept and the line are unpenalised
        assertRelative(2 + fit.effectiveDf(0), golden.get("edf_total").asDouble());
        JsonNode predict = golden.get("predict");
        for (int i = 0; i < predict.get("times").size(); i++) {
            double x = predict.get("times").get(i).asDouble();
            Quantity at = fit.contrast(joined(new double[] {1, x}, spline.at(x)));
            assertThat(at.value()).isEqualTo(predict.get("fit").get(i).asDouble(), within(1e-4));
            assertRelative(at.standardError(), predict.get("se").get(i).asDouble());
        }
    }

    /**
     * REML has two optima here: mgcv's, where the temperature bends, and a lower one, where it does not. At mgcv's smoothing
     * parameters all is as mgcv says, and the criterion is level; the search finds the lower one.
     */
    @Test
    void agreesWithTwoSmoothsOfMgcvAtItsOptimumAndFindsALowerOne() {
        JsonNode golden = Golden.json("airquality_gam.json").get("values").get("airquality_temp_wind");
        CubicSpline temp = new CubicSpline(Golden.numbers(golden.get("knots").get(0)));
        CubicSpline wind = new CubicSpline(Golden.numbers(golden.get("knots").get(1)));
        Function<Map<String, String>, double[]> columns = row -> joined(
                row(temp, wind, Golden.number(row, "Temp"), Golden.number(row, "Wind")),
                new double[] {Math.log(Golden.number(row, "Ozone"))});
        List<RoomSessions> rows = Golden.rooms("data/airquality_complete.csv", row -> "", row -> "", columns);
        NestedParameters unscaled =
                new NestedParameters(new double[0], false, NestedModel.Covariance.FREE, new double[] {1, 1});
        NestedCriterion criterion = new NestedCriterion(
                new NestedData(rows), unscaled, new int[0], Method.REML, new int[] {-1, -1, -1, 0, 0, 0, 0, 1, 1, 1, 1
                });
        double[] gradient = new double[2];
        double[] tau = new double[2];
        for (int group = 0; group < 2; group++) {
            JsonNode sp = golden.get("sp").get(group == 0 ? "s(Temp)" : "s(Wind)");
            tau[group] = Math.sqrt(golden.get("S_scale").get(group).asDouble() / sp.asDouble());
        }

        double theirs = criterion.evaluate(tau, gradient);

        assertThat(gradient[0]).isEqualTo(0, within(1e-3));
        assertThat(gradient[1]).isEqualTo(0, within(1e-3));
        assertRelative(criterion.sigma2, golden.get("scale").asDouble());
        for (int group = 0; group < 2; group++) {
            JsonNode edf = golden.get("s_table").get(group).get("edf");
            assertRelative(1 + criterion.top.effective[group], edf.asDouble());
        }
        JsonNode predict = golden.get("predict");
        for (int i = 0; i < predict.get("fit").size(); i++) {
            double[] at = row(
                    temp,
                    wind,
                    predict.get("Temp").get(i).asDouble(),
                    predict.get("Wind").get(i).asDouble());
            double[] l = joined(new double[] {1}, at);
            double mean = criterion.data.responseCentre;
            for (int k = 0; k < l.length; k++) {
                mean += l[k] * criterion.top.coefficients[k];
            }
            assertRelative(mean, predict.get("fit").get(i).asDouble());
            double variance = criterion.sigma2 * criterion.top.inverseForm(l, 0, 0);
            assertRelative(Math.sqrt(variance), predict.get("se").get(i).asDouble());
        }
        NestedFit lowest = (NestedFit) NestedModel.withDefaults()
                .withSmooth(range(3, temp.columns()))
                .withSmooth(range(3 + temp.columns(), wind.columns()))
                .fit(rows);
        assertThat(lowest.criterion()).isLessThan(theirs);
        assertThat(lowest.effectiveDf(0)).isZero();
    }

    /** A curve, room effects and session effects together: no such mixed terms are in the cases above. */
    @Test
    void bendsOfACurveAmongRoomsAreTheSlopesOfTheGradient() {
        Random random = new Random(11);
        List<RoomSessions> rooms = new ArrayList<>();
        for (int room = 0; room < 5; room++) {
            List<Moments> sessions = new ArrayList<>();
            for (int session = 0; session < 4; session++) {
                MomentsBuilder builder = new MomentsBuilder(4);
                for (int trial = 0; trial < 3 + session % 2; trial++) {
                    double x = random.nextGaussian();
                    builder.add(x, x * x, x * x * x, room + x + random.nextGaussian());
                }
                sessions.add(builder.build());
            }
            rooms.add(new RoomSessions("r" + room, sessions));
        }
        NestedParameters parameters =
                new NestedParameters(new double[] {1, 1.2}, true, NestedModel.Covariance.FREE, new double[] {1.5, 0.8});
        NestedCriterion criterion = new NestedCriterion(
                new NestedData(rooms), parameters, new int[] {0, 1}, Method.REML, new int[] {-1, -1, 0, 1});

        NestedCriterionTest.assertHessian(criterion, new double[] {0.6, 0.8, 0.3, 0.5, 0.7, 0.4});
        NestedCriterionTest.assertHessian(criterion, new double[] {0.6, 0.8, 0.3, 0.5, 0, 0.4});
    }

    /** The smoothness runs off to a straight line: the answer is the line's, to the digits of the independent fit. */
    @Test
    void endsInAStraightLineWhereThereIsNoMore() {
        JsonNode golden = Golden.json("spline.json").get("sleepstudy_spline");
        CubicSpline spline = new CubicSpline(Golden.numbers(golden.get("knots")));
        List<RoomSessions> rooms = Golden.rooms("data/sleepstudy.csv", row -> row.get("Subject"), row -> "", row -> {
            double days = Golden.number(row, "Days");
            return joined(new double[] {days}, spline.at(days), new double[] {Golden.number(row, "Reaction")});
        });
        NestedFit fit = (NestedFit) NestedModel.withDefaults()
                .with(NestedModel.Sessions.ALIKE)
                .withSmooth(range(2, spline.columns()))
                .fit(rooms);

        assertThat(fit.criterion()).isEqualTo(golden.get("crit").asDouble(), within(1e-8));
        assertThat(fit.cautions()).contains(Caution.CURVE_STRAIGHT);
        assertThat(fit.effectiveDf(0)).isLessThan(1e-4);
        for (int i = 0; i < golden.get("x").size(); i++) {
            double x = golden.get("x").get(i).asDouble();
            Quantity at = fit.contrast(joined(new double[] {1, x}, spline.at(x)));
            assertRelative(at.value(), golden.get("fit_pop").get(i).asDouble());
            assertRelative(at.standardError(), golden.get("se_pop").get(i).asDouble());
            Quantity room = fit.inRoom(0, joined(new double[] {1, x}, spline.at(x)));
            assertRelative(room.value(), golden.get("fit_room").get(i).asDouble());
            assertRelative(room.standardError(), golden.get("se_room").get(i).asDouble());
        }
    }

    /** A natural spline's second derivative is zero beyond its knots (its definition). */
    @Test
    void goesOnStraightBeyondItsKnots() {
        CubicSpline spline = new CubicSpline(-3, -1.5, 0, 2, 3);

        for (double[] three : new double[][] {{-5, -4, -3}, {3, 4, 5}}) {
            for (int column = 0; column < spline.columns(); column++) {
                double bend =
                        spline.at(column, three[0]) - 2 * spline.at(column, three[1]) + spline.at(column, three[2]);
                assertThat(bend).isEqualTo(0, within(1e-12));
            }
        }
    }

    @Test
    void refusesKnotsThatCannotBe() {
        assertThatThrownBy(() -> new CubicSpline(1, 2)).hasMessageContaining("3 knots");
        assertThatThrownBy(() -> new CubicSpline(1, 3, 2)).hasMessageContaining("must rise");
        assertThatThrownBy(
                        () -> NestedModel.withDefaults().withSmooth(List.of(2)).with(Method.ML))
                .hasMessageContaining("needs REML");
        NestedModel astray = NestedModel.withDefaults().withSmooth(List.of(1));
        assertThatThrownBy(() -> astray.fit(GoldenCase.OATS_FACTORS.rooms())).hasMessageContaining("must be the last");
    }

    private static double[] row(CubicSpline temp, CubicSpline wind, double t, double w) {
        return joined(new double[] {t, w}, temp.at(t), wind.at(w));
    }

    private static List<Integer> range(int first, int count) {
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            all.add(first + i);
        }
        return all;
    }

    private static double[] joined(double[]... parts) {
        return Arrays.stream(parts).flatMapToDouble(Arrays::stream).toArray();
    }

    private static void assertRelative(double actual, double expected) {
        assertThat(Golden.relative(actual, expected))
                .as("%s against %s", actual, expected)
                .isLessThan(MGCV);
    }
}
