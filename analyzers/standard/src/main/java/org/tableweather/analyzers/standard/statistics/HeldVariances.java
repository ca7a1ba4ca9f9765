package org.tableweather.analyzers.standard.statistics;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/**
 * Generalised least squares with the variance ratios of a fit, on other data of the same columns: one evaluation in place of
 * a search.
 *
 * @source Laird1982
 */
public final class HeldVariances {

    private final NestedFit fit;
    private final double[] factor;
    private final double ratio;

    /**
     * Those of a fit without a penalised curve.
     *
     * @throws IllegalArgumentException with one
     */
    public HeldVariances(NestedFit fit) {
        if (!fit.smoothingFree()) {
            throw new IllegalArgumentException("variances are held for fits without a penalised curve only");
        }
        this.fit = fit;
        factor = factor(fit.omega);
        ratio = fit.sessionVariance().orElse(0) / fit.sigma2();
    }

    /** Cholesky factor by rows; a column without a variance left is zero. */
    private static double[] factor(double[][] omega) {
        int depth = omega.length;
        double[] factor = new double[depth * depth];
        for (int i = 0; i < depth; i++) {
            for (int j = 0; j <= i; j++) {
                double rest = omega[i][j];
                for (int k = 0; k < j; k++) {
                    rest -= factor[i * depth + k] * factor[j * depth + k];
                }
                double pivot = factor[j * depth + j];
                factor[i * depth + j] = i == j ? Math.sqrt(Math.max(0, rest)) : pivot > 0 ? rest / pivot : 0;
            }
        }
        return factor;
    }

    /**
     * A linear combination of the coefficients.
     *
     * @param rooms of the columns that were fitted
     * @param row over them, the constant first
     * @return the value, its standard error by these data's own residual, degrees of freedom those of the fit; empty when the
     *     columns determine each other
     */
    public Optional<Quantity> estimate(List<RoomSessions> rooms, double[] row) {
        int response = rooms.get(0).sessions().get(0).columns() - 1;
        int[] kept = IntStream.concat(
                        IntStream.range(0, response).filter(column -> fit.position(column + 1) >= 0),
                        IntStream.of(response))
                .toArray();
        NestedData data = new NestedData(rooms.stream()
                .map(room -> new RoomSessions(
                        room.key(),
                        room.sessions().stream().map(part -> part.select(kept)).toList()))
                .toList());
        NestedReduction reduction = new NestedReduction(data, fit.randomPositions());
        System.arraycopy(factor, 0, reduction.factor, 0, factor.length);
        FixedEffects top = new FixedEffects(data.width - 1);
        if (Double.isNaN(reduction.reduce(ratio)) || !top.solve(reduction.total)) {
            return Optional.empty();
        }
        double[] l = fit.reduced(row);
        double value = l[0] * data.responseCentre;
        double form = 0;
        for (int i = 0; i < l.length; i++) {
            value += l[i] * top.coefficients[i];
            for (int j = 0; j < l.length; j++) {
                form += l[i] * top.inverse[i * l.length + j] * l[j];
            }
        }
        double sigma2 = top.residual / (data.trials - l.length);
        return Optional.of(
                new Quantity(value, Math.sqrt(sigma2 * form), fit.contrast(row).df()));
    }
}
