package org.tableweather.analyzers.standard.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton.Minimum;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton.Objective;

/** Functions whose minima are known in closed form. */
class SaddleFreeNewtonTest {

    /** (x² − 1)² + (y − 3)²: minima at (±1, 3), a saddle at (0, 3). */
    private static final Objective TWO_WELLS = (at, gradient) -> {
        double well = at[0] * at[0] - 1;
        gradient[0] = 4 * at[0] * well;
        gradient[1] = 2 * (at[1] - 3);
        return well * well + (at[1] - 3) * (at[1] - 3);
    };

    @Test
    void leavesASaddleWhereTheGradientIsZero() {
        Minimum found = SaddleFreeNewton.minimise(TWO_WELLS, new double[] {0, 3});

        assertThat(found.converged()).isTrue();
        assertThat(Math.abs(found.at()[0])).isEqualTo(1, within(1e-9));
        assertThat(found.at()[1]).isEqualTo(3, within(1e-9));
        assertThat(found.value()).isEqualTo(0, within(1e-15));
    }

    @Test
    void stepsBackFromWhereTheFunctionIsNotDefined() {
        Objective logarithm = (at, gradient) -> {
            gradient[0] = 1 - 1 / at[0];
            return at[0] > 0 ? at[0] - Math.log(at[0]) : Double.NaN;
        };

        Minimum found = SaddleFreeNewton.minimise(logarithm, new double[] {20});

        assertThat(found.converged()).isTrue();
        assertThat(found.at()[0]).isEqualTo(1, within(1e-8));
    }

    @Test
    void saysWhenItStartsWhereTheFunctionIsNotDefined() {
        Minimum found = SaddleFreeNewton.minimise((at, gradient) -> Double.NaN, new double[] {1});

        assertThat(found.converged()).isFalse();
    }

    @Test
    void saysWhenThereIsNoMinimum() {
        Minimum found = SaddleFreeNewton.minimise(
                (at, gradient) -> {
                    gradient[0] = -1;
                    return -at[0];
                },
                new double[] {0});

        assertThat(found.converged()).isFalse();
    }

    @Test
    void decomposesASymmetricMatrix() {
        // eigenvalues of [[2, 1], [1, 2]] are 1 and 3
        SymmetricEigen eigen = SymmetricEigen.of(new double[][] {{2, 1}, {1, 2}});

        assertThat(eigen.values()[0] + eigen.values()[1]).isEqualTo(4, within(1e-14));
        assertThat(eigen.values()[eigen.smallest()]).isEqualTo(1, within(1e-14));
        assertThat(eigen.largestMagnitude()).isEqualTo(3, within(1e-14));
        // g'H⁻¹g with H⁻¹ = [[2, −1], [−1, 2]]/3 and g = (1, 0)
        assertThat(eigen.inverseForm(new double[] {1, 0}, 1e-8)).isEqualTo(2.0 / 3, within(1e-14));
        // without the eigenvalue 1: (1/√2)²/3
        assertThat(eigen.inverseForm(new double[] {1, 0}, 0.5)).isEqualTo(1.0 / 6, within(1e-14));
    }
}
