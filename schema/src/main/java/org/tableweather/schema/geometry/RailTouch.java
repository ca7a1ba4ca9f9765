package org.tableweather.schema.geometry;

import java.util.Optional;
import org.tableweather.schema.record.Rail;

/**
 * One rail contact of a marked path.
 *
 * <p>Legs are straight: a curved path gives the angle of its chord. Speeds are means over the whole leg, so they lie below
 * the speed at the rail before it and above the one after it.
 *
 * @param seq number of the marked point
 * @param rail which
 * @param at ball's centre, held to the line where it touches the rail
 * @param offLineM how far the mark was from that line, m, positive towards the cushion
 * @param travel direction along the rail on arrival: +1 towards larger x or y, −1 towards smaller, 0 straight at it
 * @param approachAngleDeg arrival, degrees from the normal, ≥ 0; empty when nothing is marked before
 * @param reboundAngleDeg departure, degrees from the normal: positive when it runs on in the direction of arrival, negative
 *     when it comes back on the side it came from; positive when it arrived straight; empty when nothing is marked after
 * @param approachSpeedMps mean over the leg before, m/s; empty without times
 * @param reboundSpeedMps mean over the leg after, m/s; empty without times
 */
public record RailTouch(
        int seq,
        Rail rail,
        TablePoint at,
        double offLineM,
        int travel,
        Optional<Measured> approachAngleDeg,
        Optional<Measured> reboundAngleDeg,
        Optional<Measured> approachSpeedMps,
        Optional<Measured> reboundSpeedMps) {}
