package org.tableweather.analyzers.standard.statistics.binomial;

import java.util.List;

/** One room's cells as arrays, the column of ones first. */
final class ClusterCells {

    final String label;
    final double[][] x;
    final double[] made;
    final double[] attempts;

    ClusterCells(String label, List<BinomialCell> cells, Scaling scaling) {
        this.label = label;
        int rows = cells.size();
        x = new double[rows][];
        made = new double[rows];
        attempts = new double[rows];
        for (int i = 0; i < rows; i++) {
            x[i] = scaling.row(cells.get(i).columns());
            made[i] = cells.get(i).made();
            attempts[i] = cells.get(i).attempts();
        }
    }

    int rows() {
        return made.length;
    }

    /** {@code xᵢ'β}. */
    double linear(int row, double[] beta) {
        double sum = 0;
        for (int k = 0; k < x[row].length; k++) {
            sum += x[row][k] * beta[k];
        }
        return sum;
    }

    /** 1 / (1 + exp(−η)), without overflow. */
    static double logistic(double eta) {
        if (eta >= 0) {
            return 1 / (1 + StrictMath.exp(-eta));
        }
        double odds = StrictMath.exp(eta);
        return odds / (1 + odds);
    }

    /** log(1 + exp(η)), without overflow. */
    static double softplus(double eta) {
        return eta > 0 ? eta + StrictMath.log1p(StrictMath.exp(-eta)) : StrictMath.log1p(StrictMath.exp(eta));
    }
}
