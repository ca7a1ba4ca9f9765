package org.tableweather.analyzers.standard.statistics.robust;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.tableweather.analyzers.standard.numeric.SymmetricEigen;

/**
 * The middle of the sandwich, in coordinates in which X'X is the identity: {@code Σ g(Sⱼ) zⱼ zⱼ' g(Sⱼ)} with
 * {@code Sⱼ = L⁻¹Xⱼ'XⱼL⁻ᵀ}, {@code zⱼ = L⁻¹Xⱼ'eⱼ} and g the correction of a hat value.
 *
 * <p>Degrees of freedom of {@code d'(Σ ..)d} if rows were independent: with {@code pⱼ = AⱼZⱼd} the form is
 * {@code Σ (pⱼ'e)²}, {@code e = (I − H)y}, and its eigenvalues are those of the matrix with entries
 * {@code δⱼₖ pⱼ'pⱼ − pⱼ'ZⱼZₖ'pₖ}. Here {@code pⱼ'pⱼ = d'g²(Sⱼ)Sⱼd} and {@code Zⱼ'pⱼ = g(Sⱼ)Sⱼd}, so the sums of the
 * eigenvalues and of their squares need no matrix of that size.
 *
 * @source Bell2002
 */
final class Meat {

    private final double scale;
    private final List<double[][]> corrected = new ArrayList<>();
    private final List<double[][]> squared = new ArrayList<>();
    private final double[][] middle;
    private final List<String> decisive = new ArrayList<>();

    Meat(ClusterSums sums, Correction correction) {
        int size = sums.coefficients();
        scale = correction.scale(sums.clusters(), sums.rows(), size);
        middle = new double[size][size];
        for (int cluster = 0; cluster < sums.clusters(); cluster++) {
            SymmetricEigen eigen = SymmetricEigen.of(sums.whitenedGram(cluster));
            addCluster(eigen, sums.whitenedScore(cluster), correction);
            if (Correction.decidesAlone(Arrays.stream(eigen.values()).max().orElse(0))) {
                decisive.add(sums.label(cluster));
            }
        }
    }

    private void addCluster(SymmetricEigen eigen, double[] raw, Correction correction) {
        int size = raw.length;
        double[] score = new double[size];
        double[][] once = new double[size][size];
        double[][] twice = new double[size][size];
        for (int k = 0; k < size; k++) {
            double[] vector = eigen.vectors()[k];
            double hat = Math.min(1, Math.max(0, eigen.values()[k]));
            double factor = correction.factor(hat);
            double along = factor * dot(vector, raw);
            for (int i = 0; i < size; i++) {
                score[i] += along * vector[i];
            }
            add(once, factor * hat, vector);
            add(twice, factor * factor * hat, vector);
        }
        add(middle, 1, score);
        corrected.add(once);
        squared.add(twice);
    }

    List<String> decisive() {
        return List.copyOf(decisive);
    }

    double variance(double[] direction) {
        return covariance(direction, direction);
    }

    double covariance(double[] first, double[] second) {
        return scale * dot(first, times(middle, second));
    }

    /** {@code (Σλ)² / Σλ²}. */
    double satterthwaite(double[] direction) {
        int size = direction.length;
        double sum = 0;
        double ofSquares = 0;
        double[][] outer = new double[size][size];
        for (int cluster = 0; cluster < corrected.size(); cluster++) {
            double own = dot(direction, times(squared.get(cluster), direction));
            double[] shared = times(corrected.get(cluster), direction);
            sum += own - square(shared);
            ofSquares += own * own - 2 * own * square(shared);
            add(outer, 1, shared);
        }
        for (double[] row : outer) {
            ofSquares += square(row);
        }
        return sum * sum / ofSquares;
    }

    private static void add(double[][] matrix, double weight, double[] vector) {
        for (int i = 0; i < vector.length; i++) {
            for (int j = 0; j < vector.length; j++) {
                matrix[i][j] += weight * vector[i] * vector[j];
            }
        }
    }

    private static double[] times(double[][] matrix, double[] vector) {
        double[] product = new double[vector.length];
        for (int i = 0; i < product.length; i++) {
            product[i] = dot(matrix[i], vector);
        }
        return product;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** {@code a'a}. */
    static double square(double[] a) {
        return dot(a, a);
    }
}
