package org.tableweather.analyzers.standard.statistics.interlab;

import java.math.BigDecimal;

/**
 * Takes an agreed origin from a decimal text before it becomes a double: {@code 1000000000000.4 − 1000000000000 = 0.4}
 * exactly, where the double nearest to the text has lost its last digits already.
 *
 * @param origin in the unit of the texts
 */
public record DecimalOrigin(BigDecimal origin) {

    /**
     * Text less origin.
     *
     * @param text a decimal number with a point
     * @throws NumberFormatException when it is none
     */
    public double departure(String text) {
        return new BigDecimal(text.trim()).subtract(origin).doubleValue();
    }
}
