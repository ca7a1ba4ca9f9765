package org.tableweather.analyzers.standard.statistics;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/**
 * Generalised least squares with the variance ratios of a fit, while one covariate of each session is moved by a constant,
 * and its square with it: {@code x + d, x² + 2 d x + d²}. One evaluation in place of a search.
 *
 * @source Laird1982
 */
public final class HeldVariances {

    private final NestedFit fit;
    private final double[] factor;
    private final double ratio;
    private final NestedData data;
    private final double[] mean;
    private final double[] within;
    /** Per session the row of x in its own centred cross-products. */
    private final double[] rows;

    private final int moved;
    private final int square;

    /**
     * Those of a fit without a penalised curve.
     *
     * @param rooms that were fitted
     * @param moved the column x, the constant counted
     * @param square the column x²
     * @throws IllegalArgumentException with a penalised curve, or when x was dropped
     */
    public HeldVariances(NestedFit fit, List<RoomSessions> rooms, int moved, int square) {
        if (!fit.smoothingFree() || fit.position(moved) < 0) {
            throw new IllegalArgumentException(
                    "variances are held for fits without a penalised curve, and with the column that is moved");
        }
        this.fit = fit;
        this.moved = fit.position(moved);
        this.square = fit.position(square);
        factor = factor(fit.omega);
        ratio = fit.sessionVariance().orElse(0) / fit.sigma2();
        List<RoomSessions> kept = kept(rooms);
        data = new NestedData(kept);
        mean = data.mean.clone();
        within = data.within.clone();
        rows = new double[mean.length];
        int session = 0;
        for (Moments part : NestedData.sessionsOf(kept)) {
            for (int i = 0; i < part.columns(); i++) {
                rows[session * data.width + 1 + i] = part.cross(this.moved - 1, i);
            }
            session++;
        }
    }

    private List<RoomSessions> kept(List<RoomSessions> rooms) {
        int response = rooms.get(0).sessions().get(0).columns() - 1;
        int[] columns = IntStream.concat(
                        IntStream.range(0, response).filter(column -> fit.position(column + 1) >= 0),
                        IntStream.of(response))
                .toArray();
        return rooms.stream()
                .map(room -> new RoomSessions(
                        room.key(),
                        room.sessions().stream()
                                .map(part -> part.select(columns))
                                .toList()))
                .toList();
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
     * @param shifts d, one for each session in the order of rooms and sessions
     * @param row over the given columns, the constant first
     * @return the value, its standard error by these data's own residual, degrees of freedom those of the fit; empty when the
     *     columns determine each other
     */
    public Optional<Quantity> estimate(double[] shifts, double[] row) {
        move(shifts);
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

    private void move(double[] shifts) {
        System.arraycopy(mean, 0, data.mean, 0, mean.length);
        System.arraycopy(within, 0, data.within, 0, within.length);
        for (int room = 0; room < data.rooms; room++) {
            int base = room * data.width * data.width;
            for (int session = data.firstSession[room]; session < data.firstSession[room + 1]; session++) {
                move(session, base, shifts[session]);
            }
        }
    }

    private void move(int session, int base, double shift) {
        int width = data.width;
        int at = session * width;
        data.mean[at + moved] += shift;
        if (square < 0) {
            return;
        }
        data.mean[at + square] += 2 * shift * mean[at + moved] + shift * shift;
        for (int i = 0; i < width; i++) {
            double more = 2 * shift * rows[at + i];
            data.within[base + square * width + i] += more;
            data.within[base + i * width + square] += more;
        }
        data.within[base + square * width + square] += 4 * shift * shift * rows[at + moved];
    }
}
