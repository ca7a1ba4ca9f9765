package org.tableweather.server.analysis;

/**
 * How far a running analysis is.
 *
 * @param step {@code summarising} the sessions that were never summarised, then {@code concluding}
 * @param done sessions summarised
 * @param total sessions to summarise
 */
record Progress(String step, int done, int total) {

    static Progress summarising(int done, int total) {
        return new Progress("summarising", done, total);
    }

    static Progress concluding() {
        return new Progress("concluding", 0, 0);
    }

    /** Hears of progress; throws to have the work given up. */
    @FunctionalInterface
    interface Listener {
        /** For those who only want the result. */
        Listener NONE = progress -> {};

        void at(Progress progress);
    }
}
