package org.tableweather.analyzers.spi;

import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Parameter values, each known to the analyzer and allowed. Immutable.
 *
 * @param values by name; only those that are set or have a standard value
 */
public record Parameters(SortedMap<String, String> values) {

    public Parameters {
        values = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(values));
    }

    /**
     * Checks what a user set, and fills in the standard values.
     *
     * @param info whose parameters
     * @param set by name
     * @throws IllegalArgumentException for an unknown name or a value that is not allowed; the message holds name, value,
     *     what is allowed, and the remedy
     */
    public static Parameters of(AnalyzerInfo info, Map<String, String> set) {
        SortedMap<String, String> values = new TreeMap<>();
        for (ParameterInfo parameter : info.parameters()) {
            String value = set.getOrDefault(parameter.name(), parameter.standard());
            if (value.isEmpty()) {
                continue;
            }
            if (!parameter.allowed().isEmpty() && !parameter.allowed().contains(value)) {
                throw new IllegalArgumentException("parameter " + parameter.name() + " = " + value + " is not one of "
                        + String.join(", ", parameter.allowed()) + ": choose one of them");
            }
            values.put(parameter.name(), value);
        }
        for (String name : set.keySet()) {
            if (info.parameters().stream()
                    .noneMatch(parameter -> parameter.name().equals(name))) {
                throw new IllegalArgumentException("parameter " + name + " is unknown to " + info.id() + ": it takes "
                        + String.join(
                                ", ",
                                info.parameters().stream()
                                        .map(ParameterInfo::name)
                                        .toList()));
            }
        }
        return new Parameters(values);
    }

    /** The text of a parameter, empty when it is not set and has no standard value. */
    public Optional<String> text(String name) {
        return Optional.ofNullable(values.get(name));
    }

    /**
     * The number of a parameter.
     *
     * @throws IllegalArgumentException when it is set but no finite number
     */
    public Optional<Double> number(String name) {
        return text(name).map(text -> {
            try {
                double number = Double.parseDouble(text);
                if (Double.isFinite(number)) {
                    return number;
                }
            } catch (NumberFormatException e) {
                // told below, with the name
            }
            throw new IllegalArgumentException("parameter " + name + " = " + text + " is not a finite number");
        });
    }
}
