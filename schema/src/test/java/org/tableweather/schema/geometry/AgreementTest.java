package org.tableweather.schema.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.schema.geometry.Paths.NAN;
import static org.tableweather.schema.geometry.Paths.diamonds;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.Contact.Point;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.record.Trial;

class AgreementTest {

    /** Source: law of propagation by hand: u(typed) = 1°/√12, so k·u = 3·√(1/12 + 0.4²) = 1.4799. */
    @Test
    void theBoundJoinsBothUncertainties() {
        Agreement agreement = Agreement.ofReading(45, 1, new Measured(46.4, 0.4));
        assertThat(agreement.difference()).isCloseTo(-1.4, within(1e-12));
        assertThat(agreement.bound()).isCloseTo(3 * Math.sqrt(1.0 / 12 + 0.16), within(1e-12));
        assertThat(agreement.holds()).isTrue();
        assertThat(Agreement.ofReading(45, 1, new Measured(46.5, 0.4)).holds()).isFalse();
        assertThat(Agreement.ofReading(NAN, 1, new Measured(46.5, 0.4)).holds()).isFalse();
    }

    private final TableSize table = TableSize.REFERENCE;
    private final Shot shot =
            Paths.shot(new Shot.Position(1.27, 2), List.of(Rail.NEAR), new Shot.Position(7, 4), Rail.FAR);

    private PathReduction.Reduced marked() {
        return Paths.reduced(new PathReducer(table, MarkingError.byEye(table))
                .reduce(
                        List.of(
                                diamonds(1, Point.START, null, 1.27, 2),
                                diamonds(2, Point.RAIL, Rail.NEAR, 3.18, 0.09),
                                diamonds(3, Point.RAIL, Rail.FAR, 6.8, 3.91)),
                        shot));
    }

    /** Source: triangles of the marks: approach atan(1.91/1.91) = 45°, rebound atan(3.62/3.82) = 43.46°, 0.2 short. */
    @Test
    void typedFiguresStandBesideTheMarkedOnes() {
        Map<String, Agreement> pairs =
                new TypedAgainstMarked(TypedResolution.BY_EYE).compare(trial(45, 43, NAN, -0.2), marked());
        assertThat(pairs).containsOnlyKeys("approach_angle_deg", "rebound_angle_deg", "landing_offset_dia");
        assertThat(pairs.values()).allMatch(Agreement::holds);
        assertThat(pairs.get("rebound_angle_deg").reduced().value())
                .isCloseTo(Math.toDegrees(Math.atan2(3.62, 3.82)), within(1e-9));
    }

    @Test
    void aFigureFromTheRailInsteadOfTheNormalDisagrees() {
        Map<String, Agreement> pairs =
                new TypedAgainstMarked(TypedResolution.BY_EYE).compare(trial(30, 60, 43, 0.2), marked());
        assertThat(pairs.get("approach_angle_deg").holds()).isFalse();
        assertThat(pairs.get("rebound_angle_deg").holds()).isFalse();
        assertThat(pairs.get("final_rebound_angle_deg").holds()).isTrue();
        // The sign turned round: 0.4 diamond apart against 3·√2·0.1/√12 = 0.12.
        assertThat(pairs.get("landing_offset_dia").holds()).isFalse();
    }

    private static Trial trial(double approach, double rebound, double last, double offset) {
        return new Trial(
                "s",
                "1",
                Optional.empty(),
                Kind.REBOUND,
                "test",
                "",
                NAN,
                NAN,
                approach,
                NAN,
                NAN,
                NAN,
                NAN,
                rebound,
                NAN,
                last,
                offset,
                Made.NOT_STATED,
                -1,
                NAN,
                NAN,
                NAN,
                NAN,
                NAN,
                -1,
                NAN,
                NAN,
                "",
                Climate.NONE);
    }
}
