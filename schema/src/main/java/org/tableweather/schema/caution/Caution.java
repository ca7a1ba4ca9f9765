package org.tableweather.schema.caution;

/**
 * One piece of advice.
 *
 * @param id {@code subject.what}, never renamed: {@code heat.index}
 * @param level how grave
 * @param advice what is the matter and what to do, with figures and units, ending with who has the last word
 * @param value what was found, in {@code unit}
 * @param bound what it is held against, in {@code unit}
 * @param unit of value and bound, for people
 * @param reference key in {@code references.bib}
 */
public record Caution(
        String id, Level level, String advice, double value, double bound, String unit, String reference) {

    /** How grave a caution is. */
    public enum Level {
        /** Good to know. */
        NOTE,
        /** Act before or during the session. */
        CAUTION,
        /** Do not go on like this. */
        DANGER
    }

    /** How each advice ends. */
    static final String DEFERENCE = "Local codes and people licensed for the work have the last word.";

    /** A caution whose advice ends with {@link #DEFERENCE}. */
    static Caution deferring(
            String id, Level level, String advice, double value, double bound, String unit, String reference) {
        return new Caution(id, level, advice + " " + DEFERENCE, value, bound, unit, reference);
    }
}
