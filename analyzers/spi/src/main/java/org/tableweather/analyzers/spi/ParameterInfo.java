package org.tableweather.analyzers.spi;

import java.util.List;

/**
 * One parameter of an analyzer.
 *
 * @param name lower case, snake_case
 * @param meaning in words
 * @param unit UCUM code; {@code 1} for none
 * @param standard the value when none is set; empty when the analyzer chooses from the data
 * @param allowed the allowed values; empty for any
 */
public record ParameterInfo(String name, String meaning, String unit, String standard, List<String> allowed) {

    public ParameterInfo {
        allowed = List.copyOf(allowed);
    }
}
