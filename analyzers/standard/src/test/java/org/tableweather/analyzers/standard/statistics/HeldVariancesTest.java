package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;

/** On the fitted data themselves, held variances must give the fit back, which is checked against R elsewhere. */
class HeldVariancesTest {

    @ParameterizedTest
    @EnumSource(
            value = GoldenCase.class,
            names = {"SLEEP_SLOPE", "SLEEP_UNCORRELATED", "MACHINES", "OATS", "ORTHODONT"})
    void givesTheFitBack(GoldenCase each) {
        NestedFit fit = each.fit(Method.REML);
        List<RoomSessions> rooms = each.rooms();
        double[] row = new double[rooms.get(0).sessions().get(0).columns()];
        row[0] = 1;
        row[1] = 2;
        Quantity expected = fit.contrast(row);
        Quantity held = new HeldVariances(fit).estimate(rooms, row).orElseThrow();

        assertThat(held.value()).isEqualTo(expected.value(), within(1e-9 * Math.abs(expected.value())));
        assertThat(held.standardError()).isEqualTo(expected.standardError(), within(1e-9 * expected.standardError()));
    }

    @Test
    void refusesAPenalisedCurve() {
        List<RoomSessions> rooms =
                Golden.rooms("data/mcycle.csv", row -> row.get("times").length() + "", row -> "", row -> {
                    double x = Golden.number(row, "times");
                    return new double[] {x, x * x, Golden.number(row, "accel")};
                });
        NestedFit fit = (NestedFit) NestedModel.withDefaults()
                .with(NestedModel.Sessions.ALIKE)
                .withSmooth(List.of(2))
                .fit(rooms);

        assertThatThrownBy(() -> new HeldVariances(fit)).hasMessageContaining("without a penalised curve");
    }
}
