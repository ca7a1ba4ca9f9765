package org.tableweather.analyzers.standard.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/** What a fit leaves over, and what each room does to it; all from the sessions' moments. */
public final class NestedDiagnostics {

    private final NestedFit fit;
    private final NestedData data;
    private final int width;
    private final double[] contrast;
    private final double[] total;

    /**
     * What the model leaves of a session's mean.
     *
     * @param room position among the rooms
     * @param fitted with the room's own effects
     * @param residual mean of the session less the fitted
     * @param standardised over {@code √(v + s²/n)}, what a session mean scatters by
     */
    public record SessionResidual(int room, double fitted, double residual, double standardised) {}

    /**
     * Scatter of trials about the model within the sessions of a room.
     *
     * @param room position among the rooms
     * @param variance residual variance
     * @param df trials less sessions
     */
    public record RoomScatter(int room, double variance, long df) {}

    /**
     * Whether trial scatter differs between rooms.
     *
     * @param statistic about chi-squared when it does not
     * @param df rooms with repeated trials, less one
     * @param pValue chance of one as large
     */
    public record ScatterTest(double statistic, int df, double pValue) {}

    /** Of a fit. */
    public NestedDiagnostics(NestedFit fit) {
        this.fit = fit;
        data = fit.data;
        width = data.width;
        contrast = new double[width];
        for (int i = 0; i < width - 1; i++) {
            contrast[i] = -fit.coefficients[i];
        }
        contrast[0] += fit.responseCentre;
        contrast[width - 1] = 1;
        total = new double[width * width];
        for (int i = 0; i < fit.rests.length; i++) {
            total[i % total.length] += fit.rests[i];
        }
    }

    /** In the order of rooms and sessions. */
    public List<SessionResidual> sessions() {
        List<SessionResidual> all = new ArrayList<>();
        int[] random = fit.randomPositions();
        for (int room = 0; room < data.rooms; room++) {
            double[] effects = fit.rooms().get(room).effects();
            for (int session = data.firstSession[room]; session < data.firstSession[room + 1]; session++) {
                int row = session * width;
                double residual = 0;
                for (int i = 0; i < width; i++) {
                    residual += contrast[i] * data.mean[row + i];
                }
                for (int u = 0; u < random.length; u++) {
                    residual -= effects[u] * data.mean[row + random[u]];
                }
                double variance = fit.sessionVariance().orElse(0) + fit.sigma2() / data.count[session];
                double observed = data.mean[row + width - 1] + fit.responseCentre;
                all.add(new SessionResidual(room, observed - residual, residual, residual / Math.sqrt(variance)));
            }
        }
        return all;
    }

    /** Rooms that have two trials in a session. */
    public List<RoomScatter> scatter() {
        List<RoomScatter> all = new ArrayList<>();
        for (int room = 0; room < data.rooms; room++) {
            double df = 0;
            for (int session = data.firstSession[room]; session < data.firstSession[room + 1]; session++) {
                df += data.count[session] - 1;
            }
            if (df > 0) {
                all.add(new RoomScatter(room, squares(room) / df, (long) df));
            }
        }
        return all;
    }

    private double squares(int room) {
        double squares = 0;
        for (int i = 0; i < width; i++) {
            for (int j = 0; j < width; j++) {
                squares += contrast[i] * data.within[(room * width + i) * width + j] * contrast[j];
            }
        }
        return Math.max(0, squares);
    }

    /**
     * Bartlett's test that trial scatter is the same in all rooms; it takes trials with long tails for unequal scatter.
     *
     * @return empty below two rooms with repeated trials, or when one of them has no scatter
     * @source Bartlett1937
     */
    public Optional<ScatterTest> equalScatter() {
        List<RoomScatter> rooms = scatter();
        if (rooms.size() < 2 || rooms.stream().anyMatch(room -> !(room.variance() > 0))) {
            return Optional.empty();
        }
        double df = 0;
        double pooled = 0;
        double logarithms = 0;
        double inverses = 0;
        for (RoomScatter room : rooms) {
            df += room.df();
            pooled += room.df() * room.variance();
            logarithms += room.df() * StrictMath.log(room.variance());
            inverses += 1.0 / room.df();
        }
        int groups = rooms.size();
        double correction = 1 + (inverses - 1 / df) / (3 * (groups - 1));
        double statistic = Math.max(0, (df * StrictMath.log(pooled / df) - logarithms) / correction);
        double tail = 1 - new ChiSquaredDistribution(groups - 1).cumulativeProbability(statistic);
        return Optional.of(new ScatterTest(statistic, groups - 1, tail));
    }

    /**
     * A combination of the coefficients without one room, the variance ratios left as they are:
     * {@code (P − P_j)[x,x]⁻¹ (P − P_j)[x,y]}.
     *
     * @param room position among the rooms
     * @param row over all given columns
     * @return empty when the other rooms do not determine it; its degrees of freedom are those of all rooms
     */
    public Optional<Quantity> without(int room, double[] row) {
        int p = width - 1;
        DMatrixRMaj products = new DMatrixRMaj(p, p);
        DMatrixRMaj right = new DMatrixRMaj(p, 1);
        gather(room, products, right);
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.chol(p);
        if (!solver.setA(products) || solver.quality() < 1e-14) {
            return Optional.empty();
        }
        DMatrixRMaj solution = new DMatrixRMaj(p, 1);
        DMatrixRMaj inverse = new DMatrixRMaj(p, p);
        solver.solve(right, solution);
        solver.invert(inverse);
        double[] l = fit.reduced(row);
        double value = l[0] * fit.responseCentre;
        double form = 0;
        for (int i = 0; i < p; i++) {
            value += l[i] * solution.get(i, 0);
            for (int j = 0; j < p; j++) {
                form += l[i] * inverse.get(i, j) * l[j];
            }
        }
        double df = fit.contrast(row).df();
        return Optional.of(new Quantity(value, Math.sqrt(fit.sigma2() * form), df));
    }

    /** All rooms' system less that of one. */
    private void gather(int room, DMatrixRMaj products, DMatrixRMaj right) {
        int p = width - 1;
        for (int i = 0; i < p; i++) {
            int row = (room * width + i) * width;
            for (int j = 0; j < p; j++) {
                products.set(i, j, total[i * width + j] - fit.rests[row + j]);
            }
            right.set(i, 0, total[i * width + p] - fit.rests[row + p]);
        }
        fit.addPenalty(products);
    }
}
