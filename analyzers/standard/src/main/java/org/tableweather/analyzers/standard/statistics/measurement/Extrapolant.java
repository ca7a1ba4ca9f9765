package org.tableweather.analyzers.standard.statistics.measurement;

import java.util.OptionalDouble;
import org.tableweather.analyzers.standard.statistics.algebra.PositiveDefinite;

/**
 * How a slope is followed from more error back to none.
 *
 * @source Cook1994
 */
public enum Extrapolant {
    /** {@code a + bζ}: takes out too little. */
    LINEAR {
        @Override
        OptionalDouble atNoError(double[] factors, double[] values) {
            return OptionalDouble.of(polynomial(factors, values, 1));
        }
    },
    /** {@code a + bζ + cζ²}: steady, takes out a little too little when errors are large. */
    QUADRATIC {
        @Override
        OptionalDouble atNoError(double[] factors, double[] values) {
            return OptionalDouble.of(polynomial(factors, values, 2));
        }
    },
    /** {@code a + b/(c + ζ)}: exact for a straight line in many sessions, less steady. */
    RATIONAL {
        @Override
        OptionalDouble atNoError(double[] factors, double[] values) {
            return RationalCurve.atNoError(factors, values);
        }
    };

    /**
     * The curve at ζ = −1.
     *
     * @param factors ζ, 0 first
     * @param values one per factor
     * @return empty when the curve cannot be followed there
     */
    abstract OptionalDouble atNoError(double[] factors, double[] values);

    private static double polynomial(double[] factors, double[] values, int degree) {
        double[][] gram = new double[degree + 1][degree + 1];
        double[] moments = new double[degree + 1];
        for (int i = 0; i < factors.length; i++) {
            for (int j = 0; j <= degree; j++) {
                moments[j] += StrictMath.pow(factors[i], j) * values[i];
                for (int k = 0; k <= degree; k++) {
                    gram[j][k] += StrictMath.pow(factors[i], j + k);
                }
            }
        }
        double[] coefficients =
                PositiveDefinite.of(gram, Double.MIN_NORMAL).orElseThrow().solve(moments);
        double value = 0;
        for (int j = 0; j <= degree; j++) {
            value += coefficients[j] * (j % 2 == 0 ? 1 : -1);
        }
        return value;
    }
}
