package org.tableweather.schema.caution;

import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import org.tableweather.schema.climate.MoistAir;

/**
 * A climate that a plan asks for, or a session had.
 *
 * @param air the room's air
 * @param held how long it is held
 * @param bedC temperature of the bed, °C, where known
 * @param circuits the circuits that feed the appliances, where known
 * @param attendance whether someone stays while they run
 */
public record HeldClimate(
        MoistAir air, Duration held, OptionalDouble bedC, List<Circuit> circuits, Attendance attendance) {

    /** Whether someone stays with the appliances. */
    public enum Attendance {
        ATTENDED,
        UNATTENDED
    }

    public HeldClimate {
        if (held.isNegative()) {
            throw new IllegalArgumentException("held " + held + " must not be negative");
        }
        circuits = List.copyOf(circuits);
    }

    /** A climate held with people in the room, and nothing known of bed and circuits. */
    public static HeldClimate of(MoistAir air, Duration held) {
        return new HeldClimate(air, held, OptionalDouble.empty(), List.of(), Attendance.ATTENDED);
    }

    /** The same with a bed reading. */
    public HeldClimate withBed(double bed) {
        return new HeldClimate(air, held, OptionalDouble.of(bed), circuits, attendance);
    }

    /** The same with circuits. */
    public HeldClimate with(List<Circuit> fed) {
        return new HeldClimate(air, held, bedC, fed, attendance);
    }

    /** The same with or without someone in the room. */
    public HeldClimate with(Attendance other) {
        return new HeldClimate(air, held, bedC, circuits, other);
    }
}
