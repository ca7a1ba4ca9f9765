package org.tableweather.server.analysis;

/**
 * How far a running analysis is.
 *
 * @param step {@code summarising} the sessions that were never summarised, then {@code concluding}
 * @param what part of the conclusion, as the analyzer names it: {@code bootstrap}; empty where it tells none
 * @param done sessions summarised, or parts concluded
 * @param total sessions to summarise, or parts to conclude; 0 when not known
 */
record Progress(String step, String what, int done, int total) {

    static Progress summarising(int done, int total) {
        return new Progress("summarising", "", done, total);
    }

    static Progress concluding() {
        return concluding("", 0, 0);
    }

    static Progress concluding(String what, int done, int total) {
        return new Progress("concluding", what, done, total);
    }

    /** Hears of progress, from any thread; throws to have the work given up. */
    @FunctionalInterface
    interface Listener {
        /** For those who only want the result. */
        Listener NONE = progress -> {};

        void at(Progress progress);
    }
}
