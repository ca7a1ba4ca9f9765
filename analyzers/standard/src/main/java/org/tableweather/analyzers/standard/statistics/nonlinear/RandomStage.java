package org.tableweather.analyzers.standard.statistics.nonlinear;

/**
 * Random effects of one level integrated out of cross-products: {@code K = L (I + L T[z,z] L)⁻¹ L},
 * {@code T − T[:,z] K T[z,:]}, L diagonal.
 */
final class RandomStage {

    private final int[] columns;
    /** Before. */
    final double[][] before;
    /** K. */
    final double[][] gain;
    /** After. */
    final double[][] after;
    /** {@code log |I + L T[z,z] L|}. */
    final double logDeterminant;

    RandomStage(double[][] before, int[] columns, double[] deviations) {
        this.columns = columns;
        this.before = before;
        int b = columns.length;
        gain = new double[b][b];
        for (int i = 0; i < b; i++) {
            for (int j = 0; j < b; j++) {
                gain[i][j] = (i == j ? 1 : 0) + deviations[i] * before[columns[i]][columns[j]] * deviations[j];
            }
        }
        logDeterminant = SmallInverse.of(gain);
        for (int i = 0; i < b; i++) {
            for (int j = 0; j < b; j++) {
                gain[i][j] *= deviations[i] * deviations[j];
            }
        }
        after = after();
    }

    private double[][] after() {
        int m = before.length;
        double[][] result = new double[m][];
        double[][] half = new double[m][columns.length];
        for (int i = 0; i < m; i++) {
            result[i] = before[i].clone();
            for (int k = 0; k < columns.length; k++) {
                for (int l = 0; l < columns.length; l++) {
                    half[i][k] += before[i][columns[l]] * gain[l][k];
                }
            }
        }
        for (int i = 0; i < m; i++) {
            for (int j = 0; j < m; j++) {
                for (int k = 0; k < columns.length; k++) {
                    result[i][j] -= half[i][k] * before[columns[k]][j];
                }
            }
        }
        return result;
    }

    /** {@code Z'V⁻¹A} of a level inside this one: its own rows, less what this level takes. */
    double[] through(double[] row) {
        double[] result = row.clone();
        for (int l = 0; l < columns.length; l++) {
            double share = share(row, l);
            for (int j = 0; j < result.length; j++) {
                result[j] -= share * before[columns[l]][j];
            }
        }
        return result;
    }

    /** {@code Z'V⁻¹Z} likewise, for one inner column. */
    double through(double[] row, int column) {
        double result = row[column];
        for (int l = 0; l < columns.length; l++) {
            result -= share(row, l) * row[columns[l]];
        }
        return result;
    }

    private double share(double[] row, int l) {
        double share = 0;
        for (int k = 0; k < columns.length; k++) {
            share += row[columns[k]] * gain[k][l];
        }
        return share;
    }
}
