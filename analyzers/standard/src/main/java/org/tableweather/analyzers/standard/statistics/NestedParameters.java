package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import java.util.Optional;

/**
 * What φ means: {@code φ = (t, Lᵢⱼ rms(column i), τ rms(group))}, t only where there is a session effect, L by rows, one
 * τ for each penalised group, of any sign.
 *
 * <p>The criterion is even in t and in each column of L, so that no bound is needed; the scaling makes all of order one.
 */
final class NestedParameters {

    private static final double LEAST_START = 0.05;

    /** Length of φ. */
    final int size;

    private final int depth;
    private final boolean sessionEffect;
    private final int[][] entries;
    private final double[] scale;
    private final double[] smoothScale;

    /** Lays out φ without penalised groups. */
    NestedParameters(double[] rms, boolean sessionEffect, NestedModel.Covariance covariance) {
        this(rms, sessionEffect, covariance, new double[0]);
    }

    /**
     * Lays out φ.
     *
     * @param rms of each random column
     * @param smoothRms of each penalised group
     */
    NestedParameters(double[] rms, boolean sessionEffect, NestedModel.Covariance covariance, double[] smoothRms) {
        depth = rms.length;
        smoothScale = smoothRms;
        scale = rms;
        this.sessionEffect = sessionEffect;
        boolean free = covariance == NestedModel.Covariance.FREE;
        entries = new int[free ? depth * (depth + 1) / 2 : depth][];
        for (int i = 0, at = 0; i < depth; i++) {
            for (int j = free ? 0 : i; j <= i; j++) {
                entries[at++] = new int[] {i, j};
            }
        }
        size = entries.length + first() + smoothScale.length;
    }

    /** Where the entries of L begin. */
    int first() {
        return sessionEffect ? 1 : 0;
    }

    /** t, zero without a session effect. */
    double session(double[] phi) {
        return sessionEffect ? phi[0] : 0;
    }

    /** τ of a penalised group, over the residual's standard deviation. */
    double smooth(double[] phi, int group) {
        return phi[first() + entries.length + group] / smoothScale[group];
    }

    /** Number of penalised groups. */
    int smooths() {
        return smoothScale.length;
    }

    /** Writes dD/dφ of a group from dD/dτ². */
    void chainSmooth(double[] phi, int group, double slope, double[] gradient) {
        gradient[first() + entries.length + group] = 2 * smooth(phi, group) * slope / smoothScale[group];
    }

    /** Positions of the entries of L in Σ, each row and column. */
    int[][] entries() {
        return entries;
    }

    /** Writes L by rows. */
    void factor(double[] phi, double[] factor) {
        for (int e = 0; e < entries.length; e++) {
            factor[entries[e][0] * depth + entries[e][1]] = phi[first() + e] / scale[entries[e][0]];
        }
    }

    /** Writes dD/dφ from dD/dw and dD/dΩ: {@code 2 t dD/dw} and the entries of {@code 2 (dD/dΩ) L}. */
    void chain(double[] phi, double session, double[] rooms, double[] factor, double[] gradient) {
        if (sessionEffect) {
            gradient[0] = 2 * phi[0] * session;
        }
        for (int e = 0; e < entries.length; e++) {
            int i = entries[e][0];
            int j = entries[e][1];
            double sum = 0;
            for (int k = j; k < depth; k++) {
                sum += rooms[i * depth + k] * factor[k * depth + j];
            }
            gradient[first() + e] = 2 * sum / scale[i];
        }
    }

    /** dτ²/dφ of a group. */
    double smoothSlope(double[] phi, int group) {
        return 2 * smooth(phi, group) / smoothScale[group];
    }

    /** d²τ²/dφ² of a group. */
    double smoothBend(int group) {
        return 2 / (smoothScale[group] * smoothScale[group]);
    }

    /**
     * Derivatives by t and by the entries of L of a matrix whose derivatives by w and along Ω are given as
     * {@link NestedSlopes} sums them up.
     */
    double[][] slopes(double[] phi, double[] byW, double[][] byOmega, double[] factor) {
        double[][] slopes = new double[first() + entries.length][byW.length];
        if (sessionEffect) {
            addTimes(slopes[0], -2 * phi[0], byW);
        }
        for (int e = 0; e < entries.length; e++) {
            int i = entries[e][0];
            for (int k = entries[e][1]; k < depth; k++) {
                double times = -2 * factor[k * depth + entries[e][1]] / scale[i];
                addTimes(slopes[first() + e], times, byOmega[Moments.packed(Math.max(i, k), Math.min(i, k))]);
            }
        }
        return slopes;
    }

    private static void addTimes(double[] to, double times, double[] what) {
        for (int i = 0; i < to.length; i++) {
            to[i] += times * what[i];
        }
    }

    /** Adds the rooms' part of the second derivatives to the lower triangle. */
    void addCurvature(double[] phi, RoomCurvature rooms, double[] factor, double[][] hessian) {
        if (sessionEffect) {
            hessian[0][0] += 2 * rooms.slopeByW + 4 * phi[0] * phi[0] * rooms.byWs;
        }
        double[][] moves = new double[entries.length][];
        for (int e = 0; e < entries.length; e++) {
            moves[e] = move(e, factor);
            if (sessionEffect) {
                hessian[first() + e][0] += 2 * phi[0] * dot(rooms.byBoth, moves[e]);
            }
            for (int g = 0; g <= e; g++) {
                hessian[first() + e][first() + g] += rooms.byOmegas(moves[e], moves[g]) + bend(e, g, rooms.slope);
            }
        }
    }

    /** dΩ/dφ of an entry of L. */
    private double[] move(int e, double[] factor) {
        double[] move = new double[depth * depth];
        int i = entries[e][0];
        for (int k = entries[e][1]; k < depth; k++) {
            double share = factor[k * depth + entries[e][1]] / scale[i];
            move[i * depth + k] += share;
            move[k * depth + i] += share;
        }
        return move;
    }

    /** What d²Ω/dφ² adds: entries of one column of L alone bend Ω together. */
    private double bend(int e, int g, double[] slope) {
        int i = entries[e][0];
        int k = entries[g][0];
        return entries[e][1] == entries[g][1] ? 2 * slope[i * depth + k] / (scale[i] * scale[k]) : 0;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** {@code z'Ωz = |L'z|²}. */
    double spread(double[] z, double[] factor) {
        double sum = 0;
        for (int j = 0; j < depth; j++) {
            double along = along(z, factor, j);
            sum += along * along;
        }
        return sum;
    }

    /** Its derivatives by φ. */
    double[] spreadSlopes(double[] z, double[] factor) {
        double[] slopes = new double[size];
        for (int e = 0; e < entries.length; e++) {
            slopes[first() + e] = 2 * along(z, factor, entries[e][1]) * z[entries[e][0]] / scale[entries[e][0]];
        }
        return slopes;
    }

    private double along(double[] z, double[] factor, int column) {
        double sum = 0;
        for (int i = column; i < depth; i++) {
            sum += z[i] * factor[i * depth + column];
        }
        return sum;
    }

    /** A start: t, and one value for the scaled diagonal of L. */
    double[] start(double session, double diagonal) {
        double[] start = new double[size];
        if (sessionEffect) {
            start[0] = session;
        }
        for (int e = 0; e < entries.length; e++) {
            start[first() + e] = entries[e][0] == entries[e][1] ? diagonal : 0;
        }
        Arrays.fill(start, first() + entries.length, size, diagonal);
        return start;
    }

    /**
     * A start at variances that are known from elsewhere, none of them so near zero that a search would be held up there.
     *
     * @param factor L by rows
     * @param smoothing τ of each group
     * @return empty when these are not the parameters
     */
    Optional<double[]> start(double session, boolean sessions, double[] factor, double[] smoothing) {
        if (sessions != sessionEffect || factor.length != depth * depth || smoothing.length != smoothScale.length) {
            return Optional.empty();
        }
        double[] start = new double[size];
        if (sessionEffect) {
            start[0] = away(session);
        }
        for (int e = 0; e < entries.length; e++) {
            double entry = factor[entries[e][0] * depth + entries[e][1]] * scale[entries[e][0]];
            start[first() + e] = entries[e][0] == entries[e][1] ? away(entry) : entry;
        }
        for (int group = 0; group < smoothing.length; group++) {
            start[first() + entries.length + group] = away(smoothing[group] * smoothScale[group]);
        }
        return Optional.of(start);
    }

    private static double away(double value) {
        return Math.max(LEAST_START, value);
    }

    /**
     * Whether the point may lie on a bent ridge: with L₁₁ near zero the rows below can turn at little cost, and a search
     * creeps along the turn.
     */
    boolean mayCreep(double[] phi) {
        return entries.length > depth && Math.abs(phi[first()]) < 0.05;
    }

    /** The end of that ridge: each diagonal entry below the first goes into its neighbour, the variances stay. */
    double[] folded(double[] phi) {
        double[] folded = phi.clone();
        for (int e = 1; e < entries.length; e++) {
            if (entries[e][0] == entries[e][1]) {
                double beside = folded[first() + e - 1];
                folded[first() + e - 1] = Math.copySign(StrictMath.hypot(beside, folded[first() + e]), beside);
                folded[first() + e] = 0;
            }
        }
        return folded;
    }

    /** The same point with neither t nor the diagonal of L negative. */
    double[] tidy(double[] phi) {
        double[] tidy = phi.clone();
        if (sessionEffect) {
            tidy[0] = Math.abs(tidy[0]);
        }
        for (int e = 0; e < entries.length; e++) {
            if (entries[e][0] == entries[e][1] && tidy[first() + e] < 0) {
                flipColumn(tidy, entries[e][1]);
            }
        }
        for (int i = first() + entries.length; i < size; i++) {
            tidy[i] = Math.abs(tidy[i]);
        }
        return tidy;
    }

    private void flipColumn(double[] phi, int column) {
        for (int e = 0; e < entries.length; e++) {
            if (entries[e][1] == column) {
                phi[first() + e] = -phi[first() + e];
            }
        }
    }
}
