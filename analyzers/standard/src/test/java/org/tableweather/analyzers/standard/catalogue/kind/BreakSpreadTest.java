package org.tableweather.analyzers.standard.catalogue.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.CUE_BALL_TRAVEL_M;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.SPREAD_NEAREST_MM;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

class BreakSpreadTest extends KindContract {

    private static final GoldenFile GOLDEN = GoldenFile.read("spread/nearest-neighbour.properties");
    private static final double INCH_MM = 25.4;

    @Override
    protected Analyzer<KindSummary> analyzer() {
        return new BreakSpread();
    }

    /** The league's outcome is the index; the distance is what a bed of 16 balls less two shows for it. */
    @Override
    KindLeague league() {
        SessionRecord bed =
                new SessionDraft("r", "s").table(2540, 1270).balls(57.15, 170).build();
        double perMm = Rack.index(15, bed, broken(1, 2));
        return new KindLeague(
                Kind.BREAK,
                1.0,
                -0.04,
                0.1,
                (draft, index) -> draft.with(SPREAD_NEAREST_MM, index / perMm)
                        .with(CUE_BALL_TRAVEL_M, 4)
                        .ballsMade(2));
    }

    @Override
    double slope() {
        return -0.04;
    }

    private static Trial broken(double spreadMm, int made) {
        return new TrialDraft(Kind.BREAK, 1)
                .with(SPREAD_NEAREST_MM, spreadMm)
                .ballsMade(made)
                .build();
    }

    /** Beds that centres can reach of 100 x 50 in, as in the published expectations. */
    @Test
    void meetsThePublishedExpectations() {
        SessionRecord bed = new SessionDraft("r", "s")
                .table(102.25 * INCH_MM, 52.25 * INCH_MM)
                .balls(2.25 * INCH_MM, 170)
                .build();
        // N on the table is the rack and the cue ball less the balls made
        assertThat(Rack.index(15, bed, broken(GOLDEN.number("expected.donnelly.15") * INCH_MM, 1)))
                .isCloseTo(1, within(1e-6));
        assertThat(Rack.index(15, bed, broken(GOLDEN.number("expected.donnelly.16") * INCH_MM, 0)))
                .isCloseTo(1, within(1e-6));
        assertThat(Rack.index(9, bed, broken(GOLDEN.number("expected.donnelly.9") * INCH_MM, 1)))
                .isCloseTo(1, within(1e-6));
        assertThat(Rack.index(10, bed, broken(GOLDEN.number("expected.donnelly.9") * INCH_MM, 2)))
                .isCloseTo(1, within(1e-6));
    }

    @Test
    void needsTheNumberOfBallsAndTheBed() {
        SessionRecord bed = new SessionDraft("r", "s").table(2540, 1270).build();
        assertThat(Rack.index(15, bed, broken(200, -1))).isNaN();
        assertThat(Rack.index(9, bed, broken(200, 9))).isNaN();
        assertThat(Rack.index(15, new SessionDraft("r", "s").build(), broken(200, 1)))
                .isNaN();
        assertThat(Rack.index(15, bed, broken(Double.NaN, 1))).isNaN();
    }

    @Test
    void tellsBallsMadeAndTravelBeside() {
        List<Held> varied = new ArrayList<>();
        for (Held held : league().drawn(8, 5, 12, 5)) {
            varied.add(new Held(
                    held.session(),
                    held.trials().stream()
                            .map(trial -> new TrialDraft(Kind.BREAK, trial.trial())
                                    .climate(
                                            trial.climate().tempC(),
                                            trial.climate().rhPct())
                                    .with(SPREAD_NEAREST_MM, trial.spreadNearestMm())
                                    .with(CUE_BALL_TRAVEL_M, 4 + trial.spreadNearestMm() / 500)
                                    .ballsMade(Integer.parseInt(trial.trial()) % 4)
                                    .build())
                            .toList()));
        }

        Estimated answer = estimated(varied, Map.of());

        assertThat(answer.parameters()).containsEntry("response", "nearest_neighbour_index");
        Estimate distance = estimate(answer, "spread-nearest-mm.change");
        // the travel was made from the distance
        assertThat(estimate(answer, "cue-ball-travel-m.change").value())
                .isCloseTo(distance.value() / 500, within(1e-9));
        // balls made do not follow the climate here
        Estimate made = estimate(answer, "balls-made.change");
        assertThat(made.lower()).isNegative();
        assertThat(made.upper()).isPositive();
    }

    @Test
    void answersForBallsMadeWhereNothingElseIsLogged() {
        List<Held> counts = new ArrayList<>();
        for (Held held : league().drawn(8, 5, 12, 5)) {
            counts.add(new Held(
                    held.session(),
                    held.trials().stream()
                            .map(trial -> new TrialDraft(Kind.BREAK, trial.trial())
                                    .climate(
                                            trial.climate().tempC(),
                                            trial.climate().rhPct())
                                    .ballsMade(Integer.parseInt(trial.trial()) % 4)
                                    .build())
                            .toList()));
        }

        Estimated answer = estimated(counts, Map.of());

        assertThat(answer.parameters()).containsEntry("response", "balls_made");
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("The answer is for balls_made"));
    }
}
