package org.tableweather.schema.record;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A test shot, in diamonds so that it fits a table of any size.
 *
 * @param id unique; a shot of the built-in catalogue needs no entry in a contribution
 * @param kind what it tests
 * @param title in words
 * @param start where the ball that is watched starts
 * @param aim the point of the first rail that it is aimed at
 * @param rails the rails in the order they are touched
 * @param target where it should land, on the target rail
 * @param targetRail the rail along which the landing offset is read
 * @param approachAngleDeg nominal angle of arrival at the first rail, degrees from the normal
 * @param approachSpeedMps nominal speed of arrival at the first rail, m/s
 * @param delivery {@code ramp} or {@code cue}
 * @param keepConstant what must stay the same from attempt to attempt
 * @param howToLog what to write down, and how
 */
public record Shot(
        String id,
        Kind kind,
        Optional<String> title,
        Optional<Position> start,
        Optional<Position> aim,
        List<Rail> rails,
        Optional<Position> target,
        Optional<Rail> targetRail,
        OptionalDouble approachAngleDeg,
        OptionalDouble approachSpeedMps,
        Optional<String> delivery,
        List<String> keepConstant,
        Optional<String> howToLog) {

    public Shot {
        rails = rails == null ? List.of() : List.copyOf(rails);
        keepConstant = keepConstant == null ? List.of() : List.copyOf(keepConstant);
    }

    /**
     * A point of the table frame.
     *
     * @param xDia along the long rail from the head rail, diamonds 0..8
     * @param yDia across, diamonds 0..4
     */
    public record Position(double xDia, double yDia) {}
}
