package org.tableweather.server.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;

/**
 * The form that asks an analyzer: its parameters, those that a reader wants first before the others.
 *
 * @param action address that answers
 * @param first choices shown at once
 * @param more choices shown on request
 */
record QuestionForm(String action, List<Choice> first, List<Choice> more) {
    private static final List<String> FIRST =
            List.of("room", "shot", "response", "humidity_measure", "curve", "subgroup", "method");

    QuestionForm {
        first = List.copyOf(first);
        more = List.copyOf(more);
    }

    /**
     * One parameter.
     *
     * @param name of the parameter
     * @param label in words
     * @param meaning in a sentence
     * @param options to choose from; empty when it is typed
     * @param value as chosen; empty for the standard
     */
    record Choice(String name, String label, String meaning, List<Option> options, String value) {
        Choice {
            options = List.copyOf(options);
        }
    }

    /**
     * One value.
     *
     * @param value as the address has it; empty for the standard
     * @param label in words
     * @param chosen whether it is the one
     */
    record Option(String value, String label, boolean chosen) {}

    /**
     * The form of an analyzer.
     *
     * @param action address that answers
     * @param info its parameters
     * @param known values for parameters that take any: shots, rooms
     * @param chosen what is set now
     */
    static QuestionForm of(
            String action, AnalyzerInfo info, Map<String, List<String>> known, Map<String, String> chosen) {
        List<Choice> first = new ArrayList<>();
        List<Choice> more = new ArrayList<>();
        for (ParameterInfo parameter : info.parameters()) {
            Choice choice = choice(parameter, known, chosen.getOrDefault(parameter.name(), ""));
            (FIRST.contains(parameter.name()) ? first : more).add(choice);
        }
        first.sort((a, b) -> Integer.compare(FIRST.indexOf(a.name()), FIRST.indexOf(b.name())));
        return new QuestionForm(action, first, more);
    }

    private static Choice choice(ParameterInfo parameter, Map<String, List<String>> known, String value) {
        List<String> values =
                parameter.allowed().isEmpty() ? known.getOrDefault(parameter.name(), List.of()) : parameter.allowed();
        List<Option> options = new ArrayList<>();
        if (!values.isEmpty()) {
            if (parameter.standard().isEmpty()) {
                options.add(new Option("", "chosen from the data", value.isEmpty()));
            }
            for (String one : values) {
                boolean chosen = value.isEmpty() ? one.equals(parameter.standard()) : one.equals(value);
                options.add(new Option(one, words(parameter, one), chosen));
            }
            if (!value.isEmpty() && !values.contains(value)) {
                options.add(new Option(value, value, true));
            }
        }
        return new Choice(parameter.name(), label(parameter.name()), parameter.meaning(), options, value);
    }

    private static String label(String name) {
        return switch (name) {
            case "humidity_measure" -> "Humidity taken as";
            case "subgroup" -> "A curve for each";
            case "curve" -> "Shape";
            default -> capital(name.replace('_', ' '));
        };
    }

    /** A value as people read it; ids of shots and rooms stay as they are. */
    private static String words(ParameterInfo parameter, String value) {
        if (parameter.allowed().isEmpty()) {
            return value;
        }
        return switch (value) {
            case "final_rebound_angle_deg" -> "last rebound angle, degrees";
            case "landing_offset_dia" -> "landing offset, diamonds";
            case "speed_kept" -> "speed kept by the rail";
            case "none" -> "nothing";
            default -> value.replace('_', ' ').replace('-', ' ');
        };
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
