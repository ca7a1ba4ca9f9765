package org.tableweather.server.web;

import jakarta.ws.rs.core.MultivaluedMap;
import java.util.OptionalDouble;

/**
 * A number that a person typed into a form, and what is wrong with it.
 *
 * @param name of the parameter
 * @param label with the unit
 * @param typed as it came; empty when not given
 * @param minimum least that is taken
 * @param maximum most that is taken
 * @param problem what to mend, in words; empty when nothing
 */
public record Field(String name, String label, String typed, double minimum, double maximum, String problem) {

    /**
     * Reads a number; a comma may stand for the decimal point.
     *
     * @param query parameters of the address
     * @param name of the parameter
     * @param label with the unit
     * @param minimum least that is taken
     * @param maximum most that is taken
     */
    public static Field of(
            MultivaluedMap<String, String> query, String name, String label, double minimum, double maximum) {
        String text = query.getFirst(name);
        String typed = text == null ? "" : text.strip();
        return new Field(name, label, typed, minimum, maximum, problem(typed, label, minimum, maximum));
    }

    /** The number; empty when none was typed, or none that can be taken. */
    public OptionalDouble value() {
        return typed.isEmpty() || !problem.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(typed));
    }

    /** The number as the form's input takes it. */
    public String shown() {
        return typed;
    }

    /** Whether something is to be mended. */
    public boolean isBad() {
        return !problem.isEmpty();
    }

    /** Bounds in words. */
    public String bounds() {
        return plain(minimum) + " to " + plain(maximum);
    }

    private static String problem(String typed, String label, double minimum, double maximum) {
        if (typed.isEmpty()) {
            return "";
        }
        double number;
        try {
            number = number(typed);
        } catch (NumberFormatException e) {
            return label + ": " + typed + " is no number. Type figures alone, such as " + plain((minimum + maximum) / 2)
                    + ".";
        }
        if (number >= minimum && number <= maximum) {
            return "";
        }
        return label + ": " + typed + " lies outside " + plain(minimum) + " to " + plain(maximum)
                + ". Check the unit and the decimal point.";
    }

    private static double number(String typed) {
        double number = Double.parseDouble(typed.replace(',', '.'));
        if (!Double.isFinite(number)) {
            throw new NumberFormatException(typed);
        }
        return number;
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
