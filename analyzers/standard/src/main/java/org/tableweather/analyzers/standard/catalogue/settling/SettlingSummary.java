package org.tableweather.analyzers.standard.catalogue.settling;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocol;

/**
 * What is kept of a session: how each outcome of each shot went on after the climate was set.
 *
 * @param table id of the table
 * @param settledFromS since when the climate was held, seconds since 1970; 0 when not stated, then there are no parts
 * @param parts ordered by shot, then outcome
 * @param trials attempts of the session
 * @param timed those with a time, not before the climate was set
 * @param protocol of the session
 */
public record SettlingSummary(
        String table, long settledFromS, List<Part> parts, long trials, long timed, SessionProtocol protocol) {

    public SettlingSummary {
        parts = List.copyOf(parts);
    }

    /**
     * One outcome of one shot.
     *
     * @param shot id of the shot
     * @param response name of the outcome
     * @param minutes ordered by time
     */
    public record Part(String shot, String response, List<Minute> minutes) {

        public Part {
            minutes = List.copyOf(minutes);
        }
    }

    /**
     * Attempts of one minute, counted from when the climate was set.
     *
     * @param hours mean time of them since then
     * @param n how many
     * @param mean of the outcome
     * @param squares sum of squared deviations from the mean
     */
    public record Minute(double hours, long n, double mean, double squares) {}
}
