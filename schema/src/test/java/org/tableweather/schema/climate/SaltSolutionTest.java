package org.tableweather.schema.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SaltSolutionTest {

    @Test
    void givesGreenspansTable() {
        Set<SaltSolution> seen = new HashSet<>();
        for (GoldenTable.Row row : GoldenTable.rows("greenspan_salts")) {
            SaltSolution salt = SaltSolution.ofFormula(row.text("salt")).orElseThrow();
            double t = row.number("temp_c");
            // The table cuts the polynomial off after two digits.
            assertThat(salt.rhPct(t)).as("" + row).isCloseTo(row.number("rh_pct"), within(0.0101));
            assertThat(salt.halfWidthPct(t)).as("" + row).isCloseTo(row.number("half_width_pct"), within(1e-12));
            seen.add(salt);
        }
        assertThat(seen).containsExactlyInAnyOrder(SaltSolution.values());
    }

    /** The second fit is stated to be good to about ±2 %; it stays nearer than that. */
    @Test
    void agreesWithTheSecondIndependentFit() {
        for (GoldenTable.Row row : GoldenTable.rows("greenspan_salts")) {
            if (row.has("crc_pct")) {
                double ours =
                        SaltSolution.ofFormula(row.text("salt")).orElseThrow().rhPct(row.number("temp_c"));
                assertThat(ours).as("" + row).isCloseTo(row.number("crc_pct"), within(2.0));
            }
        }
    }

    /** 'salt.sign': the wrong signs in public copies give 10.892 and 43.095 at 25 °C. */
    @Test
    void carriesTheRightSigns() {
        assertThat(SaltSolution.LITHIUM_CHLORIDE.rhPct(25))
                .isCloseTo(11.304, within(0.0005))
                .isNotCloseTo(10.892, within(0.1));
        assertThat(SaltSolution.POTASSIUM_CARBONATE.rhPct(25)).isCloseTo(43.168, within(0.0005));
    }

    @Test
    void uncertaintyRunsStraightBetweenTheTablesTemperatures() {
        double half = (0.14 + 0.12) / 2;
        assertThat(SaltSolution.SODIUM_CHLORIDE.halfWidthPct(22.5)).isCloseTo(half, within(1e-12));
        // GUM 4.3.7: a/√3 for a rectangle of half-width a.
        assertThat(SaltSolution.SODIUM_CHLORIDE.standardUncertaintyPct(22.5)).isCloseTo(half * 0.57735, within(1e-6));
    }

    @Test
    void saysWhichValuesAreFromMemory() {
        assertThat(SaltSolution.SODIUM_BROMIDE.isFromMemory()).isTrue();
        assertThat(SaltSolution.MAGNESIUM_NITRATE.isFromMemory()).isTrue();
        assertThat(SaltSolution.SODIUM_CHLORIDE.isFromMemory()).isFalse();
    }

    @Test
    void isFoundByItsFormulaInAnyCase() {
        assertThat(SaltSolution.ofFormula(" nacl ")).contains(SaltSolution.SODIUM_CHLORIDE);
        assertThat(SaltSolution.ofFormula("MG(NO3)2")).contains(SaltSolution.MAGNESIUM_NITRATE);
        assertThat(SaltSolution.ofFormula("sugar")).isEmpty();
        assertThat(SaltSolution.SODIUM_CHLORIDE.chemical()).isEqualTo("NaCl");
    }

    @Test
    void givesAnErrorOutsideTheTable() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SaltSolution.SODIUM_CHLORIDE.rhPct(35))
                .withMessageContaining("saltTempC 35 °C is above 30 °C");
        assertThatIllegalArgumentException().isThrownBy(() -> SaltSolution.SODIUM_CHLORIDE.halfWidthPct(14));
    }
}
