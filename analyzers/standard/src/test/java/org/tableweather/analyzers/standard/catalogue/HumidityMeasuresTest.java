package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.analyzers.standard.catalogue.TraitLeague.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.InventedLeague.Held;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;
import org.tableweather.schema.climate.MoistAir;

class HumidityMeasuresTest {
    private static final GoldenFile R = GoldenFile.read("humidity/measures.properties");

    private static Analysis compared(List<Held> league, Function<Held, SessionTraits> traits) {
        HumidityMeasures analyzer = new HumidityMeasures();
        List<SessionSummary<SessionMoments>> summaries = new ArrayList<>();
        for (Held held : league) {
            SessionMoments plain = SessionMomentsBuilder.of(held.trials());
            summaries.add(new SessionSummary<>(
                    held.room(),
                    held.session(),
                    held.session(),
                    false,
                    held.trials().size(),
                    new SessionMoments(plain.parts(), traits.apply(held), plain.protocol())));
        }
        return analyzer.conclude(InventedLeague.source(summaries), Parameters.of(analyzer.info(), Map.of()));
    }

    private static Estimated estimated(List<Held> league) {
        return (Estimated) compared(league, held -> TraitLeague.traits(85, Double.NaN, Double.NaN, ""));
    }

    /** lme4 on the same trials, row by row; {@code golden/humidity/measures.R}. */
    @Test
    void findsTheLikelihoodsThatLme4Finds() {
        Estimated answer = estimated(ReboundHumidityAgainstRTest.league());

        for (String name : List.of("relative-humidity", "temperature", "nothing")) {
            assertThat(estimate(answer, name + ".aic").value())
                    .as(name)
                    .isCloseTo(R.number(name + ".aic"), within(1e-6));
            double k = name.equals("nothing") ? 4 : 7;
            long sessions = (long) answer.fit().get("sessions");
            assertThat(estimate(answer, name + ".bic").value())
                    .isCloseTo(R.number(name + ".criterion") + k * Math.log(sessions), within(1e-6));
        }
    }

    /** Angles made from one measure are explained best by it, when sessions differ in temperature as well. */
    @Test
    void findsTheMeasureThatTheAnglesWereMadeFrom() {
        List<Held> league = InventedLeague.drawn(12, 6, 10, 20260112);
        List<Held> absolute = TraitLeague.angled(
                league,
                trial -> 40
                        - 2
                                * MoistAir.of(
                                                trial.climate().tempC(),
                                                trial.climate().rhPct())
                                        .absoluteHumidityGPerM3()
                        + trial.lastReboundAngleDeg() / 10);
        List<Held> warm =
                TraitLeague.angled(league, trial -> 40 - trial.climate().tempC() + trial.lastReboundAngleDeg() / 10);

        assertThat(estimated(absolute).sentence())
                .startsWith("Absolute humidity explains the final rebound angle best of 6 models")
                .contains("foretold best by absolute humidity");
        assertThat(estimated(warm).sentence()).startsWith("Air temperature explains");
        assertThat(estimated(absolute).estimates().get(0).name()).isEqualTo("absolute-humidity.aic");
    }

    @Test
    void comparesOnTheSameTrialsAndSaysWhatWasLeftOut() {
        List<Held> league = InventedLeague.drawn(12, 6, 10, 20260112);
        Estimated some = (Estimated) compared(
                league,
                held -> held.session().endsWith("s0")
                        ? SessionTraits.UNKNOWN
                        : TraitLeague.traits(85, Double.NaN, Double.NaN, ""));
        Estimated none = (Estimated) compared(league, held -> SessionTraits.UNKNOWN);

        assertThat(some.fit()).containsEntry("sessions", 60L);
        assertThat(some.warnings()).anyMatch(warning -> warning.startsWith("12 sessions left out"));
        assertThat(none.fit()).containsEntry("sessions", 72L);
        assertThat(none.warnings())
                .anyMatch(warning -> warning.startsWith("No model with estimated regain of the cloth"));
    }

    @Test
    void declinesWithFewerThanThreeRooms() {
        Declined declined = (Declined)
                compared(InventedLeague.drawn(2, 6, 10, 1), held -> TraitLeague.traits(85, Double.NaN, Double.NaN, ""));

        assertThat(declined.reason()).isEqualTo(Reason.TOO_FEW_RECORDS);
        assertThat(declined.detail()).contains("2 rooms").contains("add rooms");
    }
}
