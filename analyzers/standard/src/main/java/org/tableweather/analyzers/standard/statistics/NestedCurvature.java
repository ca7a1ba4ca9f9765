package org.tableweather.analyzers.standard.statistics;

/**
 * Second derivatives of {@code log|·| + ν log 2πs² + r²/s² + log|P[x,x]|} by φ, at a residual variance that is held. With
 * {@code C = P[x,x]⁻¹}, c = (−b, 1), {@code N = C + cc'/s²}, and what {@link NestedSlopes} names:
 *
 * <pre>
 * second derivatives of each room's P
 *   w, w    2 B'(Σ f³ a a')B − 2 U K U',   U = B'F[:,r]
 *   w, E    H[:,r] E R' + R E H[r,:]
 *   E, G    R E P[r,r] G R' + R G P[r,r] E R'
 * of log|·|
 *   w, w    −Σ f² + 2 tr(K Σ f³ a[r]a[r]') − tr(K F[r,r] K F[r,r])
 *   w, E    −tr(H[r,r] E)
 *   E, G    −tr(P[r,r] E P[r,r] G)
 * of the rest, with the derivatives T of P over all rooms
 *   tr(N T₁₂) − tr(C T₁ C T₂)[x,x] − 2 (T₁c)[x]' C (T₂c)[x] / s²
 * </pre>
 *
 * <p>A penalised group enters as one more random effect of all rooms together, with {@code d = e[q] − C P[x,q]} for each of its
 * columns q: {@code d(C)/dτ² = Σ d d'}. Without REML the terms in C alone fall away.
 *
 * @source Lindstrom1988
 */
final class NestedCurvature {

    /** By φ, s² held; size × size. */
    final double[][] hessian;
    /** dr²/dφ. */
    final double[] residual;
    /** dC/dφ, p × p by rows. */
    final double[][] inverse;

    private final NestedCriterion criterion;
    private final NestedParameters parameters;
    private final FixedEffects top;
    private final double[] total;
    private final int width;
    private final int fixed;
    private final double sigma2;
    /** For each φ the derivative of P over all rooms; zero for a penalised group. */
    private final double[][] slopes;
    /** For each φ (T c)[x]; for a penalised group empty. */
    private final double[][] losses;

    /** At the point and the residual variance that the criterion was evaluated at last, its gradient sums gathered. */
    NestedCurvature(NestedCriterion criterion, double[] phi) {
        this.criterion = criterion;
        parameters = criterion.parameters;
        top = criterion.top;
        total = criterion.reduction.total;
        width = criterion.data.width;
        fixed = width - 1;
        sigma2 = criterion.sigma2;
        int size = phi.length;
        hessian = new double[size][size];
        residual = new double[size];
        inverse = new double[size][fixed * fixed];
        slopes = parameters.slopes(phi, criterion.slopes.byW, criterion.slopes.byOmega, criterion.reduction.factor);
        losses = new double[slopes.length][];
        for (int i = 0; i < slopes.length; i++) {
            losses[i] = loss(slopes[i]);
        }
        for (int i = 0; i < slopes.length; i++) {
            fill(i);
        }
        RoomCurvature rooms = new RoomCurvature(criterion);
        parameters.addCurvature(phi, rooms, criterion.reduction.factor, hessian);
        for (int group = 0; group < parameters.smooths(); group++) {
            fillSmooth(phi, group);
        }
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < i; j++) {
                hessian[j][i] = hessian[i][j];
            }
        }
    }

    /** (T c) over all columns, the response's last. */
    private double[] loss(double[] slope) {
        double[] loss = new double[width];
        for (int i = 0; i < width; i++) {
            loss[i] = top.leave(slope, i * width);
        }
        return loss;
    }

    /** Terms of the sums over all rooms, of a parameter of rooms or sessions and those before it. */
    private void fill(int i) {
        residual[i] = top.leave(losses[i], 0);
        double[] product = product(slopes[i]);
        for (int j = 0; j <= i; j++) {
            double both = criterion.restricted ? traceOfProducts(product, j == i ? product : product(slopes[j])) : 0;
            hessian[i][j] = -both - 2 * top.inverseForm(losses[i], losses[j]) / sigma2;
        }
        for (int a = 0; a < fixed; a++) {
            for (int b = 0; b < fixed; b++) {
                double sum = 0;
                for (int k = 0; k < fixed; k++) {
                    sum -= product[a * fixed + k] * top.inverse[k * fixed + b];
                }
                inverse[i][a * fixed + b] = sum;
            }
        }
    }

    /** C T[x,x]. */
    private double[] product(double[] slope) {
        double[] product = new double[fixed * fixed];
        for (int i = 0; i < fixed; i++) {
            for (int k = 0; k < fixed; k++) {
                double times = top.inverse[i * fixed + k];
                for (int j = 0; j < fixed; j++) {
                    product[i * fixed + j] += times * slope[k * width + j];
                }
            }
        }
        return product;
    }

    private double traceOfProducts(double[] a, double[] b) {
        double trace = 0;
        for (int i = 0; i < fixed; i++) {
            for (int k = 0; k < fixed; k++) {
                trace += a[i * fixed + k] * b[k * fixed + i];
            }
        }
        return trace;
    }

    private void fillSmooth(double[] phi, int group) {
        int at = slopes.length + group;
        double chain = parameters.smoothSlope(phi, group);
        for (int q : top.columns(group)) {
            double[] d = departure(q);
            double left = top.leave(total, q * width);
            residual[at] -= chain * left * left;
            for (int i = 0; i < slopes.length; i++) {
                hessian[at][i] += chain * (form(d, slopes[i]) - 2 * left * dot(d, losses[i]) / sigma2);
            }
            for (int other = 0; other <= group; other++) {
                hessian[at][slopes.length + other] +=
                        chain * parameters.smoothSlope(phi, other) * between(d, left, other);
            }
            hessian[at][at] += parameters.smoothBend(group) * (dotTotal(d, q) - left * left / sigma2);
            addOuter(inverse[at], chain, d);
        }
    }

    /** e[q] − C P[x,q]. */
    private double[] departure(int q) {
        double[] d = new double[fixed];
        d[q] = 1;
        for (int i = 0; i < fixed; i++) {
            for (int k = 0; k < fixed; k++) {
                d[i] -= top.inverse[i * fixed + k] * total[k * width + q];
            }
        }
        return d;
    }

    private double between(double[] d, double left, int group) {
        double sum = 0;
        for (int q : top.columns(group)) {
            double shared = dotTotal(d, q);
            sum += shared * (2 * left * top.leave(total, q * width) / sigma2 - shared);
        }
        return sum;
    }

    private double dotTotal(double[] d, int q) {
        double sum = 0;
        for (int i = 0; i < fixed; i++) {
            sum += d[i] * total[i * width + q];
        }
        return sum;
    }

    private double form(double[] d, double[] slope) {
        double sum = 0;
        for (int i = 0; i < fixed; i++) {
            for (int j = 0; j < fixed; j++) {
                sum += d[i] * slope[i * width + j] * d[j];
            }
        }
        return sum;
    }

    private double dot(double[] d, double[] loss) {
        double sum = 0;
        for (int i = 0; i < fixed; i++) {
            sum += d[i] * loss[i];
        }
        return sum;
    }

    private void addOuter(double[] to, double times, double[] d) {
        for (int i = 0; i < fixed; i++) {
            for (int j = 0; j < fixed; j++) {
                to[i * fixed + j] += times * d[i] * d[j];
            }
        }
    }
}
