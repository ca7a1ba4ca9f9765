package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;
import org.tableweather.analyzers.standard.statistics.NestedModel.Sessions;

/** On the fitted data themselves, held variances must give the fit back, which is checked against R elsewhere. */
class HeldVariancesTest {

    @ParameterizedTest
    @EnumSource(
            value = GoldenCase.class,
            names = {"SLEEP_SLOPE", "SLEEP_UNCORRELATED", "OATS", "ORTHODONT"})
    void givesTheFitBack(GoldenCase each) {
        NestedFit fit = each.fit(Method.REML);
        List<RoomSessions> rooms = each.rooms();
        double[] row = new double[rooms.get(0).sessions().get(0).columns()];
        row[0] = 1;
        row[1] = 2;
        Quantity expected = fit.contrast(row);
        double[] none = new double[NestedData.sessionsOf(rooms).size()];
        Quantity held =
                new HeldVariances(fit, rooms, 1, row.length).estimate(none, row).orElseThrow();

        assertThat(held.value()).isEqualTo(expected.value(), within(1e-9 * Math.abs(expected.value())));
        assertThat(held.standardError()).isEqualTo(expected.standardError(), within(1e-9 * expected.standardError()));
    }

    @Test
    void movesAColumnAndItsSquareAsTheirMomentsDo() {
        List<RoomSessions> rooms = squared(0);
        NestedModel model = NestedModel.withDefaults().with(Sessions.ALIKE).withRandom(0, 1);
        NestedFit fit = (NestedFit) model.fit(rooms);
        double[] shifts = new double[rooms.size()];
        Arrays.fill(shifts, 2);
        double[] row = {0, 1, 0};

        // with all days moved by two, the slope at day 0 is that at day −2 before; the room effects' origin moves as
        // well,
        // so only a model without room slopes stays the same: least squares by a fit of no room variance
        NestedFit plain =
                (NestedFit) NestedModel.withDefaults().with(Sessions.ALIKE).fit(rooms);
        Quantity movedSlope =
                new HeldVariances(plain, rooms, 1, 2).estimate(shifts, row).orElseThrow();
        Quantity expected = plain.contrast(new double[] {0, 1, -4});
        assertThat(movedSlope.value()).isEqualTo(expected.value(), within(1e-8));
        assertThat(movedSlope.standardError()).isEqualTo(expected.standardError(), within(1e-8));
        // and the data moved by hand give the same with room slopes too
        Quantity byHand = new HeldVariances(fit, squared(2), 1, 2)
                .estimate(new double[rooms.size()], row)
                .orElseThrow();
        Quantity byShift =
                new HeldVariances(fit, rooms, 1, 2).estimate(shifts, row).orElseThrow();
        assertThat(byShift.value()).isEqualTo(byHand.value(), within(1e-8));
        assertThat(byShift.standardError()).isEqualTo(byHand.standardError(), within(1e-8));
    }

    /** Columns (d + shift), its square, and the response, of the days of the sleep study. */
    private static List<RoomSessions> squared(double shift) {
        return Golden.rooms("data/sleepstudy.csv", row -> row.get("Subject"), row -> "", row -> {
            double day = Golden.number(row, "Days") + shift;
            return new double[] {day, day * day, Golden.number(row, "Reaction")};
        });
    }

    @Test
    void refusesAPenalisedCurve() {
        List<RoomSessions> rooms = squared(0);
        NestedFit fit = (NestedFit) NestedModel.withDefaults()
                .with(Sessions.ALIKE)
                .withSmooth(List.of(2))
                .fit(rooms);

        assertThatThrownBy(() -> new HeldVariances(fit, rooms, 1, 2)).hasMessageContaining("without a penalised curve");
    }
}
