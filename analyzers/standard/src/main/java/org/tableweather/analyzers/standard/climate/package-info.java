/**
 * What the room's air does to the cloth, and how well that is known: instruments and their corrections, uncertainty of what is
 * computed from them, the air at the bed, the cloth's moisture and how it settles.
 *
 * <p>The formulas of moist air themselves are in {@link org.tableweather.schema.climate}.
 */
package org.tableweather.analyzers.standard.climate;
