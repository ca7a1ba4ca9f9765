package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.tableweather.analyzers.standard.statistics.CubicSpline;
import org.tableweather.analyzers.standard.statistics.Moments;

/**
 * The columns of the model, behind its constant: {@code x, x², t, covariates} or, for a curve,
 * {@code x, t, covariates, wiggles}; the response is last.
 *
 * <p>Relative humidity and its square stand in the summaries. Another measure, its square, and the wiggles of a curve are
 * functions f of the humidity and temperature of each trial, followed to second order about the session's means: exact where a
 * session's climate is one. In a session held within ±1 %RH means are off by less than 0.1 % of the session's own spread, and
 * cross-products within the session by 1 to 3 %; after a drift of ±8 %RH by 3 % and up to 30 %. Sessions are told apart by
 * their means.
 *
 * <p>Knots stand at x = −3, −2 ... 3 whatever the data: 20, 30 ... 80 %RH.
 */
final class HumidityColumns {

    private static final CubicSpline SPLINE = new CubicSpline(-3, -2, -1, 0, 1, 2, 3);
    private static final double STEP = 0.01;
    private static final double SLOPE_STEP = 1e-3;
    private static final int BASE = 3;

    final HumidityMeasure measure;
    final boolean curved;
    /** Covariates asked for beside the climate. */
    final List<Covariate> asked;

    HumidityColumns(HumidityMeasure measure, boolean curved, List<Covariate> asked) {
        this.measure = measure;
        this.curved = curved;
        this.asked = asked;
    }

    /** Estimates of the columns that are not wiggles, in order, the constant left out. */
    List<String> names() {
        List<String> names = new ArrayList<>();
        names.add("humidity");
        if (!curved) {
            names.add("humidity.squared");
        }
        names.add("temperature");
        asked.forEach(covariate -> names.add(covariate.estimate));
        return names;
    }

    /** Column of the temperature, the constant counted. */
    int temperature() {
        return curved ? 2 : 3;
    }

    /** First column of a covariate that was asked for, the constant counted. */
    int firstAsked() {
        return temperature() + 1;
    }

    /** Number of columns, constant and wiggles included, response not. */
    int count() {
        return firstAsked() + asked.size() + (curved ? SPLINE.columns() : 0);
    }

    /** Columns of the climate, the constant included, the wiggles not. */
    int climate() {
        return temperature() + 1;
    }

    /** The columns of the wiggles, the constant counted. */
    List<Integer> wiggles() {
        return curved
                ? IntStream.range(count() - SPLINE.columns(), count()).boxed().toList()
                : List.of();
    }

    /** The row of the model at a humidity, at 21 °C. */
    double[] row(double x, double[] covariates) {
        double[] row = new double[count()];
        row[0] = 1;
        row[1] = x;
        if (!curved) {
            row[2] = x * x;
        }
        System.arraycopy(covariates, 0, row, firstAsked(), covariates.length);
        if (curved) {
            System.arraycopy(SPLINE.at(x), 0, row, count() - SPLINE.columns(), SPLINE.columns());
        }
        return row;
    }

    /** The row of the slope at x = 0. */
    double[] slopeRow() {
        double[] row = new double[count()];
        row[1] = 1;
        if (curved) {
            double[] above = SPLINE.at(SLOPE_STEP);
            double[] below = SPLINE.at(-SLOPE_STEP);
            for (int i = 0; i < above.length; i++) {
                row[count() - above.length + i] = (above[i] - below[i]) / (2 * SLOPE_STEP);
            }
        }
        return row;
    }

    /** Bits of the measured columns that these need, the response's left out. */
    int bits() {
        int bits = Measure.HUMIDITY.bit() | Measure.HUMIDITY_SQUARED.bit() | Measure.TEMPERATURE.bit();
        for (Covariate covariate : asked) {
            bits |= covariate.measure.map(Measure::bit).orElse(0);
        }
        return bits;
    }

    /** Bits of the columns of a session's base, in its order: h, h², t, measured covariates, response. */
    int[] base(Response response) {
        List<Measure> measures =
                new ArrayList<>(List.of(Measure.HUMIDITY, Measure.HUMIDITY_SQUARED, Measure.TEMPERATURE));
        asked.forEach(covariate -> covariate.measure.ifPresent(measures::add));
        measures.add(response.measure);
        return measures.stream().mapToInt(Measure::bit).toArray();
    }

    /** Whether a session states all that the columns need beside its trials. */
    boolean areKnown(SessionTraits traits) {
        return measure.isKnown(traits)
                && asked.stream()
                        .filter(covariate -> covariate.measure.isEmpty())
                        .noneMatch(covariate -> Double.isNaN(covariate.of(traits)));
    }

    /**
     * The model's columns of a session, the response last.
     *
     * @param base moments of the columns of {@link #base}, at least one row
     * @return empty where the measure is not defined at the session's climate
     */
    Optional<Moments> of(Moments base, SessionTraits traits) {
        if (measure == HumidityMeasure.RELATIVE
                && !curved
                && asked.stream().allMatch(covariate -> covariate.measure.isPresent())) {
            return Optional.of(base);
        }
        Rows rows = new Rows(base, traits);
        if (measure == HumidityMeasure.RELATIVE) {
            rows.copy(0);
        } else {
            rows.smooth(x -> x);
        }
        if (!curved && measure == HumidityMeasure.RELATIVE) {
            rows.copy(1);
        } else if (!curved) {
            rows.smooth(x -> x * x);
        }
        rows.copy(2);
        int at = BASE;
        for (Covariate covariate : asked) {
            if (covariate.measure.isPresent()) {
                rows.copy(at++);
            } else {
                rows.constant(covariate.of(traits));
            }
        }
        if (curved) {
            IntStream.range(0, SPLINE.columns()).forEach(i -> rows.smooth(x -> SPLINE.at(i, x)));
        }
        rows.copy(base.columns() - 1);
        return rows.defined() ? Optional.of(rows.transformed()) : Optional.empty();
    }

    /** The linear map from a session's base to its columns. */
    private final class Rows {

        private final Moments base;
        private final double h;
        private final double t;
        /** x at the means and around them: centre, h ± step, t ± step, and both. */
        private final double[][] around = new double[3][3];

        private final List<double[]> linear = new ArrayList<>();
        private final List<Double> constants = new ArrayList<>();

        Rows(Moments base, SessionTraits traits) {
            this.base = base;
            h = base.mean(0);
            t = base.mean(2);
            for (int i = 0; i < BASE; i++) {
                for (int j = 0; j < BASE; j++) {
                    double there = h + (i - 1) * STEP;
                    double temp = 21 + 5 * (t + (j - 1) * STEP);
                    around[i][j] =
                            measure == HumidityMeasure.RELATIVE ? there : measure.x(50 + 10 * there, temp, traits);
                }
            }
        }

        boolean defined() {
            return Arrays.stream(around).flatMapToDouble(Arrays::stream).noneMatch(Double::isNaN);
        }

        void copy(int column) {
            double[] row = new double[base.columns()];
            row[column] = 1;
            linear.add(row);
            constants.add(0.0);
        }

        void constant(double value) {
            linear.add(new double[base.columns()]);
            constants.add(value);
        }

        /** {@code f ≈ f₀ + f_h dh + f_t dt + ½ f_hh dh²}, the mean with the other second-order terms too. */
        void smooth(DoubleUnaryOperator f) {
            double[][] at = new double[BASE][BASE];
            for (int i = 0; i < BASE; i++) {
                for (int j = 0; j < BASE; j++) {
                    at[i][j] = f.applyAsDouble(around[i][j]);
                }
            }
            double byH = (at[2][1] - at[0][1]) / (2 * STEP);
            double byT = (at[1][2] - at[1][0]) / (2 * STEP);
            double byHh = (at[2][1] - 2 * at[1][1] + at[0][1]) / (STEP * STEP);
            double byTt = (at[1][2] - 2 * at[1][1] + at[1][0]) / (STEP * STEP);
            double byHt = (at[2][2] - at[2][0] - at[0][2] + at[0][0]) / (4 * STEP * STEP);
            double[] row = new double[base.columns()];
            row[0] = byH - byHh * h;
            row[1] = byHh / 2;
            row[2] = byT;
            double spread =
                    (byHh * base.cross(0, 0) + 2 * byHt * base.cross(0, 2) + byTt * base.cross(2, 2)) / (2 * base.n());
            double linearMean = row[0] * h + row[1] * base.mean(1) + row[2] * t;
            linear.add(row);
            constants.add(at[1][1] + spread - linearMean);
        }

        Moments transformed() {
            return base.transform(
                    linear.toArray(double[][]::new),
                    constants.stream().mapToDouble(Double::doubleValue).toArray());
        }
    }
}
