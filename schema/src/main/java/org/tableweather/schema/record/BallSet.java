package org.tableweather.schema.record;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A set of balls.
 *
 * @param id unique in the contribution
 * @param material {@code phenolic}, {@code polyester} ...
 * @param diameterMm mm
 * @param massG g
 * @param madeOn date of manufacture or purchase
 * @param cleanedOn date last cleaned
 */
public record BallSet(
        String id,
        Optional<String> material,
        OptionalDouble diameterMm,
        OptionalDouble massG,
        Optional<LocalDate> madeOn,
        Optional<LocalDate> cleanedOn) {}
