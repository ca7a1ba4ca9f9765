package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;

/** Against lmerTest's tests of several coefficients at once, in golden/*_lmm.json. */
class JointTestTest {

    @Test
    void agreesWithRForTheInteractionOfASplitPlot() {
        NestedFit fit = GoldenCase.OATS_FACTORS.fit(Method.REML);
        double[][] rows = new double[6][12];
        for (int i = 0; i < 6; i++) {
            rows[i][6 + i] = 1;
        }

        assertAgrees(JointTest.of(fit, rows).orElseThrow(), "oats_lmm.json", "nitro_factor_REML", 2);
    }

    @Test
    void agreesWithRForAFactorOfThree() {
        NestedFit fit = GoldenCase.MACHINES.fit(Method.REML);

        assertAgrees(
                JointTest.of(fit, new double[][] {{0, 1, 0}, {0, 0, 1}}).orElseThrow(),
                "machines_lmm.json",
                "nested_REML",
                0);
    }

    @Test
    void refusesContrastsThatDetermineEachOther() {
        NestedFit fit = GoldenCase.MACHINES.fit(Method.REML);

        assertThat(JointTest.of(fit, new double[][] {{0, 1, 0}, {0, 2, 0}})).isEmpty();
    }

    private static void assertAgrees(JointTest test, String file, String key, int row) {
        JsonNode table = Golden.json(file).get("values").get(key).get("anova_satterthwaite_typeIII");
        JsonNode expected = table.get(row);
        assertThat(test.statistic()).isEqualTo(expected.get("F").asDouble(), within(1e-6 * test.statistic()));
        assertThat(test.numerator()).isEqualTo(expected.get("NumDF").asInt());
        assertThat(test.denominator()).isEqualTo(expected.get("DenDF").asDouble(), within(1e-6 * test.denominator()));
        assertThat(test.pValue()).isEqualTo(expected.get("p").asDouble(), within(1e-7));
    }
}
