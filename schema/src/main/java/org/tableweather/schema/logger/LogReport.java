package org.tableweather.schema.logger;

import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * What an import did and met.
 *
 * @param rows rows of data that are not blank
 * @param readings readings taken over
 * @param columns the columns of the log
 * @param guesses what was guessed, in words
 * @param medianStep the usual step from one reading to the next
 * @param gaps steps much longer than usual, in the order of time, the first {@value #KEPT}
 * @param gapCount how many there are
 * @param repeated stamps that occur again, of which the first reading stands, the first {@value #KEPT}
 * @param repeatedCount how many there are
 * @param backwards rows whose time is before that of the row above
 * @param ambiguous stamps in the hour that the end of summer time repeats
 * @param unreadable rows that were left out, the first {@value #KEPT}
 * @param unreadableCount how many there are
 */
public record LogReport(
        long rows,
        long readings,
        List<String> columns,
        List<String> guesses,
        Duration medianStep,
        List<Gap> gaps,
        long gapCount,
        List<Row> repeated,
        long repeatedCount,
        long backwards,
        long ambiguous,
        List<Row> unreadable,
        long unreadableCount) {

    /** How many gaps, repeats and rows are listed; the rest is counted. */
    public static final int KEPT = 20;

    /**
     * A step much longer than usual.
     *
     * @param from last reading before
     * @param to first reading after
     */
    public record Gap(Instant from, Instant to) {}

    /**
     * A row of the log.
     *
     * @param row as a spreadsheet counts
     * @param column the column; empty for the row as a whole
     * @param value what stands there
     * @param reason why it was left out
     */
    public record Row(long row, String column, String value, String reason) {}
}
