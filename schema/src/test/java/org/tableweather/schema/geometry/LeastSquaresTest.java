package org.tableweather.schema.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;

class LeastSquaresTest {

    private final Golden longley = Golden.read("longley");

    @Test
    void meetsTheCertifiedLongleyEstimates() {
        double[][] rows = longley.rows("rows");
        double[][] matrix = new double[rows.length][];
        double[] right = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            right[i] = rows[i][0];
            matrix[i] = rows[i].clone();
            matrix[i][0] = 1;
        }
        LeastSquares solved = new LeastSquares(matrix, right, 0);
        double[] estimates = solved.solution();
        double[] certified = longley.row("estimates");
        for (int k = 0; k < certified.length; k++) {
            assertThat(estimates[k]).isCloseTo(certified[k], withinPercentage(100 * longley.tolerance()));
        }
        assertStandardErrors(solved, matrix, right, estimates);
    }

    private void assertStandardErrors(LeastSquares solved, double[][] matrix, double[] right, double[] estimates) {
        double squares = 0;
        for (int i = 0; i < right.length; i++) {
            double residual = right[i];
            for (int k = 0; k < estimates.length; k++) {
                residual -= matrix[i][k] * estimates[k];
            }
            squares += residual * residual;
        }
        double variance = squares / (right.length - estimates.length);
        double[] certified = longley.row("standardErrors");
        double[][] inverse = solved.inverseOfNormal();
        for (int k = 0; k < certified.length; k++) {
            assertThat(Math.sqrt(variance * inverse[k][k]))
                    .isCloseTo(certified[k], withinPercentage(100 * longley.tolerance()));
        }
    }

    @Test
    void saysWhenColumnsDependOnEachOther() {
        // Third column = first + second: rank 2 by construction.
        double[][] matrix = {{1, 0, 1}, {0, 1, 1}, {1, 1, 2}, {2, 1, 3}};
        assertThat(new LeastSquares(matrix, new double[4], 1e-10).hasFullRank()).isFalse();
    }
}
