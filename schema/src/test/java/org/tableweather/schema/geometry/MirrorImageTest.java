package org.tableweather.schema.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.schema.record.Rail;

class MirrorImageTest {

    private static final double INCH = 0.0254;

    private static MirrorPath.Found found(MirrorPath path) {
        assertThat(path).isInstanceOf(MirrorPath.Found.class);
        return (MirrorPath.Found) path;
    }

    private static MirrorPath.Reason reason(MirrorPath path) {
        assertThat(path).isInstanceOf(MirrorPath.Impossible.class);
        return ((MirrorPath.Impossible) path).reason();
    }

    /**
     * Source: exact unfolding on the rectangle of centres, worked by hand: from (25, 12.5) in off the far rail, centres at
     * y = 48.875 in, to (75, 12.5) in the ball bounces at x = 50 in; the path is √(50² + 72.75²) = 88.275 in long and meets
     * the rail at atan(72.75/50) = 55.50°.
     */
    @Test
    void oneRailWorkedByHand() {
        MirrorPath.Found path = found(new MirrorImage(TableSize.REFERENCE)
                .between(
                        new TablePoint(25 * INCH, 12.5 * INCH),
                        List.of(Rail.FAR),
                        new TablePoint(75 * INCH, 12.5 * INCH)));
        assertThat(path.contact(0).xM() / INCH).isCloseTo(50, within(1e-10));
        assertThat(path.contact(0).yM() / INCH).isCloseTo(48.875, within(1e-10));
        assertThat(path.lengthM() / INCH).isCloseTo(Math.sqrt(50 * 50 + 72.75 * 72.75), within(1e-10));
        assertThat(90 - path.approachAngleDeg(0)).isCloseTo(55.50, within(0.005));
    }

    /**
     * Source: every closed path parallel to the diagonals of a rectangle of centres is as long as both diagonals,
     * 2·√(length² + width²): 217.579 in, 5.072152 m, 7.834060 m, 6.185656 m.
     */
    @ParameterizedTest
    @CsvSource({
        "2.54, 1.27, 0.05715, 5.526500", "2.3368, 1.1684, 0.05715, 5.072152",
        "3.569, 1.778, 0.0525, 7.834060", "2.84, 1.42, 0.0615, 6.185656"
    })
    void aRoundOfTheTableIsAsLongAsBothDiagonals(double length, double width, double ball, double metres) {
        TableSize table = new TableSize(length, width, ball);
        TablePoint start = new TablePoint(ball / 2 + 0.3 * table.centreLengthM(), ball / 2);
        TablePoint towards = new TablePoint(start.xM() + table.centreLengthM(), start.yM() + table.centreWidthM());
        MirrorPath.Found path = found(new MirrorImage(table).shoot(start, towards, 4));
        assertThat(path.lengthM()).isCloseTo(metres, within(1e-6));
        assertThat(path.points().get(4).distanceM(start)).isLessThan(1e-12);
    }

    /** Source: definition of the mirror image: in the unfolded tables the path is straight, and angles are equal. */
    @Property(seed = "20250303", tries = 2000)
    void isStraightInTheMirroredTables(
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 1) double x,
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 0.9) double y,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 6.283185) double heading,
            @ForAll @IntRange(min = 1, max = 6) int rails,
            @ForAll @Scale(6) @DoubleRange(min = 1.5, max = 4) double length,
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 2) double width) {
        TableSize table = new TableSize(length, width, 0.06);
        TablePoint start = new TablePoint(x, y);
        TablePoint towards = new TablePoint(x + Math.cos(heading), y + Math.sin(heading));
        MirrorPath shot = new MirrorImage(table).shoot(start, towards, rails + 1);
        Assume.that(shot instanceof MirrorPath.Found);
        MirrorPath.Found path = (MirrorPath.Found) shot;
        List<TablePoint> laidOut = path.unfolded();
        TablePoint end = laidOut.get(laidOut.size() - 1);
        assertThat(end.distanceM(start)).isCloseTo(path.lengthM(), within(1e-11));
        for (TablePoint point : laidOut) {
            double off = (point.xM() - x) * Math.sin(heading) - (point.yM() - y) * Math.cos(heading);
            assertThat(off).isCloseTo(0, within(1e-11));
        }
        for (int i = 0; i < rails; i++) {
            assertThat(path.reboundAngleDeg(i)).isCloseTo(path.approachAngleDeg(i), within(1e-9));
        }
    }

    @Property(seed = "20250304", tries = 2000)
    void betweenFindsWhatShootFollowed(
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 2.4) double x,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 1.1) double y,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 6.283185) double heading,
            @ForAll @IntRange(min = 1, max = 6) int rails) {
        MirrorImage mirror = new MirrorImage(TableSize.REFERENCE);
        TablePoint start = new TablePoint(x, y);
        TablePoint towards = new TablePoint(x + Math.cos(heading), y + Math.sin(heading));
        MirrorPath shot = mirror.shoot(start, towards, rails + 1);
        Assume.that(shot instanceof MirrorPath.Found);
        MirrorPath.Found followed = (MirrorPath.Found) shot;
        MirrorPath.Found solved =
                found(mirror.between(start, followed.rails(), followed.points().get(rails + 1)));
        for (int i = 0; i < followed.points().size(); i++) {
            assertThat(solved.points().get(i).distanceM(followed.points().get(i)))
                    .isLessThan(1e-9);
        }
    }

    @Test
    void saysWhyThereIsNoPath() {
        MirrorImage mirror = new MirrorImage(TableSize.REFERENCE);
        TablePoint start = new TablePoint(0.5, 0.5);
        TablePoint end = new TablePoint(1.5, 0.5);
        // The same rail twice in a row; and a near rail that is met before the head rail, not after it.
        assertThat(reason(mirror.between(start, List.of(Rail.FAR, Rail.FAR), end)))
                .isEqualTo(MirrorPath.Reason.RAILS_NOT_MET_IN_ORDER);
        assertThat(reason(mirror.between(start, List.of(Rail.FOOT, Rail.HEAD, Rail.NEAR), end)))
                .isEqualTo(MirrorPath.Reason.RAILS_NOT_MET_IN_ORDER);
        assertThat(reason(mirror.between(new TablePoint(0, 0.5), List.of(Rail.FAR), end)))
                .isEqualTo(MirrorPath.Reason.OUTSIDE_THE_BED);
        assertThat(reason(mirror.shoot(start, start, 1))).isEqualTo(MirrorPath.Reason.NO_DIRECTION);
        double line = TableSize.REFERENCE.lineM(Rail.FAR);
        TablePoint fromCorner = new TablePoint(TableSize.REFERENCE.lineM(Rail.FOOT) - 0.5, line - 0.5);
        assertThat(reason(mirror.shoot(fromCorner, new TablePoint(fromCorner.xM() + 1, fromCorner.yM() + 1), 1)))
                .isEqualTo(MirrorPath.Reason.INTO_A_CORNER);
    }
}
