package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;

/**
 * Takes the session and room effects out of the cross-products, at one point of the variance ratios {@code w} and
 * {@code Ω = L L'}:
 *
 * <pre>
 * session  f = 1/(1 + w n),  T = M + n f a a'                                  log|·| += log(1 + w n)
 * room     S = Σ T,  V = S[:,r] L,  W = I + L' V[r,:],  P = S − V W⁻¹ V'        log|·| += log|W|
 *          K = L W⁻¹ L'
 * top      P = Σ P
 * </pre>
 *
 * <p>The rank-one form of T has no cancellation; W is positive definite whatever L. The work is in the number of sessions of
 * different counts; arrays are reused from call to call, so one instance serves one thread. Matrices are whole, by rows.
 *
 * @source Laird1982
 * @source Bates2015
 */
final class NestedReduction {

    private static final double LARGEST_PRODUCT = 1e150;

    final NestedData data;
    /** Columns with a room effect, r. */
    final int[] random;
    /** Weights n f of the sessions. */
    final SessionGroups groups;
    /** Per room S and P, m × m. */
    final double[] sums;

    final double[] rests;
    /** Per room K, q × q. */
    final double[] shrinks;
    /** L, q × q. */
    final double[] factor;
    /** Σ P, m × m. */
    final double[] total;

    private final int width;
    private final int depth;
    private final double[] packed;
    /** L' S[r,:], then R⁻¹ V', q × m. */
    private final double[] across;
    /** W, then its Cholesky factor R, q × q. */
    private final double[] inner;
    /** R⁻¹ L', q × q. */
    private final double[] solved;

    private double logDeterminant;
    /** Of pivots, all at least 1, whose logarithm is not taken yet. */
    private double pivots;

    NestedReduction(NestedData data, int[] random) {
        this.data = data;
        this.random = random;
        width = data.width;
        depth = random.length;
        groups = new SessionGroups(data);
        packed = new double[Moments.packedLength(width)];
        sums = new double[data.rooms * width * width];
        rests = new double[data.rooms * width * width];
        shrinks = new double[data.rooms * depth * depth];
        factor = new double[depth * depth];
        total = new double[width * width];
        across = new double[depth * width];
        inner = new double[depth * depth];
        solved = new double[depth * depth];
    }

    /**
     * Fills the arrays.
     *
     * @param w ratio of the session variance, at least 0
     * @return {@code Σ log(1 + w n) + Σ log|W|}; NaN when a W is not positive definite in doubles
     */
    double reduce(double w) {
        logDeterminant = groups.weigh(w);
        pivots = 1;
        Arrays.fill(total, 0);
        for (int room = 0; room < data.rooms; room++) {
            gatherSessions(room);
            if (depth > 0 && !shrinkRoom(room)) {
                return Double.NaN;
            }
            leaveRest(room * width * width);
        }
        for (int i = 0; i < width; i++) {
            for (int j = 0; j < i; j++) {
                total[j * width + i] = total[i * width + j];
            }
        }
        return logDeterminant + StrictMath.log(pivots);
    }

    private void gatherSessions(int room) {
        groups.outer(room, 1, packed);
        int base = room * width * width;
        for (int i = 0, at = 0; i < width; i++) {
            for (int j = 0; j <= i; j++, at++) {
                double sum = data.within[base + i * width + j] + packed[at];
                sums[base + i * width + j] = sum;
                sums[base + j * width + i] = sum;
            }
        }
    }

    private boolean shrinkRoom(int room) {
        formInner(room * width * width);
        if (!factorInner()) {
            return false;
        }
        solveAcross();
        solveFactor();
        int base = room * depth * depth;
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < depth; v++) {
                double sum = 0;
                for (int k = 0; k < depth; k++) {
                    sum += solved[k * depth + u] * solved[k * depth + v];
                }
                shrinks[base + u * depth + v] = sum;
            }
        }
        return true;
    }

    private void formInner(int base) {
        for (int u = 0; u < depth; u++) {
            for (int i = 0; i < width; i++) {
                double sum = 0;
                for (int v = u; v < depth; v++) {
                    sum += factor[v * depth + u] * sums[base + random[v] * width + i];
                }
                across[u * width + i] = sum;
            }
        }
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v <= u; v++) {
                double sum = u == v ? 1 : 0;
                for (int k = v; k < depth; k++) {
                    sum += across[u * width + random[k]] * factor[k * depth + v];
                }
                inner[u * depth + v] = sum;
            }
        }
    }

    private boolean factorInner() {
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < u; v++) {
                inner[u * depth + v] = (inner[u * depth + v] - innerProduct(u, v)) / inner[v * depth + v];
            }
            double pivot = inner[u * depth + u] - innerProduct(u, u);
            if (!(pivot > 0) || pivot == Double.POSITIVE_INFINITY) {
                return false;
            }
            inner[u * depth + u] = Math.sqrt(pivot);
            multiply(pivot);
        }
        return true;
    }

    private void multiply(double pivot) {
        if (pivots > LARGEST_PRODUCT) {
            logDeterminant += StrictMath.log(pivots);
            pivots = 1;
        }
        pivots *= pivot;
    }

    private double innerProduct(int u, int v) {
        double sum = 0;
        for (int k = 0; k < v; k++) {
            sum += inner[u * depth + k] * inner[v * depth + k];
        }
        return sum;
    }

    private void solveAcross() {
        for (int u = 0; u < depth; u++) {
            for (int i = 0; i < width; i++) {
                double sum = across[u * width + i];
                for (int k = 0; k < u; k++) {
                    sum -= inner[u * depth + k] * across[k * width + i];
                }
                across[u * width + i] = sum / inner[u * depth + u];
            }
        }
    }

    private void solveFactor() {
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < depth; v++) {
                double sum = factor[v * depth + u];
                for (int k = 0; k < u; k++) {
                    sum -= inner[u * depth + k] * solved[k * depth + v];
                }
                solved[u * depth + v] = sum / inner[u * depth + u];
            }
        }
    }

    private void leaveRest(int base) {
        for (int i = 0; i < width; i++) {
            for (int j = 0; j <= i; j++) {
                double rest = sums[base + i * width + j];
                for (int u = 0; u < depth; u++) {
                    rest -= across[u * width + i] * across[u * width + j];
                }
                rests[base + i * width + j] = rest;
                rests[base + j * width + i] = rest;
                total[i * width + j] += rest;
            }
        }
    }
}
