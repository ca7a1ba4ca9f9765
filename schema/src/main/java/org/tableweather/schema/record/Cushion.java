package org.tableweather.schema.record;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The rail rubber.
 *
 * @param rubber {@code natural}, {@code synthetic} ...
 * @param fittedOn date of fitting
 * @param noseHeightMm height of the nose over the bed, mm
 */
public record Cushion(Optional<String> rubber, Optional<LocalDate> fittedOn, OptionalDouble noseHeightMm) {}
