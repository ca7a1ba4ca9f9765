package org.tableweather.analyzers.standard.catalogue.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.APPROACH_SPEED_MPS;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.OBJECT_ANGLE_DEG;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

class ThrowTest extends KindContract {

    private static final GoldenFile GOLDEN = GoldenFile.read("kind/throw.properties");

    @Override
    protected Analyzer<KindSummary> analyzer() {
        return new Throw();
    }

    @Override
    KindLeague league() {
        return new KindLeague(
                Kind.THROW,
                2.6,
                0.3,
                0.4,
                (draft, angle) ->
                        draft.with(OBJECT_ANGLE_DEG, angle).with(APPROACH_SPEED_MPS, 2 + 0.1 * (angle - 2.6)));
    }

    @Override
    double slope() {
        return 0.3;
    }

    @Test
    void meetsPublishedSoftware() throws IOException {
        Estimated answer = estimated(golden(), Map.of("covariates", "approach_speed_mps"));

        GoldenFile.assertNear((double) answer.fit().get("criterion"), GOLDEN.number("criterion"), 1e-9);
        for (String name : List.of("intercept", "humidity", "humidity.squared", "temperature", "approach.speed")) {
            Estimate estimate = estimate(answer, name);
            assertThat(estimate.value()).as(name).isCloseTo(GOLDEN.number(name), within(1e-8));
            assertThat(estimate.standardError()).as(name).isCloseTo(GOLDEN.number(name + ".se"), within(1e-8));
            GoldenFile.assertNear(estimate.df(), GOLDEN.number(name + ".df"), 1e-5);
        }
        for (String name : List.of("room.intercept", "room.humidity", "session.intercept", "residual")) {
            assertThat(deviation(answer, name)).as(name).isCloseTo(GOLDEN.number("sd." + name), within(1e-8));
        }
    }

    private static double deviation(Estimated answer, String name) {
        return answer.variance().stream()
                .filter(component -> component.name().equals(name))
                .map(VarianceComponent::sd)
                .findFirst()
                .orElseThrow()
                .getAsDouble();
    }

    /** The data of the golden file: room, session, temperature, humidity, speed, throw. */
    private static List<Held> golden() throws IOException {
        Map<String, List<Trial>> sessions = new LinkedHashMap<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(ThrowTest.class.getResourceAsStream("/golden/kind/throw.csv")),
                StandardCharsets.UTF_8))) {
            reader.readLine();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] cells = line.split(",");
                List<Trial> trials = sessions.computeIfAbsent(cells[0] + "/" + cells[1], key -> new ArrayList<>());
                trials.add(new TrialDraft(Kind.THROW, trials.size() + 1)
                        .climate(Double.parseDouble(cells[2]), Double.parseDouble(cells[3]))
                        .with(APPROACH_SPEED_MPS, Double.parseDouble(cells[4]))
                        .with(OBJECT_ANGLE_DEG, Double.parseDouble(cells[5]))
                        .build());
            }
        }
        List<Held> pool = new ArrayList<>();
        sessions.forEach((key, trials) -> pool.add(new Held(
                new SessionDraft(key.substring(0, key.indexOf('/')), key.substring(key.indexOf('/') + 1)).build(),
                trials)));
        return pool;
    }

    @Test
    void takesSpeedAsACovariate() {
        // in this league the speed gives the angle away
        assertThat(declined(league().drawn(8, 5, 10, 3), Map.of("covariates", "approach_speed_mps"))
                        .reason())
                .isEqualTo(Reason.DEGENERATE);
        assertThatThrownBy(() -> analysed(List.of(), Map.of("covariates", "rails")))
                .hasMessageContaining("rails is not one of approach_angle_deg");
    }

    @Test
    void declinesWithoutTheCovariate() {
        assertThat(declined(league().drawn(8, 5, 10, 3), Map.of("covariates", "side_spin_rps"))
                        .detail())
                .startsWith("None of 400 trials has all covariates");
    }

    @Test
    void leavesOutTrialsOfOtherKinds() {
        List<Held> mixed = new ArrayList<>();
        for (Held held : league().drawn(6, 5, 8, 3)) {
            List<Trial> trials = new ArrayList<>(held.trials());
            trials.add(new TrialDraft(Kind.HOP, 100)
                    .climate(21, 40)
                    .with(OBJECT_ANGLE_DEG, 80)
                    .build());
            mixed.add(new Held(held.session(), trials));
        }

        assertThat(estimated(mixed, Map.of()).fit()).containsEntry("trials", 240L);
    }

    @Test
    void declinesKindlyWithoutClimateOrVariation() {
        List<Held> dry = new ArrayList<>();
        List<Held> unknown = new ArrayList<>();
        for (Held held : league().drawn(6, 5, 8, 3)) {
            dry.add(new Held(held.session(), changed(held, 21, 40)));
            unknown.add(new Held(held.session(), changed(held, Double.NaN, Double.NaN)));
        }

        assertThat(declined(dry, Map.of()).detail()).startsWith("Humidity is the same, 40.0 %RH");
        assertThat(declined(unknown, Map.of("shot", "test-shot")).detail())
                .contains("none with humidity and temperature");
        assertThat(declined(league().drawn(1, 4, 8, 3), Map.of()).detail()).contains("shape=linear");
    }

    private static List<Trial> changed(Held held, double tempC, double rhPct) {
        return held.trials().stream()
                .map(trial -> new TrialDraft(Kind.THROW, trial.trial())
                        .climate(tempC, rhPct)
                        .with(OBJECT_ANGLE_DEG, trial.objectAngleDeg())
                        .build())
                .toList();
    }

    @Test
    void leavesOutATemperatureThatHumidityDetermines() {
        List<Held> follows = new ArrayList<>();
        for (Held held : league().drawn(8, 5, 8, 3)) {
            List<Trial> trials = new ArrayList<>();
            for (Trial trial : held.trials()) {
                double rhPct = trial.climate().rhPct();
                trials.add(new TrialDraft(Kind.THROW, trial.trial())
                        .climate(rhPct / 5, rhPct)
                        .with(OBJECT_ANGLE_DEG, trial.objectAngleDeg())
                        .build());
            }
            follows.add(new Held(held.session(), trials));
        }

        Estimated answer = estimated(follows, Map.of());

        assertThat(estimate(answer, "temperature").value()).isNull();
        assertThat(answer.warnings())
                .anyMatch(warning ->
                        warning.startsWith("Left out because the columns before determine them: temperature"))
                .anyMatch(warning -> warning.startsWith("The curve is drawn at 21 °C"));
    }

    @Test
    void declinesOneTrialInEachRoom() {
        assertThat(declined(league().drawn(12, 1, 1, 3), Map.of()).detail())
                .startsWith("Each of 12 rooms has one usable");
    }

    @Test
    void saysWhichTrialsItLeftOutAndWhichShotItTook() {
        List<Held> mixed = new ArrayList<>();
        for (Held held : league().drawn(6, 5, 8, 3)) {
            List<Trial> trials = new ArrayList<>(held.trials());
            trials.add(new TrialDraft(Kind.THROW, 100).climate(21, 40).build());
            trials.add(new TrialDraft(Kind.THROW, 101).with(OBJECT_ANGLE_DEG, 3).build());
            trials.add(new TrialDraft(Kind.THROW, 102)
                    .shot("other")
                    .climate(21, 40)
                    .with(OBJECT_ANGLE_DEG, 3)
                    .build());
            mixed.add(new Held(held.session(), trials));
        }

        assertThat(estimated(mixed, Map.of()).warnings())
                .anyMatch(warning -> warning.startsWith("Shot test-shot was taken") && warning.endsWith("other."))
                .contains("30 trials left out: no object_angle_deg.")
                .contains("30 trials left out: humidity or temperature at the trial is not known.");
    }

    @Test
    void refusesACurveThatCannotBe() {
        List<Held> pool = league().drawn(6, 5, 8, 3);
        assertThatThrownBy(() -> analysed(pool, Map.of("curve_from_pct", "60", "curve_to_pct", "40")))
                .hasMessage("parameter curve_from_pct = 60 is not below curve_to_pct = 40: set a lower one");
        assertThatThrownBy(() -> analysed(pool, Map.of("curve_from_pct", "140")))
                .hasMessageContaining("0 to 100 %RH");
        assertThatThrownBy(() -> analysed(pool, Map.of("curve_from_pct", "95"))).hasMessageContaining("set both");
    }
}
