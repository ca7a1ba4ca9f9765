package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.ServiceLoader;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.InventedLeague.Held;
import org.tableweather.schema.record.Trial;

/** Pools drawn from a stated truth (see {@link InventedLeague}); the truth is the expected value. */
class ReboundHumidityTest {

    @Test
    void isFoundByTheServiceLoader() {
        List<String> ids = new ArrayList<>();
        for (Analyzer<?> analyzer : ServiceLoader.load(Analyzer.class)) {
            ids.add(analyzer.info().id());
        }

        assertThat(ids).contains("rebound-humidity");
    }

    @Test
    void recoversTheTruthOfALargePool() {
        Estimated answer = estimated(InventedLeague.drawn(100, 10, 20, 11), Map.of());

        assertWithin(answer, "intercept", 32);
        assertWithin(answer, "humidity", InventedLeague.SLOPE);
        assertWithin(answer, "humidity.squared", 0.05);
        assertWithin(answer, "temperature", 0.1);
        // standard errors of the standard deviations are about sd / sqrt(2 df): 0.07, 0.03, 0.015, 0.01
        assertThat(deviation(answer, "room.intercept")).isEqualTo(1, within(0.3));
        assertThat(deviation(answer, "room.humidity")).isEqualTo(0.25, within(0.12));
        assertThat(deviation(answer, "session.intercept")).isEqualTo(0.5, within(0.08));
        assertThat(deviation(answer, "residual")).isEqualTo(2, within(0.05));
        assertThat(answer.sentence()).contains("damp tightens the rebound");
    }

    @Test
    void givesTheSameBitsWhateverTheOrderOfRowsAndSessions() {
        List<Held> league = InventedLeague.drawn(9, 4, 15, 3);
        List<Held> shuffled = new ArrayList<>();
        Random random = new Random(5);
        for (Held held : league) {
            List<Trial> trials = new ArrayList<>(held.trials());
            Collections.shuffle(trials, random);
            shuffled.add(new Held(held.room(), held.session(), trials));
        }
        Collections.shuffle(shuffled, random);

        assertThat(estimated(shuffled, Map.of())).isEqualTo(estimated(league, Map.of()));
    }

    @Test
    void readsSummariesBackFromJsonWithTheSameBits() throws Exception {
        List<Held> league = InventedLeague.drawn(6, 4, 15, 3);
        JsonMapper mapper = new JsonMapper();
        List<SessionSummary<SessionMoments>> stored = new ArrayList<>();
        for (SessionSummary<SessionMoments> each :
                InventedLeague.summarised(league).sessions()) {
            SessionMoments back = mapper.readValue(mapper.writeValueAsBytes(each.summary()), SessionMoments.class);
            assertThat(back).isEqualTo(each.summary());
            stored.add(new SessionSummary<>(
                    each.roomKey(), each.sessionKey(), each.digest(), each.invented(), each.trials(), back));
        }

        assertThat(conclude(InventedLeague.source(stored), Map.of())).isEqualTo(estimated(league, Map.of()));
    }

    @Test
    void keepsTheContractOfTheEnvelope() {
        Estimated answer = estimated(InventedLeague.drawn(8, 5, 10, 2), Map.of());

        assertThat(answer.estimates())
                .extracting(Estimate::name)
                .containsExactly(
                        "intercept",
                        "humidity",
                        "humidity.squared",
                        "temperature",
                        "humidity.change",
                        "humidity.within",
                        "humidity.between",
                        "humidity.between-within",
                        "humidity.robust");
        assertThat(answer.estimates())
                .extracting(Estimate::unit)
                .startsWith("deg", "deg per 10 %RH", "deg per (10 %RH)²", "deg per 5 K", "deg");
        assertThat(answer.plots()).extracting(Plot::id).containsExactly("curve", "residuals", "quantiles", "influence");
        assertThat(answer.variance())
                .extracting(VarianceComponent::name)
                .containsExactly(
                        "room.intercept", "room.humidity", "room.correlation", "session.intercept", "residual");
        assertThat(answer.fit())
                .containsEntry("method", "REML")
                .containsEntry("converged", true)
                .containsEntry("trials", 400L)
                .containsEntry("sessions", 40L)
                .containsEntry("rooms", 8)
                .containsKeys("criterion", "evaluations");
        assertThat(answer.parameters())
                .containsEntry("shot", "kick-test")
                .containsEntry("response", "final_rebound_angle_deg")
                .containsKeys("curve_from_pct", "curve_to_pct", "covariates");
        assertThat(answer.rooms()).hasSize(8).allSatisfy(room -> {
            assertThat(room.sessions()).isEqualTo(5);
            assertThat(room.trials()).isEqualTo(50);
            assertThat(room.effects()).extracting(Effect::name).containsExactly("intercept", "humidity");
        });
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("Invented data: 40 of 40 sessions"));
        assertThat(answer.references()).isEqualTo(new ReboundHumidity().info().references());
    }

    @Test
    void drawsTheCurveOnRoundHumiditiesWithinTheData() {
        Estimated answer = estimated(InventedLeague.drawn(12, 5, 10, 2), Map.of());
        List<Double> humidities = answer.curve().stream().map(CurvePoint::rhPct).toList();

        assertThat(humidities).isSorted().allMatch(rhPct -> rhPct % 2.5 == 0 && rhPct >= 30 && rhPct <= 70);
        assertThat(answer.curve()).allSatisfy(point -> {
            assertThat(point.lower()).isLessThan(point.mean()).isGreaterThan(point.newRoomLower());
            assertThat(point.upper()).isGreaterThan(point.mean()).isLessThan(point.newRoomUpper());
        });
        Plot plot = answer.plots().get(0);
        assertThat(plot.id()).isEqualTo("curve");
        assertThat(plot.series().stream().map(Series::mark).limit(3)).containsExactly(Mark.BAND, Mark.BAND, Mark.LINE);
        assertThat(plot.series().stream().filter(series -> series.mark() == Mark.POINTS))
                .hasSize(12)
                .allSatisfy(series -> assertThat(series.x()).hasSize(5));
    }

    @Test
    void drawsTheCurveWhereItIsAsked() {
        Map<String, String> set = Map.of("curve_from_pct", "33.3", "curve_to_pct", "90");
        Estimated answer = estimated(InventedLeague.drawn(12, 5, 10, 2), set);

        assertThat(answer.curve())
                .extracting(CurvePoint::rhPct)
                .containsExactly(33.3, 35., 40., 45., 50., 55., 60., 65., 70., 75., 80., 85., 90.);
        assertThat(answer.sentence()).startsWith("From 33.3 to 90 % relative humidity");
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("The curve reaches beyond the data"));
    }

    @Test
    void changesTheResponseWithoutANewSummary() {
        List<Held> league = InventedLeague.drawn(12, 5, 10, 2);
        Estimated angle = estimated(league, Map.of());
        Estimated landing = estimated(league, Map.of("response", "landing_offset_dia"));
        Estimated speed = estimated(league, Map.of("response", "speed_kept"));

        // the invented landing offset is a tenth of the angle
        assertThat(estimate(landing, "humidity").value())
                .isEqualTo(estimate(angle, "humidity").value() / 10, within(1e-9));
        assertThat(landing.sentence()).contains("the ball lands shorter when damp");
        // the invented speeds do not depend on the climate
        assertThat(speed.sentence()).contains("no change that these data can tell from chance");
        assertThat(estimate(speed, "intercept").value()).isEqualTo(1.5 / 2.4, within(0.02));
    }

    @Test
    void takesCovariatesFromTheSameSummary() {
        Map<String, String> set = Map.of("covariates", "approach_speed_mps, approach_angle_deg");
        Estimated answer = estimated(InventedLeague.drawn(12, 5, 10, 2), set);

        assertThat(answer.estimates()).extracting(Estimate::name).contains("approach.angle", "approach.speed");
        assertThat(answer.parameters()).containsEntry("covariates", "approach_angle_deg,approach_speed_mps");
        // neither is in the truth
        assertWithin(answer, "approach.angle", 0);
        assertWithin(answer, "approach.speed", 0);
        assertWithin(answer, "humidity", InventedLeague.SLOPE);
    }

    @Test
    void takesTheShotWithTheMostUsableTrialsAndNamesTheOthers() {
        List<Held> league = new ArrayList<>();
        for (Held held : InventedLeague.drawn(6, 4, 9, 2)) {
            List<Trial> trials = new ArrayList<>(held.trials());
            trials.add(new TrialDraft(held.session(), 100)
                    .shot("other")
                    .climate(21, 40)
                    .angle(30)
                    .build());
            for (int i = 0; i < 20; i++) {
                trials.add(new TrialDraft(held.session(), 200 + i)
                        .shot("many")
                        .climate(21, 40)
                        .build());
            }
            trials.add(new TrialDraft(held.session(), 101).angle(30).build());
            trials.add(new TrialDraft(held.session(), 102).climate(21, 40).build());
            league.add(new Held(held.room(), held.session(), trials));
        }

        Estimated answer = estimated(league, Map.of());

        assertThat(answer.parameters()).containsEntry("shot", "kick-test");
        assertThat(answer.warnings())
                .contains(
                        "Shot kick-test was taken because it has the most usable trials; others can be set by the"
                                + " parameter shot: other.",
                        "24 trials left out: no final_rebound_angle_deg.",
                        "24 trials left out: humidity or temperature at the trial is not known.");
        assertThat(answer.fit()).containsEntry("trials", 6 * 4 * 9L);
    }

    @Test
    void answersForOneRoomWithoutAClaimAboutOthers() {
        Estimated answer = estimated(InventedLeague.drawn(1, 9, 20, 4), Map.of());

        assertThat(answer.sentence()).startsWith("In this one room").endsWith("One room says nothing about others.");
        assertThat(answer.curve()).allSatisfy(point -> {
            assertThat(point.newRoomLower()).isNull();
            assertThat(point.newRoomUpper()).isNull();
        });
        assertThat(answer.variance()).extracting(VarianceComponent::name).doesNotContain("room.intercept");
        assertThat(answer.rooms())
                .hasSize(1)
                .allSatisfy(room -> assertThat(room.effects()).isEmpty());
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("One room:"));
    }

    @Test
    void answersForTwoRoomsWithAWarning() {
        Estimated answer = estimated(InventedLeague.drawn(2, 6, 20, 4), Map.of());

        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("2 rooms, fewer than 5"));
        assertThat(answer.estimates())
                .allSatisfy(estimate -> assertThat(estimate.df()).isGreaterThanOrEqualTo(1));
    }

    @Test
    void answersForOneTrialPerSession() {
        Estimated answer = estimated(InventedLeague.drawn(20, 5, 1, 4), Map.of());

        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("Every session has one usable trial"));
        assertThat(answer.variance()).extracting(VarianceComponent::name).doesNotContain("session.intercept");
        assertWithin(answer, "humidity", InventedLeague.SLOPE);
    }

    @Test
    void answersForOneSessionPerRoom() {
        Estimated answer = estimated(InventedLeague.drawn(40, 1, 10, 4), Map.of());

        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("No room has two sessions"));
        assertWithin(answer, "humidity", InventedLeague.SLOPE);
    }

    @Test
    void leavesOutATemperatureThatHumidityDetermines() {
        List<Held> league = changed(
                InventedLeague.drawn(8, 5, 10, 4),
                (draft, trial) -> draft.climate(
                                trial.climate().rhPct() / 5, trial.climate().rhPct())
                        .angle(trial.finalReboundAngleDeg()));

        Estimated answer = estimated(league, Map.of());

        assertThat(estimate(answer, "temperature").value()).isNull();
        assertThat(answer.warnings())
                .anyMatch(warning ->
                        warning.startsWith("Left out because the columns before determine them:" + " temperature"));
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("The curve is drawn at 21 °C"));
    }

    @Test
    void refusesParametersThatCannotBe() {
        assertThatThrownBy(() -> InventedLeague.analysed(List.of(), Map.of("covariates", "cloth_age")))
                .hasMessageContaining("cloth_age is not one of approach_angle_deg");
        assertThatThrownBy(() -> InventedLeague.analysed(List.of(), Map.of("curve_from_pct", "140")))
                .hasMessage("parameter curve_from_pct = 140 is outside 0 to 100 %RH: set a relative humidity");
        assertThatThrownBy(
                        () -> InventedLeague.analysed(List.of(), Map.of("curve_from_pct", "60", "curve_to_pct", "40")))
                .hasMessage("parameter curve_from_pct = 60 is not below curve_to_pct = 40: set a lower one");
        assertThatThrownBy(() ->
                        InventedLeague.analysed(InventedLeague.drawn(8, 5, 10, 4), Map.of("curve_from_pct", "95")))
                .hasMessageStartingWith("the curve would begin at 95 and end at ")
                .hasMessageEndingWith(" %RH: set both curve_from_pct and curve_to_pct");
        assertThatThrownBy(() -> InventedLeague.analysed(List.of(), Map.of("response", "angle")))
                .hasMessageContaining("is not one of");
    }

    @Nested
    class Declines {

        @Test
        void noTrials() {
            assertDeclined(List.of(), Map.of(), Reason.TOO_FEW_RECORDS, "There are no trials");
        }

        @Test
        void aShotThatNobodyCites() {
            assertDeclined(
                    InventedLeague.drawn(2, 3, 4, 1),
                    Map.of("shot", "none-such"),
                    Reason.NOT_APPLICABLE,
                    "No trial cites shot none-such: the shots here are kick-test.");
        }

        @Test
        void trialsWithoutClimate() {
            assertDeclined(
                    changed(InventedLeague.drawn(2, 3, 4, 1), (draft, trial) -> draft.angle(30)),
                    Map.of(),
                    Reason.NOT_APPLICABLE,
                    "24 trials with final_rebound_angle_deg, none with humidity and temperature");
        }

        @Test
        void trialsWithoutTheResponse() {
            assertDeclined(
                    changed(InventedLeague.drawn(2, 3, 4, 1), (draft, trial) -> draft.climate(21, 50)),
                    Map.of("shot", "kick-test"),
                    Reason.NOT_APPLICABLE,
                    "None of 24 trials of shot kick-test has final_rebound_angle_deg");
        }

        @Test
        void trialsWithoutACovariate() {
            assertDeclined(
                    InventedLeague.drawn(2, 3, 4, 1),
                    Map.of("covariates", "side_spin_rps"),
                    Reason.NOT_APPLICABLE,
                    "None of 24 trials has all covariates");
        }

        @Test
        void oneHumidity() {
            assertDeclined(
                    changed(
                            InventedLeague.drawn(6, 4, 5, 1),
                            (draft, trial) ->
                                    draft.climate(trial.climate().tempC(), 43).angle(trial.finalReboundAngleDeg())),
                    Map.of(),
                    Reason.DEGENERATE,
                    "Humidity is the same, 43.0 %RH, in all 120 trials");
        }

        @Test
        void noMoreSessionsThanClimateColumns() {
            assertDeclined(
                    InventedLeague.drawn(2, 2, 20, 1),
                    Map.of(),
                    Reason.TOO_FEW_RECORDS,
                    "4 sessions for 4 coefficients of the climate");
        }

        @Test
        void oneTrialInEachRoom() {
            assertDeclined(
                    InventedLeague.drawn(12, 1, 1, 1),
                    Map.of(),
                    Reason.TOO_FEW_RECORDS,
                    "Each of 12 rooms has one usable trial");
        }

        @Test
        void fewerTrialsThanCoefficients() {
            assertDeclined(InventedLeague.drawn(2, 1, 1, 1), Map.of(), Reason.TOO_FEW_RECORDS, "Too few trials");
        }

        @Test
        void aResponseThatNeverVaries() {
            assertDeclined(
                    changed(
                            InventedLeague.drawn(6, 4, 5, 1),
                            (draft, trial) -> draft.climate(
                                            trial.climate().tempC(),
                                            trial.climate().rhPct())
                                    .angle(31)),
                    Map.of(),
                    Reason.DEGENERATE,
                    "The model reproduces the response");
        }

        private void assertDeclined(List<Held> league, Map<String, String> set, Reason reason, String detail) {
            Analysis analysis = InventedLeague.analysed(league, set);
            assertThat(analysis).isInstanceOf(Declined.class);
            Declined declined = (Declined) analysis;
            assertThat(declined.reason()).isEqualTo(reason);
            assertThat(declined.detail()).contains(detail);
            assertThat(declined.parameters()).containsAllEntriesOf(set);
        }
    }

    /** The same trials with other measurements. */
    private static List<Held> changed(List<Held> league, BiFunction<TrialDraft, Trial, TrialDraft> change) {
        List<Held> all = new ArrayList<>();
        for (Held held : league) {
            List<Trial> trials = new ArrayList<>();
            for (Trial trial : held.trials()) {
                TrialDraft draft = new TrialDraft(held.session(), Integer.parseInt(trial.trial()));
                trials.add(change.apply(draft, trial).build());
            }
            all.add(new Held(held.room(), held.session(), trials));
        }
        return all;
    }

    private static Analysis conclude(SummarySource<SessionMoments> source, Map<String, String> set) {
        ReboundHumidity analyzer = new ReboundHumidity();
        return analyzer.conclude(source, Parameters.of(analyzer.info(), set));
    }

    private static Estimated estimated(List<Held> league, Map<String, String> set) {
        Analysis analysis = InventedLeague.analysed(league, set);
        assertThat(analysis).isInstanceOf(Estimated.class);
        return (Estimated) analysis;
    }

    private static Estimate estimate(Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(estimate -> estimate.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static double deviation(Estimated answer, String name) {
        return answer.variance().stream()
                .filter(component -> component.name().equals(name))
                .map(VarianceComponent::sd)
                .findFirst()
                .orElseThrow()
                .getAsDouble();
    }

    /** Four standard errors: missed once in 16,000 draws. */
    private static void assertWithin(Estimated answer, String name, double truth) {
        Estimate estimate = estimate(answer, name);
        assertThat(estimate.value()).as(name).isEqualTo(truth, within(4 * estimate.standardError()));
    }
}
