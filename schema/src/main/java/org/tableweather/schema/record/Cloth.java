package org.tableweather.schema.record;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The cloth of a table.
 *
 * @param woolPct wool by mass, %
 * @param nylonPct nylon by mass, %
 * @param polyesterPct polyester by mass, %
 * @param weave {@code worsted}, {@code napped} ...
 * @param weightGsm mass per area, g/m²
 * @param fittedOn date of fitting
 */
public record Cloth(
        OptionalDouble woolPct,
        OptionalDouble nylonPct,
        OptionalDouble polyesterPct,
        Optional<String> weave,
        OptionalDouble weightGsm,
        Optional<LocalDate> fittedOn) {}
