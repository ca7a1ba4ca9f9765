package org.tableweather.analyzers.standard.catalogue.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.APPROACH_SPEED_MPS;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.ROLL_RATIO;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.RUN_OUT_LENGTHS;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.RUN_OUT_M;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;
import org.tableweather.analyzers.standard.statistics.spread.RollingBall;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.SessionRecord;

class TableSpeedTest extends KindContract {

    private static final GoldenFile GOLDEN = GoldenFile.read("kind/roll-out.properties");
    private static final double SLOPE = 0.0004;
    private static final double START_MPS = 0.65;

    @Override
    protected Analyzer<KindSummary> analyzer() {
        return new TableSpeed();
    }

    /** Roll-outs of balls that the equation of motion takes to rest, in air of 1.19 kg/m³. */
    @Override
    KindLeague league() {
        RollingBall ball = new RollingBall(0.170, 0.05715, 0.5, 1.19);
        return new KindLeague(
                Kind.SPEED,
                0.0095,
                SLOPE,
                0.0003,
                (draft, mu) ->
                        draft.with(APPROACH_SPEED_MPS, START_MPS).with(RUN_OUT_M, ball.distanceM(mu, START_MPS)));
    }

    @Override
    double slope() {
        return 1000 * SLOPE;
    }

    private static SessionRecord session() {
        return new SessionDraft("r", "s").table(2540, 1270).balls(57.15, 170).build();
    }

    private static TrialDraft draft() {
        return new TrialDraft(Kind.SPEED, 1).climate(21, 50);
    }

    /** The school formula gives 0.01 for this speed and way; the air's share at this speed is about one part in sixty. */
    @Test
    void takesTheAirOut() {
        double mu = RollOut.coefficient(
                session(),
                draft().with(APPROACH_SPEED_MPS, GOLDEN.number("length.speed"))
                        .with(RUN_OUT_M, GOLDEN.number("length.distance"))
                        .build());

        double density = RollOut.airDensity(session(), draft().build());
        double share = GOLDEN.number("drag.per.mass.at.1") * density / GOLDEN.number("drag.density");
        // mean square of the speed over the way is half that of the start
        double expected = GOLDEN.number("length.mu")
                - share * 5 / 7 * GOLDEN.number("length.speed") * GOLDEN.number("length.speed") / 2 / 9.80665;
        assertThat(mu).isCloseTo(expected, within(2e-6)).isLessThan(GOLDEN.number("length.mu"));
    }

    @Test
    void countsALengthAsTheCentresWay() {
        double travel =
                RollOut.travelM(session(), draft().with(RUN_OUT_LENGTHS, 1).build());

        assertThat(travel / 0.0254).isCloseTo(GOLDEN.number("centre.travel"), within(1e-9));
    }

    /** The gas law leaves out compressibility and carbon dioxide: one part in a thousand. */
    @Test
    void knowsTheDensityOfRoomAir() {
        GoldenFile.assertNear(density(0, 20, 50), GOLDEN.number("density.20.50"), 1e-3);
        GoldenFile.assertNear(density(0, 25, 0), GOLDEN.number("density.25.0"), 1e-3);
        GoldenFile.assertNear(density(0, 25, 100), GOLDEN.number("density.25.100"), 1e-3);
        double thinner = GOLDEN.number("pressure.1500.geometric") / 101325;
        GoldenFile.assertNear(density(1500, 25, 0), thinner * GOLDEN.number("density.25.0"), 1e-3);
        assertThat(density(0, 200, 50)).isNaN();
    }

    private static double density(double altitudeM, double tempC, double rhPct) {
        return RollOut.airDensity(
                new SessionDraft("r", "s").altitude(altitudeM).build(),
                draft().climate(tempC, rhPct).build());
    }

    @Test
    void leavesOutWhatDidNotRollFreely() {
        assertThat(List.of(
                        speed().rails(1),
                        speed().with(ROLL_RATIO, 0.2),
                        speed().with(RUN_OUT_M, 2.6),
                        speed().with(APPROACH_SPEED_MPS, 0),
                        draft().with(RUN_OUT_M, 2)))
                .allSatisfy(draft -> assertThat(RollOut.coefficient(session(), draft.build()))
                        .isNaN());
        assertThat(RollOut.coefficient(
                        session(), speed().rails(0).with(ROLL_RATIO, 1.05).build()))
                .isPositive();
    }

    private static TrialDraft speed() {
        return draft().with(APPROACH_SPEED_MPS, 0.7).with(RUN_OUT_M, 2.4);
    }

    @Test
    void saysThatTheClothPlaysSlowerWhenDamp() {
        Estimated answer = estimated(league().drawn(12, 5, 20, 3), Map.of());

        assertThat(answer.parameters()).containsEntry("response", "rolling_resistance_permille");
        assertThat(answer.sentence()).contains("the cloth plays slower when damp");
        // told beside: the way shortens as the resistance rises
        assertThat(estimate(answer, "run-out-m.change").upper()).isNegative();
        assertThat(estimate(answer, "run-out-m.change").unit()).isEqualTo("m");
    }

    @Test
    void poolsTheRollOutWhereNoSpeedIsKnown() {
        List<Held> without = new ArrayList<>();
        for (Held held : league().drawn(8, 5, 10, 4)) {
            without.add(new Held(
                    held.session(),
                    held.trials().stream()
                            .map(trial -> new TrialDraft(Kind.SPEED, trial.trial())
                                    .climate(
                                            trial.climate().tempC(),
                                            trial.climate().rhPct())
                                    .with(RUN_OUT_M, trial.runOutM())
                                    .build())
                            .toList()));
        }

        Estimated answer = estimated(without, Map.of());

        assertThat(answer.parameters()).containsEntry("response", "run_out_m");
        assertThat(answer.sentence()).contains("the cloth plays slower when damp");
        assertThat(answer.warnings())
                .anyMatch(warning -> warning.startsWith("The answer is for run_out_m: no trial has"));
    }
}
