package org.tableweather.schema.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.schema.geometry.Paths.NAN;
import static org.tableweather.schema.geometry.Paths.diamonds;
import static org.tableweather.schema.geometry.Paths.metres;
import static org.tableweather.schema.geometry.Paths.reduced;
import static org.tableweather.schema.geometry.Paths.refused;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.schema.geometry.PathReduction.Reason;
import org.tableweather.schema.geometry.PathReduction.Refused;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Contact.Point;
import org.tableweather.schema.record.Rail;

class PathRefusalTest {

    private static final TableSize TABLE = TableSize.REFERENCE;

    private static PathReduction reduce(Contact... contacts) {
        return new PathReducer(TABLE, MarkingError.byEye(TABLE)).reduce(List.of(contacts));
    }

    private static void assertRefused(Reason reason, int seq, Contact... contacts) {
        Refused refused = refused(reduce(contacts));
        assertThat(refused.reason()).isEqualTo(reason);
        assertThat(refused.seq()).isEqualTo(seq);
        assertThat(refused.remedy()).isNotBlank();
    }

    private static final Contact START = diamonds(1, Point.START, null, 2, 2);
    private static final Contact NEAR = diamonds(2, Point.RAIL, Rail.NEAR, 3, 0.09);
    private static final Contact REST = diamonds(3, Point.REST, null, 4, 2);

    @Test
    void acceptsThePathThatTheOthersSpoil() {
        assertThat(reduced(reduce(START, NEAR, REST)).touches()).hasSize(1);
    }

    @Test
    void tooFewPoints() {
        assertRefused(Reason.TOO_FEW_POINTS, 0);
        assertRefused(Reason.TOO_FEW_POINTS, 0, START);
    }

    @Test
    void outOfSequence() {
        assertRefused(Reason.OUT_OF_SEQUENCE, 2, START, diamonds(2, Point.START, null, 3, 3), REST);
        assertRefused(Reason.OUT_OF_SEQUENCE, 2, START, diamonds(2, Point.REST, null, 3, 3), REST);
        assertRefused(Reason.OUT_OF_SEQUENCE, 2, START, NEAR, diamonds(2, Point.RAIL, Rail.FAR, 5, 3.9), REST);
    }

    @Test
    void noPositionOrTwo() {
        assertRefused(Reason.NO_POSITION, 2, START, diamonds(2, Point.RAIL, Rail.NEAR, 3, NAN), REST);
        Contact both = new Contact("s", "1", 2, Point.RAIL, Optional.of(Rail.NEAR), 3, 0.09, 0.98, 0.0286, NAN);
        Contact differ = new Contact("s", "1", 2, Point.RAIL, Optional.of(Rail.NEAR), 3, 0.09, 0.88, 0.0286, NAN);
        // 3 diamonds are 952.5 mm: 980 mm is 27.5 mm off, not more than nine tenths of a radius but one twentieth over.
        assertRefused(Reason.TWO_POSITIONS, 2, START, both, REST);
        assertRefused(Reason.TWO_POSITIONS, 2, START, differ, REST);
    }

    @Test
    void railNotNamed() {
        assertRefused(Reason.RAIL_NOT_NAMED, 2, START, diamonds(2, Point.RAIL, null, 3, 0.09), REST);
    }

    @Test
    void outsideTheBed() {
        assertRefused(Reason.OUTSIDE_THE_BED, 1, diamonds(1, Point.START, null, 2, 4.2), NEAR, REST);
        assertRefused(Reason.OUTSIDE_THE_BED, 3, START, NEAR, diamonds(3, Point.REST, null, 8.3, 2));
    }

    @Test
    void aBallThatRestsInAPocketMayBeMarkedUpToTheNoses() {
        assertThat(reduced(reduce(START, NEAR, diamonds(3, Point.REST, null, 8, 4)))
                        .touches())
                .hasSize(1);
    }

    /** A contact marked on the nose line itself is always noticed, on every published size of table and ball. */
    @ParameterizedTest
    @CsvSource({"2.54, 1.27, 0.05715", "1.9812, 0.9906, 0.05715", "2.84, 1.42, 0.0615", "3.569, 1.778, 0.0525"})
    void aContactMarkedOnTheNose(double length, double width, double ball) {
        TableSize table = new TableSize(length, width, ball);
        PathReducer reducer = new PathReducer(table, MarkingError.byEye(table));
        Refused refused = refused(reducer.reduce(List.of(START, diamonds(2, Point.RAIL, Rail.NEAR, 3, 0), REST)));
        assertThat(refused.reason()).isEqualTo(Reason.OFF_ITS_RAIL);
        assertThat(refused.remedy()).contains("one ball radius");
    }

    @Test
    void offItsRail() {
        assertRefused(Reason.OFF_ITS_RAIL, 2, START, diamonds(2, Point.RAIL, Rail.FAR, 3, 0.09), REST);
        assertRefused(Reason.OFF_ITS_RAIL, 2, START, diamonds(2, Point.RAIL, Rail.NEAR, 8.3, 0.09), REST);
    }

    @Test
    void theSameRailTwiceInARow() {
        assertRefused(
                Reason.IMPOSSIBLE_ORDER,
                3,
                START,
                NEAR,
                diamonds(3, Point.RAIL, Rail.NEAR, 4, 0.09),
                diamonds(4, Point.REST, null, 5, 1));
        // With a ball in between it is possible.
        Contact ball = diamonds(3, Point.BALL, null, 3.5, 0.5);
        Contact again = diamonds(4, Point.RAIL, Rail.NEAR, 4, 0.09);
        assertThat(reduced(reduce(START, NEAR, ball, again)).touches()).hasSize(2);
    }

    @Test
    void samePlaceTwice() {
        assertRefused(
                Reason.SAME_PLACE,
                3,
                START,
                diamonds(2, Point.RAIL, Rail.NEAR, 7.91, 0.09),
                diamonds(3, Point.RAIL, Rail.FOOT, 7.91, 0.09));
        assertRefused(Reason.SAME_PLACE, 3, START, NEAR, diamonds(3, Point.REST, null, 3, 0.05));
    }

    @Test
    void timesThatDoNotIncrease() {
        Contact start = metres(1, Point.START, null, 0.6, 0.6, 0);
        Contact rail = metres(2, Point.RAIL, Rail.NEAR, 1, 0.0286, 0.5);
        assertRefused(Reason.TIMES_NOT_INCREASING, 3, start, rail, metres(3, Point.REST, null, 1.4, 0.6, 0.5));
        Contact untimed = metres(2, Point.RAIL, Rail.NEAR, 1, 0.0286, NAN);
        assertRefused(Reason.TIMES_NOT_INCREASING, 3, start, untimed, metres(3, Point.REST, null, 1.4, 0.6, -0.1));
        assertThat(reduced(reduce(start, untimed, metres(3, Point.REST, null, 1.4, 0.6, 0.9)))
                        .touches()
                        .get(0)
                        .approachSpeedMps())
                .isEmpty();
    }

    /** Source: definition: three standard uncertainties, at least 5 mm, at most nine tenths of a radius. */
    @Test
    void theToleranceFollowsTheMarkingError() {
        assertThat(new MarkingError(0.001, 0).toleranceM(TABLE)).isCloseTo(0.005, within(1e-12));
        assertThat(new MarkingError(0.004, 0).toleranceM(TABLE)).isCloseTo(0.012, within(1e-12));
        assertThat(new MarkingError(0.1, 0).toleranceM(TABLE)).isCloseTo(0.9 * 0.028575, within(1e-12));
    }

    /** Source: JCGM100, a reading to the nearest step δ: 0.29 δ. */
    @Test
    void theDefaultReadsToATenthOfADiamond() {
        assertThat(MarkingError.byEye(TABLE).pointM() / (0.1 * 0.3175)).isCloseTo(0.29, within(0.005));
    }
}
