package org.tableweather.release;

import org.tableweather.schema.record.ClimateReading;

/**
 * A reading as a row of its table.
 *
 * @param roomKey of a room in which the instrument served
 * @param contribution that has the reading
 * @param reading as written, temperatures in °C
 */
record ReadingRow(String roomKey, String contribution, ClimateReading reading) {}
