package org.tableweather.analyzers.standard.statistics.meta;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.special.Gamma;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Pools one estimate per room: {@code yᵢ ~ N(xᵢ'β, vᵢ + τ²)}, {@code β = (X'WX)⁻¹X'Wy}, {@code W = diag(1/(vᵢ + τ²))}.
 *
 * @param method how τ² is estimated
 * @param intervalMethod how intervals are made
 * @param coverage of all intervals
 * @source DerSimonian1986
 * @source Viechtbauer2010
 */
public record MetaAnalysis(HeterogeneityMethod method, IntervalMethod intervalMethod, Coverage coverage) {

    /** REML, Hartung–Knapp, 95 %. */
    public static MetaAnalysis withDefaults() {
        return new MetaAnalysis(HeterogeneityMethod.REML, IntervalMethod.HARTUNG_KNAPP, Coverage.DEFAULT);
    }

    /** The same with another estimator of τ². */
    public MetaAnalysis with(HeterogeneityMethod other) {
        return new MetaAnalysis(other, intervalMethod, coverage);
    }

    /** The same with other intervals. */
    public MetaAnalysis with(IntervalMethod other) {
        return new MetaAnalysis(method, other, coverage);
    }

    /** The same at another coverage. */
    public MetaAnalysis with(Coverage other) {
        return new MetaAnalysis(method, intervalMethod, other);
    }

    /**
     * Pools the rooms' estimates to one mean. The prediction interval is {@code μ ± t(k − 2) √(τ² + Var μ)} with
     * {@code Var μ = 1/Σw}, whatever the interval method.
     *
     * @param effects one per room; refused below 2, and for {@link IntervalMethod#HARTUNG_KNAPP} when all are equal
     * @source Higgins2009
     */
    public Answer<MetaFit> fit(List<StudyEffect> effects) {
        return solve(effects, new double[effects.size()][0]).then(pooled -> Answer.of(pooled.mean()));
    }

    /**
     * Regresses the rooms' estimates on moderators.
     *
     * @param effects one per room; refused unless there are more rooms than coefficients
     * @param moderators one row per room, finite; refused as collinear when they determine each other
     * @throws IllegalArgumentException when rows are missing, uneven or not finite
     */
    public Answer<RegressionFit> regress(List<StudyEffect> effects, double[][] moderators) {
        requireRows(effects, moderators);
        return solve(effects, moderators).then(pooled -> Answer.of(pooled.regression()));
    }

    /**
     * The mean again without each room in turn.
     *
     * @param effects refused below 3
     * @return in the order given
     */
    public Answer<List<Omission>> leaveOneOut(List<StudyEffect> effects) {
        if (effects.size() < 3) {
            return Answer.refuse(Cause.TOO_FEW, "leaving one room out needs 3 rooms, got " + effects.size());
        }
        List<Omission> omissions = new ArrayList<>();
        for (int i = 0; i < effects.size(); i++) {
            List<StudyEffect> others = new ArrayList<>(effects);
            StudyEffect left = others.remove(i);
            omissions.add(new Omission(left.label(), fit(others).orThrow()));
        }
        return Answer.of(List.copyOf(omissions));
    }

    /**
     * The mean without one room.
     *
     * @param label the room left out
     * @param without it
     */
    public record Omission(String label, MetaFit without) {}

    private static void requireRows(List<StudyEffect> effects, double[][] moderators) {
        if (moderators.length != effects.size()) {
            throw new IllegalArgumentException(
                    "moderators need a row for each of " + effects.size() + " effects, got " + moderators.length);
        }
        for (double[] row : moderators) {
            if (row.length != moderators[0].length) {
                throw new IllegalArgumentException("moderator rows differ in length");
            }
            for (double value : row) {
                if (!Double.isFinite(value)) {
                    throw new IllegalArgumentException("moderators must be finite, got " + value);
                }
            }
        }
    }

    private Answer<Solution> solve(List<StudyEffect> effects, double[][] moderators) {
        int columns = 1 + (moderators.length == 0 ? 0 : moderators[0].length);
        if (effects.size() <= columns) {
            return Answer.refuse(
                    Cause.TOO_FEW, effects.size() + " rooms for " + columns + " coefficients: one more is needed");
        }
        WeightedModel model = new WeightedModel(effects, moderators);
        if (!model.identified()) {
            return Answer.refuse(
                    Cause.COLLINEAR, "the moderators determine each other, or one is the same in every room");
        }
        Solution solution = new Solution(model);
        if (intervalMethod == IntervalMethod.HARTUNG_KNAPP && solution.fitsExactly()) {
            return Answer.refuse(
                    Cause.NO_VARIATION,
                    "the estimates leave no scatter to make a Hartung-Knapp interval from: use the floored form");
        }
        return Answer.of(solution);
    }

    private final class Solution {

        private final WeightedModel model;
        private final TauSquared solver;
        private final double tauSquared;
        private final WeightedModel.At at;

        Solution(WeightedModel model) {
            this.model = model;
            this.solver = new TauSquared(model);
            this.tauSquared = solver.estimate(method);
            this.at = model.at(tauSquared);
        }

        MetaFit mean() {
            double total = at.traceOfWeights();
            List<Double> shares = new ArrayList<>();
            for (double weight : at.weights) {
                shares.add(100 * weight / total);
            }
            return new MetaFit(
                    model.studies(),
                    coefficient(0),
                    heterogeneity(),
                    prediction(),
                    logLikelihood(),
                    List.copyOf(shares));
        }

        RegressionFit regression() {
            List<PooledEffect> slopes = new ArrayList<>();
            for (int column = 1; column < model.columns(); column++) {
                slopes.add(coefficient(column));
            }
            return new RegressionFit(
                    model.studies(), coefficient(0), List.copyOf(slopes), heterogeneity(), logLikelihood());
        }

        /** The residuals are rounding: all estimates equal, or the moderators explain them. */
        boolean fitsExactly() {
            return at.q <= 1e-20 * model.df();
        }

        private double logLikelihood() {
            return method == HeterogeneityMethod.REML ? at.restrictedLogLikelihood() : at.logLikelihood();
        }

        private PooledEffect coefficient(int column) {
            double value = at.coefficient(column);
            double error = Math.sqrt(scale() * at.factor.inverse()[column][column]);
            double df = intervalMethod == IntervalMethod.NORMAL ? Double.POSITIVE_INFINITY : model.df();
            return new PooledEffect(
                    value,
                    error,
                    df,
                    value / error,
                    Coverage.twoSided(value / error, df),
                    Interval.around(value, coverage.halfWidth(df) * error));
        }

        private double scale() {
            return switch (intervalMethod) {
                case NORMAL -> 1;
                case HARTUNG_KNAPP -> at.q / model.df();
                case HARTUNG_KNAPP_FLOORED -> Math.max(1, at.q / model.df());
            };
        }

        private Optional<Interval> prediction() {
            if (method == HeterogeneityMethod.FIXED || model.studies() < 3) {
                return Optional.empty();
            }
            double spread = Math.sqrt(tauSquared + 1 / at.traceOfWeights());
            return Optional.of(Interval.around(at.coefficient(0), coverage.halfWidth(model.studies() - 2) * spread));
        }

        private Heterogeneity heterogeneity() {
            WeightedModel.At fixed = model.at(0);
            int df = model.df();
            double typical = df / fixed.traceOfP();
            double chance = Gamma.regularizedGammaQ(df / 2.0, fixed.q / 2);
            boolean assumed = method == HeterogeneityMethod.FIXED;
            return new Heterogeneity(
                    tauSquared,
                    solver.profile(coverage),
                    fixed.q,
                    df,
                    chance,
                    100 * (assumed ? Math.max(0, 1 - df / fixed.q) : tauSquared / (tauSquared + typical)),
                    assumed ? fixed.q / df : 1 + tauSquared / typical);
        }
    }
}
