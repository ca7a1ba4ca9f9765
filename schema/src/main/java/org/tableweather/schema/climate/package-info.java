/**
 * The physics of moist room air: pure functions on numbers, one formula in one place.
 *
 * <p>Relative humidity is over liquid water at every temperature, as hygrometers and the meteorological convention have it; below
 * 0 °C it is over supercooled water, never over ice. Every formula states the interval in which it holds and gives an {@link
 * java.lang.IllegalArgumentException} outside it, never a number. A {@link org.tableweather.schema.climate.MoistAir} knows the
 * {@link org.tableweather.schema.climate.VapourFormula} behind its values.
 */
package org.tableweather.schema.climate;
