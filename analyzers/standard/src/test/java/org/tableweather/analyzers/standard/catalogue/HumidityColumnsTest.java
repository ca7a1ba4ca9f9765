package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.tableweather.analyzers.standard.statistics.CubicSpline;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;

/**
 * Columns derived from a session's moments against the same columns formed trial by trial with the formulas of moist air and
 * cloth, which are checked against handbooks elsewhere.
 */
class HumidityColumnsTest {

    private static final SessionTraits TRAITS = TraitLeague.traits(80, 25, 2, "h");

    @ParameterizedTest
    @EnumSource(HumidityMeasure.class)
    void agreesWithColumnsFormedTrialByTrial(HumidityMeasure measure) {
        HumidityColumns columns = new HumidityColumns(measure, false, List.of());
        MomentsBuilder base = new MomentsBuilder(4);
        MomentsBuilder exact = new MomentsBuilder(4);
        drawn(0.5, (h, t, y) -> {
            double x = measure.x(50 + 10 * h, 21 + 5 * t, TRAITS);
            base.add(h, h * h, t, y);
            exact.add(x, x * x, t, y);
        });

        // a session that is held within ±1 %RH: common practice, no source, for what is near enough
        assertNear(columns.of(base.build(), TRAITS).orElseThrow(), exact.build(), 1e-3, 0.01);
    }

    @Test
    void staysNearThroughADriftOfTenPercent() {
        HumidityColumns columns = new HumidityColumns(HumidityMeasure.DEW_POINT, false, List.of());
        MomentsBuilder base = new MomentsBuilder(4);
        MomentsBuilder exact = new MomentsBuilder(4);
        drawn(4, (h, t, y) -> {
            double x = HumidityMeasure.DEW_POINT.x(50 + 10 * h, 21 + 5 * t, TRAITS);
            base.add(h, h * h, t, y);
            exact.add(x, x * x, t, y);
        });

        assertNear(columns.of(base.build(), TRAITS).orElseThrow(), exact.build(), 0.03, 0.3);
    }

    @Test
    void formsTheWigglesOfACurve() {
        HumidityColumns columns = new HumidityColumns(HumidityMeasure.RELATIVE, true, List.of());
        CubicSpline spline = new CubicSpline(-3, -2, -1, 0, 1, 2, 3);
        MomentsBuilder base = new MomentsBuilder(4);
        MomentsBuilder exact = new MomentsBuilder(3 + spline.columns());
        drawn(0.5, (h, t, y) -> {
            base.add(h, h * h, t, y);
            double[] row = new double[3 + spline.columns()];
            row[0] = h;
            row[1] = t;
            System.arraycopy(spline.at(h), 0, row, 2, spline.columns());
            row[row.length - 1] = y;
            exact.add(row);
        });

        // wiggles may stand still here, so against their size about zero, which is what a fit sees beside its means
        Moments derived = columns.of(base.build(), TRAITS).orElseThrow();
        Moments formed = exact.build();
        for (int i = 0; i < formed.columns(); i++) {
            assertThat(derived.mean(i)).isEqualTo(formed.mean(i), within(1e-4));
            for (int j = 0; j <= i; j++) {
                double scale = Math.sqrt(about(formed, i, i) * about(formed, j, j));
                assertThat(about(derived, i, j)).isEqualTo(about(formed, i, j), within(1e-3 * scale));
            }
        }
    }

    @Test
    void takesTheAgeOfTheClothFromTheSession() {
        HumidityColumns columns = new HumidityColumns(HumidityMeasure.RELATIVE, false, List.of(Covariate.CLOTH_AGE));
        Moments base = new Moments(2, new double[] {1, 1, 0, 30}, new double[10]);

        Moments derived = columns.of(base, TraitLeague.aged(2 * 365.25, 2540)).orElseThrow();

        // two years old: one year from the origin
        assertThat(derived.mean()).containsExactly(1, 1, 0, 1, 30);
        assertThat(columns.areKnown(SessionTraits.UNKNOWN)).isFalse();
    }

    @Test
    void knowsNoValueWhereTheFormulasEnd() {
        assertThat(HumidityMeasure.CLOTH_REGAIN.value(95, 21, TRAITS)).isNaN();
        assertThat(HumidityMeasure.CLOTH_REGAIN.value(50, 21, SessionTraits.UNKNOWN))
                .isNaN();
        assertThat(HumidityMeasure.AT_BED.value(50, 21, SessionTraits.UNKNOWN)).isNaN();
        // a bed at 5 °C is below the dew point of a room at 21 °C and 60 %, some 13 °C
        assertThat(HumidityMeasure.AT_BED.value(60, 21, TraitLeague.traits(80, 5, 2, "h")))
                .isNaN();
        assertThat(HumidityMeasure.DEW_POINT.value(0, 21, TRAITS)).isNaN();
        assertThat(HumidityMeasure.DEW_POINT.value(2, 5, TRAITS)).isNaN();
    }

    @Test
    void findsTheHumidityOfAValueBack() {
        for (HumidityMeasure measure : HumidityMeasure.values()) {
            for (double rhPct : new double[] {20, 50, 80}) {
                assertThat(measure.rhPct(measure.atStandard(rhPct, TRAITS), TRAITS))
                        .as(measure.parameter)
                        .isEqualTo(rhPct, within(1e-9));
            }
        }
    }

    private static double about(Moments moments, int i, int j) {
        return moments.cross(i, j) + moments.n() * moments.mean(i) * moments.mean(j);
    }

    private interface Row {
        void at(double h, double t, double y);
    }

    private static void drawn(double spreadPct, Row row) {
        Random random = new Random(5);
        for (int i = 0; i < 400; i++) {
            double h = -0.8 + spreadPct / 10 * random.nextGaussian();
            double t = 0.2 + 0.02 * random.nextGaussian();
            row.at(h, t, 30 - 0.8 * h + 0.3 * random.nextGaussian());
        }
    }

    /** Means to a share of the deviations, cross-products to a share of theirs. */
    private static void assertNear(Moments actual, Moments exact, double ofMean, double ofCross) {
        for (int i = 0; i < exact.columns(); i++) {
            double deviation = Math.sqrt(exact.cross(i, i) / exact.n());
            assertThat(actual.mean(i)).isEqualTo(exact.mean(i), within(ofMean * deviation));
            for (int j = 0; j <= i; j++) {
                double scale = Math.sqrt(exact.cross(i, i) * exact.cross(j, j));
                assertThat(actual.cross(i, j)).isEqualTo(exact.cross(i, j), within(ofCross * scale));
            }
        }
    }
}
