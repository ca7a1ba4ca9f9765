package org.tableweather.analyzers.standard.statistics.algebra;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PositiveDefiniteTest {

    /** The 3 x 3 Hilbert matrix: its inverse is whole, its determinant 1/2160 (closed form). */
    private static final double[][] HILBERT = {
        {1, 1.0 / 2, 1.0 / 3}, {1.0 / 2, 1.0 / 3, 1.0 / 4}, {1.0 / 3, 1.0 / 4, 1.0 / 5}
    };

    private static final double[][] INVERSE = {{9, -36, 30}, {-36, 192, -180}, {30, -180, 180}};

    @Test
    void invertsTheHilbertMatrix() {
        PositiveDefinite hilbert = PositiveDefinite.of(HILBERT, 1e-9).orElseThrow();
        double[][] inverse = hilbert.inverse();
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                assertThat(inverse[i][j]).isCloseTo(INVERSE[i][j], within(1e-10));
            }
        }
        assertThat(hilbert.logDeterminant()).isCloseTo(-Math.log(2160), within(1e-11));
        assertThat(hilbert.solve(new double[] {1, 0, 0})[2]).isCloseTo(30, within(1e-10));
    }

    @Test
    void whitensAndComesBack() {
        PositiveDefinite hilbert = PositiveDefinite.of(HILBERT, 1e-9).orElseThrow();
        double[][] unit = hilbert.whiten(HILBERT);
        double[][] back = hilbert.sandwich(new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}});
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                assertThat(unit[i][j]).isCloseTo(i == j ? 1 : 0, within(1e-12));
                assertThat(back[i][j]).isCloseTo(INVERSE[i][j], within(1e-10));
            }
        }
    }

    @Test
    void unlikeUnitsDoNotMatter() {
        double[][] scaled = {{1e12, 5e2}, {5e2, 1e-6}};
        assertThat(PositiveDefinite.of(scaled, 0.5)).isPresent();
    }

    @Test
    void aColumnWithoutItsOwnShareIsRefused() {
        assertThat(PositiveDefinite.of(new double[][] {{4, 6}, {6, 9}}, 1e-10)).isEmpty();
        assertThat(PositiveDefinite.of(new double[][] {{4, 0}, {0, 0}}, 1e-10)).isEmpty();
        assertThat(PositiveDefinite.of(new double[][] {{1, 2}, {2, 1}}, 1e-10)).isEmpty();
        assertThat(PositiveDefinite.of(new double[][] {{1, 0.9}, {0.9, 1}}, 0.2))
                .isEmpty();
    }
}
