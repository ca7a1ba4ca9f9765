package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Certified values of the NIST StRD through the accumulation that sessions use: rows by Welford in blocks of five, blocks
 * merged as a tree, cross-products solved by Cholesky. Digits are −log₁₀ of the relative error, of the worst coefficient.
 *
 * <p>What double precision allows: cross-products square the condition number. Longley's columns have 4e4, so 1e-16 times
 * 2e9 would leave 7 digits, were its columns not centred and scaled, which leaves 11 to 12. Wampler's powers of x = 0 … 20
 * have 2e3 and leave 6 to 7 digits even so; as Chebyshev polynomials over the agreed interval [0, 20] they have 2, and
 * what is lost is lost in turning y values up to 4e6 back into coefficients of 1: 9 to 10 digits. Norris and Pontius lose
 * digits of the residual, not of the coefficients: the response's sum of squares is 1e5 and 1e6 times the residual's.
 */
class NistLinearRegressionTest {

    private enum Certified {
        LONGLEY(11, 11),
        NORRIS(12, 10),
        PONTIUS(11, 9),
        WAMPLER1(9, Double.NaN),
        WAMPLER2(12, Double.NaN),
        WAMPLER3(9, 12),
        WAMPLER4(9, 12),
        NOINT1(13, 12),
        NOINT2(13, 12);

        final double coefficientDigits;
        /** Of standard errors and residual deviation; NaN where the certified value is 0. */
        final double errorDigits;

        Certified(double coefficientDigits, double errorDigits) {
            this.coefficientDigits = coefficientDigits;
            this.errorDigits = errorDigits;
        }

        String file() {
            return "nist/nist_" + name().toLowerCase(Locale.ROOT);
        }
    }

    @ParameterizedTest
    @EnumSource(Certified.class)
    void reachesTheCertifiedDigits(Certified set) {
        JsonNode certified = Golden.json(set.file() + ".json").get("values");
        Moments moments = moments(set);
        LinearRegression fit = fitted(set, moments);

        int i = 0;
        for (JsonNode coefficient : certified.get("coef")) {
            assertThat(digits(fit.coefficients()[i], coefficient.get("certified_estimate")))
                    .as("digits of coefficient %s", i)
                    .isGreaterThan(set.coefficientDigits);
            assertErrorDigits(set, fit.standardError(i), coefficient.get("certified_se"));
            i++;
        }
        assertThat(fit.coefficients()).hasSize(i);
        assertErrorDigits(
                set, fit.residualDeviation(), certified.get("certified").get("resid_sd"));
        if (Double.isNaN(set.errorDigits)) {
            // certified as 0: nothing but rounding may be left
            int response = moments.columns() - 1;
            assertThat(fit.residualSumOfSquares()).isLessThan(1e-13 * moments.cross(response, response));
        }
    }

    private static void assertErrorDigits(Certified set, double actual, JsonNode certified) {
        if (!Double.isNaN(set.errorDigits)) {
            assertThat(digits(actual, certified)).as("digits of %s", actual).isGreaterThan(set.errorDigits);
        }
    }

    private static double digits(double actual, JsonNode certified) {
        return -Math.log10(Golden.relative(actual, certified.asDouble()));
    }

    private static LinearRegression fitted(Certified set, Moments moments) {
        return switch (set) {
            case NOINT1, NOINT2 -> LinearRegression.throughOrigin(moments);
            case LONGLEY, NORRIS, PONTIUS -> LinearRegression.withIntercept(moments);
            case WAMPLER1, WAMPLER2, WAMPLER3, WAMPLER4 -> inPowers(LinearRegression.withIntercept(moments));
        };
    }

    private static Moments moments(Certified set) {
        return switch (set) {
            case LONGLEY ->
                accumulated(
                        set,
                        row -> row.values().stream()
                                .skip(1)
                                .mapToDouble(Double::parseDouble)
                                .toArray());
            case NORRIS, NOINT1, NOINT2 -> accumulated(set, row -> new double[] {Golden.number(row, "x")});
            case PONTIUS ->
                accumulated(set, row -> {
                    double x = Golden.number(row, "x");
                    return new double[] {x, x * x};
                });
            case WAMPLER1, WAMPLER2, WAMPLER3, WAMPLER4 ->
                accumulated(set, row -> chebyshev((Golden.number(row, "x") - 10) / 10));
        };
    }

    private static Moments accumulated(Certified set, Function<Map<String, String>, double[]> columns) {
        List<Moments> blocks = new ArrayList<>();
        List<Map<String, String>> rows = Golden.rows(set.file() + ".csv");
        for (int from = 0; from < rows.size(); from += 5) {
            int covariates = columns.apply(rows.get(0)).length;
            MomentsBuilder block = new MomentsBuilder(covariates + 1);
            for (Map<String, String> row : rows.subList(from, Math.min(from + 5, rows.size()))) {
                double[] numbers = Arrays.copyOf(columns.apply(row), covariates + 1);
                numbers[covariates] = Golden.number(row, "y");
                block.add(numbers);
            }
            blocks.add(block.build());
        }
        return Moments.merged(blocks);
    }

    private static double[] chebyshev(double z) {
        double[] values = {z, 0, 0, 0, 0};
        double before = 1;
        for (int k = 1; k < 5; k++) {
            values[k] = 2 * z * values[k - 1] - before;
            before = values[k - 1];
        }
        return values;
    }

    /** The same polynomial in powers of x: T₀ = 1, T₁ = z, Tₖ₊₁ = 2 z Tₖ − Tₖ₋₁, z = (x − 10)/10. */
    private static LinearRegression inPowers(LinearRegression fit) {
        double[][] polynomials = new double[6][6];
        polynomials[0][0] = 1;
        polynomials[1] = new double[] {-1, 0.1, 0, 0, 0, 0};
        for (int k = 1; k < 5; k++) {
            for (int power = 0; power < 6; power++) {
                double shifted = power > 0 ? polynomials[k][power - 1] / 10 : 0;
                polynomials[k + 1][power] = 2 * (shifted - polynomials[k][power]) - polynomials[k - 1][power];
            }
        }
        double[] coefficients = new double[6];
        double[][] covariance = new double[6][6];
        for (int i = 0; i < 6; i++) {
            for (int k = 0; k < 6; k++) {
                coefficients[i] += polynomials[k][i] * fit.coefficients()[k];
                for (int l = 0; l < 6; l++) {
                    covariance[i][i] += polynomials[k][i] * fit.covariance()[k][l] * polynomials[l][i];
                }
            }
        }
        return new LinearRegression(coefficients, covariance, fit.residualDf(), fit.residualSumOfSquares());
    }
}
