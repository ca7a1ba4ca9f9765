package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.standard.catalogue.InventedLeague.Held;
import org.tableweather.schema.climate.MoistAir;

/** What the parameters choose; the truth that trials are drawn from is the expected value. */
class HumidityChoicesTest {

    private static final List<Held> LEAGUE = InventedLeague.drawn(20, 6, 15, 8);

    @Test
    void findsASlopeOverAbsoluteHumidity() {
        Random random = new Random(3);
        List<Held> league = TraitLeague.angled(
                LEAGUE,
                trial -> 32
                        - 0.5
                                * MoistAir.of(
                                                trial.climate().tempC(),
                                                trial.climate().rhPct())
                                        .absoluteHumidityGPerM3()
                        + random.nextGaussian());

        Estimated answer = TraitLeague.estimated(league, Map.of("humidity_measure", "absolute-humidity"));

        // half a degree per g/m³ is one per 2 g/m³
        assertWithin(answer, "humidity", -1);
        assertWithin(answer, "humidity.squared", 0);
        assertThat(TraitLeague.estimate(answer, "humidity").unit()).isEqualTo("deg per 2 g/m³");
        assertThat(answer.sentence()).contains("% relative humidity at 21 °C (").contains(" g/m³ absolute humidity)");
        Plot plot = answer.plots().get(0);
        assertThat(plot.xLabel()).isEqualTo("absolute humidity, g/m³");
        // saturated air at 21 °C holds 18.3 g/m³ (ASHRAE2017), so 30 to 80 %RH is 5.5 to 14.7
        assertThat(plot.series().get(0).x()).allMatch(x -> x > 5 && x < 15);
    }

    @Test
    void findsASlopeOverTheDewPointTheClothAndTheBed() {
        Random random = new Random(4);
        List<Held> league = TraitLeague.angled(
                LEAGUE,
                trial -> 32
                        - MoistAir.of(trial.climate().tempC(), trial.climate().rhPct())
                                .dewPointC()
                        + random.nextGaussian());
        Estimated dew = TraitLeague.estimated(league, Map.of("humidity_measure", "dew-point"));
        assertWithin(dew, "humidity", -3);

        SessionTraits traits = TraitLeague.traits(85, 26, 2, "h");
        List<Held> regain = TraitLeague.angled(
                LEAGUE,
                trial -> 20
                        + HumidityMeasure.CLOTH_REGAIN.value(
                                trial.climate().rhPct(), trial.climate().tempC(), traits)
                        + random.nextGaussian());
        Estimated cloth = TraitLeague.estimated(regain, held -> traits, Map.of("humidity_measure", "cloth-regain"));
        assertWithin(cloth, "humidity", 2);
        Estimated bed =
                TraitLeague.estimated(regain, held -> traits, Map.of("humidity_measure", "bed-relative-humidity"));
        assertThat(bed.sentence()).contains("% relative humidity at the bed the final rebound angle");
    }

    @Test
    void declinesAClothThatIsNotStated() {
        Analysis analysis =
                TraitLeague.analysed(LEAGUE, held -> SessionTraits.UNKNOWN, Map.of("humidity_measure", "cloth-regain"));

        assertThat(((Declined) analysis).detail())
                .contains("leave unsaid, or put beyond its formulas, what the estimated regain of the cloth");
    }

    @Test
    void leavesOutSessionsWithoutACloth() {
        Estimated answer = TraitLeague.estimated(
                LEAGUE,
                held -> held.room().endsWith("3") ? SessionTraits.UNKNOWN : TraitLeague.traits(85, 26, 2, "h"),
                Map.of("humidity_measure", "cloth-regain"));

        assertThat(answer.fit()).containsEntry("rooms", 18);
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("180 trials left out: their sessions"));
    }

    @Test
    void findsTheAgeOfTheCloth() {
        Random random = new Random(6);
        List<Held> league = TraitLeague.moved(
                LEAGUE,
                trial -> new TrialDraft(trial.session(), Integer.parseInt(trial.trial()))
                        .climate(trial.climate().tempC(), trial.climate().rhPct())
                        .angle(30 + 0.7 * ageOf(trial.session()) + random.nextGaussian())
                        .build());

        Estimated answer = TraitLeague.estimated(
                league,
                held -> TraitLeague.aged(365.25 * ageOf(held.session()), 2540),
                Map.of("covariates", "cloth_age_y"));

        assertWithin(answer, "cloth.age", 0.7);
    }

    private static double ageOf(String session) {
        return Math.floorMod(session.hashCode(), 40) / 10.0;
    }

    @Test
    void followsABendThatNoParabolaHas() {
        Random random = new Random(9);
        List<Held> league = TraitLeague.angled(
                InventedLeague.drawn(30, 8, 10, 8),
                trial -> bent(trial.climate().rhPct()) + random.nextGaussian());

        Estimated spline = TraitLeague.estimated(league, Map.of("curve", "spline"));
        Estimated parabola = TraitLeague.estimated(league, Map.of());

        assertThat(worst(spline)).isLessThan(0.25).isLessThan(worst(parabola) / 2);
        assertThat((double) spline.fit().get("curveDegreesOfFreedom"))
                .isGreaterThan(2)
                .isLessThan(6);
        assertThat(spline.estimates()).extracting(Estimate::name).doesNotContain("humidity.squared");
        assertThat(spline.parameters()).containsEntry("curve", "spline");
    }

    /** Flat until 50 %RH, then falling. */
    private static double bent(double rhPct) {
        double over = Math.max(0, rhPct - 50);
        return 32 - over * over / 60;
    }

    private static double worst(Estimated answer) {
        return answer.curve().stream()
                .mapToDouble(point -> Math.abs(point.mean() - bent(point.rhPct())))
                .max()
                .orElseThrow();
    }

    @Test
    void saysThatASplineIsAStraightLine() {
        Random random = new Random(2);
        List<Held> league =
                TraitLeague.angled(LEAGUE, trial -> 30 - 0.1 * trial.climate().rhPct() + 0.01 * random.nextGaussian());

        Estimated answer = TraitLeague.estimated(league, Map.of("curve", "spline"));

        assertWithin(answer, "humidity", -1);
        boolean straight = answer.warnings().stream().anyMatch(warning -> warning.startsWith("The curve has no bend"));
        assertThat(straight).isEqualTo((double) answer.fit().get("curveDegreesOfFreedom") < 1 + 1e-4);
    }

    @Test
    void judgesByKenwardAndRogerAndSaysWhenThatIsTooCareful() {
        List<Held> league = InventedLeague.drawn(8, 4, 20, 5);
        Estimated standard = TraitLeague.estimated(league, Map.of());
        Estimated careful = TraitLeague.estimated(league, Map.of("df_method", "kenward-roger"));

        assertThat(careful.fit()).containsEntry("degreesOfFreedom", "Kenward-Roger");
        Estimate slope = TraitLeague.estimate(careful, "humidity");
        assertThat(slope.value())
                .isEqualTo(TraitLeague.estimate(standard, "humidity").value());
        assertThat(slope.standardError())
                .isGreaterThanOrEqualTo(
                        TraitLeague.estimate(standard, "humidity").standardError());
        boolean singular = standard.warnings().stream().anyMatch(warning -> warning.contains("boundary"));
        assertThat(singular).isTrue();
        assertThat(careful.warnings()).anyMatch(warning -> warning.contains("it is far too careful"));
    }

    @Test
    void declinesKenwardAndRogerWhereTheirCovarianceIsNone() {
        int declined = 0;
        for (int seed = 0; seed < 60; seed++) {
            Analysis analysis = TraitLeague.analysed(
                    InventedLeague.drawn(3, 2, 4, seed),
                    held -> SessionTraits.UNKNOWN,
                    Map.of("df_method", "kenward-roger"));
            if (analysis instanceof Declined no) {
                assertThat(no.detail()).contains("set df_method = satterthwaite");
                declined++;
            } else {
                assertThat(((Estimated) analysis).estimates())
                        .allSatisfy(
                                estimate -> assertThat(estimate.standardError()).isFinite());
            }
        }
        assertThat(declined).isBetween(1, 59);
    }

    @Test
    void refusesChoicesThatDoNotGoTogether() {
        assertThatThrownBy(() -> TraitLeague.estimated(LEAGUE, Map.of("df_method", "kenward-roger", "curve", "spline")))
                .hasMessage("parameter df_method = kenward-roger is not defined for curve = spline: set satterthwaite"
                        + " or quadratic");
        assertThatThrownBy(() -> TraitLeague.estimated(LEAGUE, Map.of("bootstrap", "2.5")))
                .hasMessage("parameter bootstrap = 2.5 is not a whole number from 0 to 10000: set one");
        assertThatThrownBy(() -> TraitLeague.estimated(LEAGUE, Map.of("seed", "-1")))
                .hasMessageContaining("parameter seed = -1 is not a whole number");
    }

    /** Four standard errors: missed once in 16,000 draws. */
    static void assertWithin(Estimated answer, String name, double truth) {
        Estimate estimate = TraitLeague.estimate(answer, name);
        assertThat(estimate.value()).as(name).isEqualTo(truth, within(4 * estimate.standardError()));
    }
}
