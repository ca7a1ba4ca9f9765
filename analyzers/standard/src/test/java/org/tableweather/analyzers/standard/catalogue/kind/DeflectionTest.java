package org.tableweather.analyzers.standard.catalogue.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.DEFLECTION_ANGLE_DEG;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.TIP_OFFSET_MM;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.schema.record.Kind;

class DeflectionTest extends KindContract {

    @Override
    protected Analyzer<KindSummary> analyzer() {
        return new Deflection();
    }

    @Override
    KindLeague league() {
        return new KindLeague(
                Kind.DEFLECTION,
                2.7,
                -0.1,
                0.1,
                (draft, angle) -> draft.with(DEFLECTION_ANGLE_DEG, angle).with(TIP_OFFSET_MM, -14));
    }

    @Override
    double slope() {
        return -0.1;
    }

    @Test
    void poolsBothSidesOfTheTip() {
        List<Held> bothSides = new ArrayList<>();
        for (Held held : league().drawn(8, 5, 10, 3)) {
            bothSides.add(new Held(
                    held.session(),
                    held.trials().stream()
                            .map(trial -> {
                                double side = Integer.parseInt(trial.trial()) % 2 == 0 ? 1 : -1;
                                return new TrialDraft(Kind.DEFLECTION, trial.trial())
                                        .climate(
                                                trial.climate().tempC(),
                                                trial.climate().rhPct())
                                        .with(DEFLECTION_ANGLE_DEG, side * trial.deflectionAngleDeg())
                                        .with(TIP_OFFSET_MM, -side * 14)
                                        .build();
                            })
                            .toList()));
        }

        Estimated one = estimated(league().drawn(8, 5, 10, 3), Map.of());
        Estimated both = estimated(bothSides, Map.of());

        assertThat(both.estimates()).isEqualTo(one.estimates());
        // 14 mm to either side
        assertThat(estimate(both, "deflection-per-offset.change").value())
                .isCloseTo(estimate(both, "humidity.change").value() / 14, within(1e-9));
        assertThat(both.sentence()).contains("less when damp");
    }

    /** With its sign the one side undoes the other. */
    @Test
    void keepsTheSignWhenAskedFor() {
        Estimated signed = estimated(league().drawn(8, 5, 10, 3), Map.of("response", "deflection_angle_deg"));

        assertThat(signed.sentence()).contains("the logged angle falls when damp");
    }

    @Test
    void divideByNoOffset() {
        double ratio = Deflection.DEFINITION
                .outcome("deflection_per_offset")
                .orElseThrow()
                .reading()
                .of(
                        null,
                        new TrialDraft(Kind.DEFLECTION, 1)
                                .with(DEFLECTION_ANGLE_DEG, 2)
                                .with(TIP_OFFSET_MM, 0.2)
                                .build());

        assertThat(ratio).isNaN();
    }
}
