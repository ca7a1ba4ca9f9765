package org.tableweather.server.catalogue;

import java.util.OptionalDouble;
import org.tableweather.schema.record.Room;

/** Where a room is, as far as the public may know: to 0.1 degrees, about 10 km. */
final class PublicPosition {
    private static final double STEPS_PER_DEGREE = 10;

    private PublicPosition() {}

    /** The room with its position rounded. */
    static Room rounded(Room room) {
        return new Room(
                room.id(),
                room.name(),
                room.country(),
                rounded(room.latitude()),
                rounded(room.longitude()),
                room.altitudeM(),
                room.climateControl());
    }

    /** Whether the position is known more closely than that. */
    static boolean isExact(Room room) {
        return !rounded(room.latitude()).equals(room.latitude())
                || !rounded(room.longitude()).equals(room.longitude());
    }

    private static OptionalDouble rounded(OptionalDouble degrees) {
        return degrees.isEmpty()
                ? degrees
                : OptionalDouble.of(Math.rint(degrees.getAsDouble() * STEPS_PER_DEGREE) / STEPS_PER_DEGREE);
    }
}
