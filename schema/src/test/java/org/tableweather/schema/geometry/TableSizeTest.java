package org.tableweather.schema.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

class TableSizeTest {

    private static final double MM = 1e-3;

    /** Source: rule of the mirror image, lines one ball radius inside the noses: 2482.85 × 1212.85 mm. */
    @Test
    void centresTravelTheBedLessOneBall() {
        assertThat(TableSize.REFERENCE.centreLengthM()).isCloseTo(2482.85 * MM, within(1e-12));
        assertThat(TableSize.REFERENCE.centreWidthM()).isCloseTo(1212.85 * MM, within(1e-12));
    }

    /** Source: WpaEquipment, sights 12.5 in apart on a 9 ft and 11.5 in on an 8 ft table; UmbRules, 355 mm. */
    @Test
    void aDiamondIsThePublishedDistanceBetweenSights() {
        assertThat(TableSize.REFERENCE.diamondAlongM()).isCloseTo(12.5 * 25.4 * MM, within(1e-12));
        assertThat(TableSize.REFERENCE.diamondAcrossM()).isCloseTo(12.5 * 25.4 * MM, within(1e-12));
        TableSize eight = new TableSize(2.3368, 1.1684, 0.05715);
        assertThat(eight.diamondAlongM()).isCloseTo(11.5 * 25.4 * MM, within(1e-12));
        assertThat(new TableSize(2.84, 1.42, 0.0615).diamondAlongM()).isCloseTo(355 * MM, within(1e-12));
    }

    /** Source: rules of snooker, 3569 × 1778 mm, which is not two to one: 446.125 mm along, 444.5 mm across. */
    @Test
    void keepsDiamondsAlongAndAcrossApart() {
        TableSize snooker = new TableSize(3.569, 1.778, 0.0525);
        TablePoint middle = snooker.point(1, 1);
        assertThat(middle.xM()).isCloseTo(0.446125, within(1e-12));
        assertThat(middle.yM()).isCloseTo(0.4445, within(1e-12));
        assertThat(snooker.diamondAlongM(Rail.FOOT)).isCloseTo(0.4445, within(1e-12));
        assertThat(snooker.diamondAlongM(Rail.NEAR)).isCloseTo(0.446125, within(1e-12));
    }

    @Property(seed = "20250301")
    void diamondsToMetresAndBack(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 8) double xDia,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 4) double yDia,
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 4) double lengthM,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 2) double widthM) {
        TableSize table = new TableSize(lengthM, widthM, 0.05);
        Shot.Position back = table.diamonds(table.point(xDia, yDia));
        assertThat(back.xDia()).isCloseTo(xDia, within(1e-13));
        assertThat(back.yDia()).isCloseTo(yDia, within(1e-13));
    }

    @Property(seed = "20250302")
    void aBallThatTouchesARailIsOneRadiusFromItsNose(
            @ForAll Rail rail, @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double at) {
        TableSize table = new TableSize(2.84, 1.42, 0.0615);
        TablePoint held = table.heldTo(rail, new TablePoint(at, at));
        double nose = rail == Rail.FOOT ? 2.84 : rail == Rail.FAR ? 1.42 : 0;
        double across = rail == Rail.HEAD || rail == Rail.FOOT ? held.xM() : held.yM();
        assertThat(Math.abs(across - nose)).isCloseTo(0.03075, within(1e-12));
    }

    @Test
    void refusesWhatIsNoTable() {
        assertThatThrownBy(() -> new TableSize(2.54, Double.NaN, 0.05715)).isInstanceOf(IllegalArgumentException.class);
        assertThat(TableSize.of(2.54, 1.27, 0.7)).isEmpty();
        assertThat(TableSize.of(-2.54, 1.27, 0.05)).isEmpty();
        assertThat(TableSize.of(Double.POSITIVE_INFINITY, 1.27, 0.05)).isEmpty();
    }

    @Test
    void takesWhatIsStatedAndTheUsualForTheRest() {
        assertThat(TableSize.stated(table(OptionalDouble.of(2540), OptionalDouble.empty()), Optional.empty(), 0.05715))
                .contains(TableSize.REFERENCE);
        BallSet worn = new BallSet(
                "b",
                Optional.empty(),
                OptionalDouble.of(56.9),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty());
        assertThat(TableSize.stated(
                        table(OptionalDouble.of(2540), OptionalDouble.of(1268)), Optional.of(worn), 0.05715))
                .contains(new TableSize(2.54, 1.268, 0.0569));
        assertThat(TableSize.stated(table(OptionalDouble.empty(), OptionalDouble.of(1270)), Optional.empty(), 0.05715))
                .isEmpty();
    }

    private static PoolTable table(OptionalDouble lengthMm, OptionalDouble widthMm) {
        return new PoolTable("t", "r", lengthMm, widthMm, Optional.empty(), Optional.empty(), Optional.empty());
    }
}
