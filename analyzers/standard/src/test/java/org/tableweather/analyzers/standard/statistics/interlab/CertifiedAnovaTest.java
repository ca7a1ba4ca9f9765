package org.tableweather.analyzers.standard.statistics.interlab;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

/**
 * NIST certified analyses of variance. Digits are {@code −log₁₀ |x − certified| / |certified|}, at most 15, of the worst
 * of SSB, SSW, MSB, MSW, F, R² and residual deviation.
 */
class CertifiedAnovaTest {

    private static double digits(double actual, double certified) {
        double error = Math.abs(actual - certified) / Math.abs(certified);
        return error == 0 ? 15 : Math.min(15, -Math.log10(error));
    }

    private static double worstDigits(OneWayAnova anova, GoldenFile golden, String prefix) {
        double worst = 15;
        worst = Math.min(worst, digits(anova.between(), golden.number(prefix + "SSB")));
        worst = Math.min(worst, digits(anova.within(), golden.number(prefix + "SSW")));
        worst = Math.min(worst, digits(anova.betweenMeanSquare(), golden.number(prefix + "MSB")));
        worst = Math.min(worst, digits(anova.withinMeanSquare(), golden.number(prefix + "MSW")));
        worst = Math.min(worst, digits(anova.f(), golden.number(prefix + "F")));
        worst = Math.min(worst, digits(anova.rSquared(), golden.number(prefix + "R2")));
        return Math.min(worst, digits(anova.residualSd(), golden.number(prefix + "residual_sd")));
    }

    private static OneWayAnova analyse(GoldenFile golden, ToDoubleFunction<String> parse) {
        List<Laboratory> groups = new ArrayList<>();
        for (String group : golden.words("groups")) {
            List<String> texts = List.of(golden.words("group." + group));
            groups.add(Laboratory.of(group, texts.stream().mapToDouble(parse).toArray()));
        }
        return OneWayAnova.of(groups).orThrow();
    }

    /** AtmWtAg has seven constant leading digits: doubles alone keep 10 digits, an origin taken in decimal keeps 14. */
    @ParameterizedTest
    @CsvSource({"sirstv, 0, 12.5", "sirstv, 196, 14", "atmwtag, 0, 10.5", "atmwtag, 107.868, 14"})
    void meetsTheCertifiedValues(String data, String origin, double least) {
        GoldenFile golden = GoldenFile.read("interlab/nist-" + data + ".properties");
        OneWayAnova anova = analyse(golden, new DecimalOrigin(new BigDecimal(origin))::departure);
        assertThat(worstDigits(anova, golden, "")).isGreaterThanOrEqualTo(least);
        GoldenFile.assertNear(Math.sqrt(anova.rawBetweenVariance()), golden.number("s_L"), Math.pow(10, 1 - least));
    }

    /**
     * SmLs04–06 have 7 constant leading digits, SmLs07–08 have 13: as doubles the data themselves hold only 9 and 3 digits
     * of F, with the base taken in decimal all 14.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 0, 14",
        "2, 0, 14",
        "3, 0, 13.5",
        "4, 0, 9.2",
        "5, 0, 9.2",
        "6, 0, 9.2",
        "4, 1000000, 14",
        "5, 1000000, 14",
        "6, 1000000, 13.5",
        "7, 0, 3.2",
        "8, 0, 3.2",
        "7, 1000000000000, 14",
        "8, 1000000000000, 14"
    })
    void meetsTheCertifiedValuesOfSimonAndLesage(int set, String origin, double least) {
        GoldenFile golden = GoldenFile.read("interlab/nist-smls.properties");
        String prefix = "smls0" + set + ".";
        DecimalOrigin taken = new DecimalOrigin(new BigDecimal(origin));
        List<Laboratory> groups = new ArrayList<>();
        for (int treatment = 1; treatment <= 9; treatment++) {
            double[] results = new double[(int) golden.number(prefix + "replicates")];
            for (int i = 0; i < results.length; i++) {
                results[i] = taken.departure(golden.text(prefix + "base") + "." + tenths(treatment, i));
            }
            groups.add(Laboratory.of(Integer.toString(treatment), results));
        }
        OneWayAnova anova = OneWayAnova.of(groups).orThrow();
        assertThat(worstDigits(anova, golden, prefix)).isGreaterThanOrEqualTo(least);
    }

    private static int tenths(int treatment, int i) {
        int first = treatment == 1 ? 4 : treatment % 2 == 0 ? 3 : 5;
        int turn = i % 2 == 1 ? -1 : 1;
        return i == 0 ? first : first + turn;
    }
}
