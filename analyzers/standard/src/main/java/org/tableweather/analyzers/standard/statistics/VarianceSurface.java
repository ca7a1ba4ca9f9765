package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * {@code log|V|} and {@code X'V⁻¹X} as functions of the variances themselves, {@code (v, Σ by its lower triangle, s²)}:
 *
 * <pre>
 * log|V| = N log s² + Σ log(1 + w n) + Σ log|I + S[r,r] Ω|
 * X'V⁻¹X = Σ (S[x,x] − S[x,r] Ω (I + S[r,r] Ω)⁻¹ S[r,x]) / s²
 * </pre>
 *
 * <p>Ω need not be positive semidefinite, so that derivatives exist at the boundary too.
 */
final class VarianceSurface {

    private final NestedData data;
    private final int[] random;
    private final int[][] entries;
    private final boolean sessionEffect;
    private final int width;
    private final int depth;
    private final DMatrixRMaj omega;
    private final DMatrixRMaj inner;
    private final DMatrixRMaj solved;
    private final DMatrixRMaj ofRandom;

    VarianceSurface(NestedData data, int[] random, int[][] entries, boolean sessionEffect) {
        this.data = data;
        this.random = random;
        this.entries = entries;
        this.sessionEffect = sessionEffect;
        width = data.width;
        depth = random.length;
        omega = new DMatrixRMaj(depth, depth);
        inner = new DMatrixRMaj(depth, depth);
        solved = new DMatrixRMaj(depth, depth);
        ofRandom = new DMatrixRMaj(depth, width - 1);
    }

    /** Number of variances. */
    int size() {
        return (sessionEffect ? 1 : 0) + entries.length + 1;
    }

    /** Number of fixed columns. */
    int fixed() {
        return width - 1;
    }

    /** log|V|, then X'V⁻¹X by rows; NaN where V is not positive definite. */
    double[] at(double[] variances) {
        double s2 = variances[size() - 1];
        double w = sessionEffect ? variances[0] / s2 : 0;
        fillOmega(variances, s2);
        double[] result = new double[1 + fixed() * fixed()];
        result[0] = data.trials * StrictMath.log(s2);
        double[] sums = new double[width * width];
        for (int room = 0; room < data.rooms; room++) {
            result[0] += gather(room, w, sums);
            result[0] += reduce(sums, result);
        }
        for (int i = 1; i < result.length; i++) {
            result[i] /= s2;
        }
        return result;
    }

    private void fillOmega(double[] variances, double s2) {
        int first = sessionEffect ? 1 : 0;
        for (int e = 0; e < entries.length; e++) {
            omega.set(entries[e][0], entries[e][1], variances[first + e] / s2);
            omega.set(entries[e][1], entries[e][0], variances[first + e] / s2);
        }
    }

    /** Writes S of a room; returns Σ log(1 + w n). */
    private double gather(int room, double w, double[] sums) {
        System.arraycopy(data.within, room * width * width, sums, 0, sums.length);
        double determinant = 0;
        for (int session = data.firstSession[room]; session < data.firstSession[room + 1]; session++) {
            double size = 1 + w * data.count[session];
            determinant += StrictMath.log(size);
            double weight = data.count[session] / size;
            int row = session * width;
            for (int i = 0; i < width; i++) {
                for (int j = 0; j < width; j++) {
                    sums[i * width + j] += weight * data.mean[row + i] * data.mean[row + j];
                }
            }
        }
        return determinant;
    }

    /** Adds a room's part of X'V⁻¹X; returns log|I + S[r,r] Ω|. */
    private double reduce(double[] sums, double[] result) {
        int p = fixed();
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                result[1 + i * p + j] += sums[i * width + j];
            }
        }
        if (depth == 0) {
            return 0;
        }
        double determinant = shrink(sums);
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                double sum = 0;
                for (int u = 0; u < depth; u++) {
                    sum += sums[i * width + random[u]] * ofRandom.get(u, j);
                }
                result[1 + i * p + j] -= sum;
            }
        }
        return StrictMath.log(determinant);
    }

    /** Writes Ω (I + S[r,r] Ω)⁻¹ S[r,x]; returns |I + S[r,r] Ω|. */
    private double shrink(double[] sums) {
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < depth; v++) {
                double sum = u == v ? 1 : 0;
                for (int k = 0; k < depth; k++) {
                    sum += sums[random[u] * width + random[k]] * omega.get(k, v);
                }
                inner.set(u, v, sum);
            }
        }
        double determinant = CommonOps_DDRM.det(inner);
        DMatrixRMaj inverse = new DMatrixRMaj(depth, depth);
        if (!(determinant > 0) || !CommonOps_DDRM.invert(inner, inverse)) {
            Arrays.fill(ofRandom.data, Double.NaN);
            return Double.NaN;
        }
        CommonOps_DDRM.mult(omega, inverse, solved);
        for (int u = 0; u < depth; u++) {
            for (int j = 0; j < fixed(); j++) {
                double sum = 0;
                for (int v = 0; v < depth; v++) {
                    sum += solved.get(u, v) * sums[random[v] * width + j];
                }
                ofRandom.set(u, j, sum);
            }
        }
        return determinant;
    }
}
