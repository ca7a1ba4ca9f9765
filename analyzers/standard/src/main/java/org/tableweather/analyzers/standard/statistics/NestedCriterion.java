package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton;

/**
 * {@code −2 log L} of the nested model with its exact gradient and Hessian, in one pass over the rooms:
 *
 * <pre>
 * D = log|·| + ν (1 + log 2πs²) + log|P[x,x]|,   s² = r²/ν,   ν = N − p
 * </pre>
 *
 * <p>and without the last term, ν = N, for the unrestricted likelihood. After a call, {@link #reduction}, {@link #slopes} and
 * {@link #top} hold the quantities of that point.
 *
 * @source Patterson1971
 * @source Bates2015
 * @source Pinheiro2000
 */
final class NestedCriterion implements SaddleFreeNewton.Objective {

    private static final double LOG_TWO_PI = 1.8378770664093453;

    final NestedData data;
    final NestedParameters parameters;
    final NestedReduction reduction;
    final FixedEffects top;
    /** Degrees of freedom of the residual, ν. */
    final double nu;

    /** s² of the last call. */
    double sigma2;
    /** Number of calls. */
    int evaluations;

    /** Sums of first derivatives at the last call. */
    final NestedSlopes slopes;
    /** dD/dΩ and dD/dw of the last call. */
    final double[] roomSlopes;

    double sessionSlope;
    /** {@code N = C + cc'/s²} of the last call, m × m. */
    final double[] weights;

    final boolean restricted;

    private final int width;
    private final int depth;
    private final double[] row;
    private final double[] lean;
    private final int[] smoothOf;
    /** Where all is known, with s² its own. */
    private double[] last = new double[0];

    private boolean known;

    /** Without penalised columns. */
    NestedCriterion(NestedData data, NestedParameters parameters, int[] random, NestedModel.Method method) {
        this(data, parameters, random, method, new int[0]);
    }

    /**
     * With penalised columns.
     *
     * @param smoothOf for each fixed column, the constant first, its penalised group or −1; empty for none at all
     */
    NestedCriterion(
            NestedData data, NestedParameters parameters, int[] random, NestedModel.Method method, int[] smoothOf) {
        this.data = data;
        this.parameters = parameters;
        restricted = method == NestedModel.Method.REML;
        width = data.width;
        depth = random.length;
        reduction = new NestedReduction(data, random);
        top = new FixedEffects(width - 1, parameters.smooths(), smoothOf);
        this.smoothOf = smoothOf;
        long penalised = Arrays.stream(smoothOf).filter(group -> group >= 0).count();
        nu = restricted ? data.trials - (width - 1) + penalised : data.trials;
        roomSlopes = new double[depth * depth];
        slopes = new NestedSlopes(reduction, parameters.first() > 0);
        weights = new double[width * width];
        row = new double[width];
        lean = new double[depth];
    }

    @Override
    public double evaluate(double[] phi, double[] gradient) {
        double determinants = reduce(phi);
        if (Double.isNaN(determinants)) {
            return Double.NaN;
        }
        sigma2 = top.residual / nu;
        fillGradient(phi, gradient);
        last = phi.clone();
        known = true;
        return determinants + nu * (1 + LOG_TWO_PI + StrictMath.log(sigma2));
    }

    /**
     * The criterion at a residual variance of its own, {@code log|·| + ν log 2πs² + r²/s²}.
     *
     * @param variance s²
     * @param gradient by φ and, last, by η of {@code s = ŝ e^η}
     */
    double evaluate(double[] phi, double variance, double[] gradient) {
        double determinants = reduce(phi);
        if (Double.isNaN(determinants)) {
            return Double.NaN;
        }
        sigma2 = variance;
        fillGradient(phi, gradient);
        gradient[parameters.size] = 2 * nu - 2 * top.residual / variance;
        return determinants + nu * (LOG_TWO_PI + StrictMath.log(variance)) + top.residual / variance;
    }

    /** Makes this point the one of the last call. */
    void moveTo(double[] phi) {
        if (!known || !Arrays.equals(last, phi)) {
            evaluate(phi, new double[phi.length]);
        }
    }

    /** r² at a point; the criterion itself is not evaluated. */
    double residual(double[] phi) {
        return Double.isNaN(reduce(phi)) ? Double.NaN : top.residual;
    }

    /** Exact second derivatives; at the point of the last call they cost one more pass over the rooms. */
    @Override
    public double[][] hessian(double[] phi, double[] gradient) {
        moveTo(phi);
        if (!known) {
            return new double[][] {{Double.NaN}};
        }
        NestedCurvature curvature = new NestedCurvature(this, phi);
        double[][] hessian = curvature.hessian;
        for (int i = 0; i < phi.length; i++) {
            for (int j = 0; j < phi.length; j++) {
                hessian[i][j] -= curvature.residual[i] * curvature.residual[j] / (nu * sigma2 * sigma2);
            }
        }
        return hessian;
    }

    private double reduce(double[] phi) {
        evaluations++;
        known = false;
        double t = parameters.session(phi);
        parameters.factor(phi, reduction.factor);
        for (int group = 0; group < parameters.smooths(); group++) {
            top.smooth(group, parameters.smooth(phi, group));
        }
        double determinants = reduction.reduce(t * t);
        if (Double.isNaN(determinants) || !top.solve(reduction.total)) {
            return Double.NaN;
        }
        return restricted ? determinants + top.logDeterminant : determinants;
    }

    private void fillGradient(double[] phi, double[] gradient) {
        slopes.gather();
        fillWeights();
        int[] random = reduction.random;
        for (int u = 0, at = 0; u < depth; u++) {
            for (int v = 0; v <= u; v++) {
                double slope = reduction.total[random[u] * width + random[v]] - trace(slopes.byOmega[at++]);
                roomSlopes[u * depth + v] = slope;
                roomSlopes[v * depth + u] = slope;
            }
        }
        sessionSlope = slopes.logByW - trace(slopes.byW);
        parameters.chain(phi, sessionSlope, roomSlopes, reduction.factor, gradient);
        for (int group = 0; group < parameters.smooths(); group++) {
            parameters.chainSmooth(phi, group, smoothSlope(group), gradient);
        }
    }

    /** C + cc'/s², without C for the full likelihood. */
    private void fillWeights() {
        for (int i = 0; i < width; i++) {
            for (int j = 0; j < width; j++) {
                double weight = top.contrast[i] * top.contrast[j] / sigma2;
                boolean own = restricted && i < width - 1 && j < width - 1;
                weights[i * width + j] = own ? weight + top.inverse[i * (width - 1) + j] : weight;
            }
        }
    }

    /** tr(N A). */
    private double trace(double[] matrix) {
        double sum = 0;
        for (int i = 0; i < matrix.length; i++) {
            sum += weights[i] * matrix[i];
        }
        return sum;
    }

    /** dD/dτ²: Σ over the group's columns of T[q,q] − T[q,x] C T[x,q] − (T[q,:] c)²/s². */
    private double smoothSlope(int group) {
        double slope = 0;
        for (int column = 0; column < smoothOf.length; column++) {
            if (smoothOf[column] == group) {
                int row = column * width;
                double left = top.leave(reduction.total, row);
                slope += reduction.total[row + column]
                        - top.inverseForm(reduction.total, row, row)
                        - left * left / sigma2;
            }
        }
        return slope;
    }

    /** Writes {@code h = n f (a' − a[r]' K S[r,:])} of a session into the row; returns 1'V⁻¹1 of the session. */
    private double fillRow(int session, int room) {
        double share = reduction.groups.weight(session);
        double[] mean = data.mean;
        double[] h = row;
        int columns = width;
        int from = session * columns;
        for (int i = 0; i < columns; i++) {
            h[i] = share * mean[from + i];
        }
        double left = share;
        for (int u = 0; u < depth; u++) {
            double along = 0;
            for (int v = 0; v < depth; v++) {
                along += mean[from + reduction.random[v]] * reduction.shrinks[(room * depth + v) * depth + u];
            }
            lean[u] = share * along;
            left -= lean[u] * share * mean[from + reduction.random[u]];
        }
        for (int u = 0; u < depth; u++) {
            subtract(h, lean[u], reduction.sums, (room * columns + reduction.random[u]) * columns, columns);
        }
        return left;
    }

    private static void subtract(double[] from, double times, double[] what, int at, int length) {
        for (int i = 0; i < length; i++) {
            from[i] -= times * what[at + i];
        }
    }

    /** What the residual makes of session h: {@code h c}, for its effect. */
    double sessionLoss(int session, int room) {
        fillRow(session, room);
        return top.leave(row, 0);
    }
}
