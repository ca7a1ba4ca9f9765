package org.tableweather.schema.geometry;

/** Dense matrices of a few rows. */
final class Matrices {

    private Matrices() {}

    /** The inverse of a 2 × 2 matrix. */
    static double[][] inverse(double[][] m) {
        double determinant = m[0][0] * m[1][1] - m[0][1] * m[1][0];
        return new double[][] {
            {m[1][1] / determinant, -m[0][1] / determinant}, {-m[1][0] / determinant, m[0][0] / determinant}
        };
    }

    static double[][] product(double[][] a, double[][] b) {
        double[][] c = new double[a.length][b[0].length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b[0].length; j++) {
                for (int k = 0; k < b.length; k++) {
                    c[i][j] += a[i][k] * b[k][j];
                }
            }
        }
        return c;
    }

    static double[][] transposed(double[][] a) {
        double[][] t = new double[a[0].length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a[0].length; j++) {
                t[j][i] = a[i][j];
            }
        }
        return t;
    }

    static double[][] times(double[][] a, double factor) {
        double[][] t = new double[a.length][];
        for (int i = 0; i < a.length; i++) {
            t[i] = a[i].clone();
            for (int j = 0; j < t[i].length; j++) {
                t[i][j] *= factor;
            }
        }
        return t;
    }
}
