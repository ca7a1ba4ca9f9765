package org.tableweather.schema.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MoistAirTest {

    @Nested
    class AgainstTheReferenceLibrary {
        @Test
        void givesTheLibrarysPrintedDigits() {
            for (GoldenTable.Row row : GoldenTable.rows("psychrometric_cases")) {
                MoistAir air = air(row);
                assertThat(printed(air.humidityRatioGPerKg(), 4))
                        .as("" + row)
                        .isEqualTo(row.text("library_mixing_g_kg"));
                assertThat(printed(air.enthalpyKJPerKg(), 3))
                        .as("" + row)
                        .isEqualTo(row.text("library_enthalpy_kj_kg"));
                if (row.number("library_dew_c") >= 0) {
                    assertThat(printed(air.dewPointC(), 3)).as("" + row).isEqualTo(row.text("library_dew_c"));
                }
            }
        }

        /** The library halves an interval until it is 0.001 K wide; done so here, the printed digit is the library's. */
        @Test
        void givesTheLibrarysWetBulbWhenHalvingAsFarAsTheLibraryDoes() {
            for (GoldenTable.Row row : GoldenTable.rows("psychrometric_cases")) {
                MoistAir air = air(row);
                double low = row.number("library_dew_c");
                double high = air.tempC();
                if (row.number("library_dew_c") >= 0) {
                    low = air.dewPointC();
                }
                double middle = (low + high) / 2;
                while (high - low > 0.001) {
                    boolean tooWet = wetter(air, middle);
                    high = tooWet ? middle : high;
                    low = tooWet ? low : middle;
                    middle = (low + high) / 2;
                }
                assertThat(air.wetBulbC()).as("" + row).isCloseTo(middle, within(0.001));
                if (row.number("library_dew_c") >= 0) {
                    assertThat(printed(middle, 3)).as("" + row).isEqualTo(row.text("library_wet_bulb_c"));
                }
            }
        }

        private boolean wetter(MoistAir air, double wetBulbC) {
            try {
                return MoistAir.ofWetBulb(air.tempC(), wetBulbC, air.pressurePa())
                                .rhPct()
                        > air.rhPct();
            } catch (IllegalArgumentException lessThanNoVapour) {
                return false;
            }
        }
    }

    @Test
    void givesEveryStateOfTheFirstSetToItsPrintedDigits() {
        for (GoldenTable.Row row : GoldenTable.rows("psychrometric_cases")) {
            MoistAir air = air(row);
            near(air.vapourPressurePa(), row, "vapour_pressure_pa");
            near(air.dewPointC(), row, "dew_point_c");
            near(air.absoluteHumidityGPerM3(), row, "abs_humidity_g_m3");
            near(air.humidityRatioGPerKg(), row, "mixing_ratio_g_kg");
            near(air.wetBulbC(), row, "wet_bulb_c");
            near(air.enthalpyKJPerKg(), row, "enthalpy_kj_kg");
        }
    }

    @Test
    void givesEveryStateOfTheSecondSet() {
        for (GoldenTable.Row row : GoldenTable.rows("moist_air_states")) {
            MoistAir air = MoistAir.of(row.number("temp_c"), row.number("rh_pct"));
            near(air.vapourPressurePa(), row, "vapour_pressure_pa");
            near(air.absoluteHumidityGPerM3(), row, "abs_humidity_g_m3");
            near(air.humidityRatioGPerKg(), row, "mixing_ratio_g_kg");
            near(air.enthalpyKJPerKg(), row, "enthalpy_kj_kg");
            // That set was halved to a width of 0.001 K.
            assertThat(air.wetBulbC()).isCloseTo(row.number("wet_bulb_c"), within(0.001));
            if (row.text("phase").equals("dew")) {
                near(air.dewPointC(), row, "saturation_temp_c");
            }
            // Known distances of the short formulas over water, 15 to 30 °C, 20 to 80 %: below 0.03 K (Magnus), 0.005 K
            // (Sonntag).
            assertThat(air.dewPointC()).isCloseTo(row.number("dew_over_water_ae96_c"), within(0.04));
            assertThat(air.dewPointC()).isCloseTo(row.number("dew_over_water_sonntag_c"), within(0.005));
            // Stull's fit is good to 0.65 K; the paper's own statement.
            assertThat(air.wetBulbC()).isCloseTo(row.number("stull_wet_bulb_c"), within(0.65));
        }
    }

    @Nested
    class AgainstTheHandbook {
        @ParameterizedTest
        @CsvSource({"5", "25", "50"})
        void saturatedAirHoldsWhatTheTablesSay(double tempC) {
            relative(MoistAir.of(tempC, 100).humidityRatio(), GoldenTable.fact("ashrae.ws." + (int) tempC));
        }

        /** The factor is most of the difference between ideal and real gas. */
        @ParameterizedTest
        @CsvSource({"5", "25", "50"})
        void theEnhancementFactorClosesTheGapToTheRealGas(double tempC) {
            double table = GoldenTable.fact("ashrae.ws." + (int) tempC).value();
            MoistAir ideal = MoistAir.of(tempC, 100);
            MoistAir enhanced = ideal.with(new VapourFormula(SaturationCurve.HYLAND_WEXLER, Enhancement.BUCK_1981));
            double gap = table - ideal.humidityRatio();
            assertThat(gap).isPositive();
            assertThat(enhanced.humidityRatio()).isCloseTo(table, within(0.4 * gap));
        }

        @Test
        void enthalpiesAreTheTables() {
            relative(MoistAir.of(25, 100).enthalpyKJPerKg(), GoldenTable.fact("ashrae.hs.25"));
            relative(MoistAir.of(25, 0).enthalpyKJPerKg(), GoldenTable.fact("ashrae.h.25"));
        }

        @Test
        void exampleOneComesOut() {
            MoistAir air = MoistAir.ofWetBulb(40, 20, 101_325);
            absolute(air.humidityRatio(), GoldenTable.fact("ashrae.example1.w"));
            absolute(air.rhPct(), GoldenTable.fact("ashrae.example1.rh"));
            absolute(air.enthalpyKJPerKg(), GoldenTable.fact("ashrae.example1.h"));
            absolute(air.dewPointC(), GoldenTable.fact("ashrae.example1.dew"));
        }

        @Test
        void wetBulbWorksUnderLowPressure() {
            relative(MoistAir.ofWetBulb(30, 25, 95_461).humidityRatio(), GoldenTable.fact("ashrae.wet30_25.w"));
        }

        @ParameterizedTest
        @CsvSource({"20", "22", "25", "30"})
        void saturatedWaterContentIsThePublishedTables(double tempC) {
            absolute(MoistAir.of(tempC, 100).absoluteHumidityGPerM3(), GoldenTable.fact("table.ah." + (int) tempC));
        }
    }

    @Nested
    class AtASurface {
        @ParameterizedTest
        @CsvSource({"warm.20to25, 20, 50, 25", "warm.22to27, 22, 50, 27", "surface15.22_50, 22, 50, 15"})
        void humidityIsThatOfTheSameVapour(String key, double tempC, double rhPct, double surfaceC) {
            absolute(MoistAir.of(tempC, rhPct).rhPctAt(surfaceC), GoldenTable.fact(key));
        }

        @Test
        void theColdRoomWarmedReadsDry() {
            MoistAir air = MoistAir.of(Fahrenheit.toCelsius(65), 65);
            absolute(air.rhPctAt(Fahrenheit.toCelsius(80)), GoldenTable.fact("warm.65Fto80F"));
        }

        @Test
        void reaches80PercentWhereTheFactsSay() {
            GoldenTable.Row fact = GoldenTable.fact("surface80.22_50");
            assertThat(MoistAir.of(22, 50).rhPctAt(fact.value())).isCloseTo(80, within(0.005));
        }

        /** 'cond.8080': a table at 65 °F is 4.6 K below the dew point of 80 °F, 80 %. */
        @Test
        void aColdTableSweatsInWarmDampAir() {
            MoistAir air = MoistAir.of(Fahrenheit.toCelsius(80), 80);
            double table = Fahrenheit.toCelsius(65);
            assertThat(air.dewPointC() - table).isCloseTo(4.596, within(0.001));
            assertThat(air.condensesOn(table)).isTrue();
            assertThat(air.condensesOn(air.dewPointC() + 0.001)).isFalse();
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> air.rhPctAt(table))
                    .withMessageContaining("below the dew point 22.9");
        }

        @Test
        void atTheDewPointTheSurfaceIsAt100Percent() {
            MoistAir air = MoistAir.of(24, 60);
            assertThat(air.rhPctAt(air.dewPointC())).isCloseTo(100, within(1e-9));
        }
    }

    @Nested
    class WithAnotherFormula {
        private final VapourFormula enhanced = new VapourFormula(SaturationCurve.HYLAND_WEXLER, Enhancement.BUCK_1981);

        @Test
        void everyStateSaysWhichFormulaItUses() {
            assertThat(MoistAir.of(20, 50).formula().label())
                    .isEqualTo("Hyland–Wexler 1983 over water, no enhancement factor");
            assertThat(MoistAir.of(20, 50).with(enhanced).formula().label())
                    .isEqualTo("Hyland–Wexler 1983 over water, enhancement factor of Buck 1981");
        }

        @Test
        void theFactorDropsOutOfDewPointAndBedHumidityOnly() {
            MoistAir plain = MoistAir.of(22, 50);
            MoistAir other = plain.with(enhanced);
            assertThat(other.dewPointC()).isCloseTo(plain.dewPointC(), within(1e-10));
            assertThat(other.rhPctAt(27)).isCloseTo(plain.rhPctAt(27), within(1e-10));
            double factor = Enhancement.BUCK_1981.factor(MoistAir.SEA_LEVEL_PA);
            assertThat(other.absoluteHumidityGPerM3() / plain.absoluteHumidityGPerM3())
                    .isCloseTo(factor, within(1e-12));
        }

        @Test
        void theFactorIsThePublishedOne() {
            double factor = Enhancement.BUCK_1981.factor(101_325);
            absolute(factor, GoldenTable.fact("buck81.factor.1013"));
            absolute(factor, GoldenTable.fact("cipm.factor.20"));
            absolute(factor, GoldenTable.fact("wmo8.factor.1013"));
            assertThat(Enhancement.NONE.factor(101_325)).isEqualTo(1);
        }
    }

    @Nested
    class OutsideItsRanges {
        @ParameterizedTest
        @CsvSource({
            "20, 140, 101325, rhPct 140 % is above 100 %",
            "20, -1, 101325, rhPct -1 % is below 0 %",
            "20, NaN, 101325, rhPct NaN % is no number",
            "75, 50, 101325, tempC 75 °C is above 60 °C",
            "-41.5, 50, 101325, tempC -41.5 °C is below -40 °C",
            "20, 50, 1013.25, pressurePa 1013.25 Pa is below 60000 Pa",
            "20, 50, 120000, pressurePa 120000 Pa is above 110000 Pa"
        })
        void thereIsAnErrorNamingValueAndBound(double tempC, double rhPct, double pressurePa, String message) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> MoistAir.of(tempC, rhPct, pressurePa))
                    .withMessageStartingWith(message);
        }

        @Test
        void dryAirHasNoDewPoint() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> MoistAir.of(20, 0).dewPointC())
                    .withMessageContaining("no dew point");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> MoistAir.of(20, 0.5).dewPointC())
                    .withMessageContaining("vapourPressurePa");
        }

        @Test
        void aWetBulbAboveTheDryBulbIsNone() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> MoistAir.ofWetBulb(20, 21, 101_325))
                    .withMessageContaining("wetBulbC 21");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> MoistAir.ofWetBulb(40, 5, 101_325))
                    .withMessageContaining("rhPct");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> MoistAir.of(-39.9, 1).wetBulbC())
                    .withMessageContaining("below -40.0 °C");
        }

        @Test
        void aSurfaceOutsideTheRangeIsNamedAsSuch() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> MoistAir.of(20, 50).rhPctAt(150))
                    .withMessageStartingWith("surfaceC 150 °C is above 60 °C");
        }
    }

    /** Air warmed without water gained keeps its dew point: physics, no table. */
    @Test
    void dewPointIsThatOfTheVapourAlone() {
        for (double t = 5; t <= 40; t += 2.5) {
            MoistAir air = MoistAir.of(t, 60);
            double warmer = t + 3;
            MoistAir warmed = MoistAir.of(warmer, air.rhPctAt(warmer), 90_000);
            assertThat(warmed.dewPointC()).isCloseTo(air.dewPointC(), within(1e-9));
        }
    }

    @Test
    void aSaturatedWetBulbIsTheAirItself() {
        MoistAir air = MoistAir.of(21, 100);
        assertThat(air.wetBulbC()).isCloseTo(21, within(1e-9));
        assertThat(MoistAir.ofWetBulb(21, 21, 101_325).rhPct()).isCloseTo(100, within(1e-9));
    }

    private static MoistAir air(GoldenTable.Row row) {
        return MoistAir.of(Fahrenheit.toCelsius(row.number("temp_f")), row.number("rh_pct"));
    }

    private static void near(double value, GoldenTable.Row row, String column) {
        assertThat(value).as(column + " " + row).isCloseTo(row.number(column), within(row.halfDigit(column)));
    }

    private static void relative(double value, GoldenTable.Row fact) {
        assertThat(value).as(fact.text("key")).isCloseTo(fact.value(), within(fact.tolerance() * fact.value()));
    }

    private static void absolute(double value, GoldenTable.Row fact) {
        assertThat(value).as(fact.text("key")).isCloseTo(fact.value(), within(fact.tolerance()));
    }

    private static String printed(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
