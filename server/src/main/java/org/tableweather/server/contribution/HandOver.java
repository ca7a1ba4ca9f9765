package org.tableweather.server.contribution;

import java.util.Optional;

/**
 * What became of a folder that was handed over in the browser.
 *
 * @param outcome {@code sound}, {@code refused}, {@code contributed} or {@code problem}: for scripts
 * @param status of HTTP
 * @param title what it is
 * @param words with a way on
 * @param report of the checks, where they ran
 * @param contribution its number; empty when nothing is kept
 */
record HandOver(
        String outcome,
        int status,
        String title,
        String words,
        Optional<HandOverReport> report,
        Optional<Long> contribution) {
    private static final int OK = 200;

    /** Checked, nothing kept. */
    static HandOver checked(HandOverReport report) {
        return new HandOver(
                report.refused() ? "refused" : "sound",
                OK,
                report.refused() ? "To mend before it can be contributed" : "It can be contributed",
                report.read() + ": " + report.found() + ". Nothing was kept.",
                Optional.of(report),
                Optional.empty());
    }

    /** Contributed, now or before. */
    static HandOver contributed(Contributions.Outcome outcome, HandOverReport report) {
        ContributionView contribution = outcome.contribution();
        String state =
                switch (contribution.state()) {
                    case ACCEPTED -> "Its sessions have joined the pool.";
                    case CHECKED -> "It passed the checks and waits for a curator.";
                    default -> "It is being read.";
                };
        return new HandOver(
                "contributed",
                OK,
                "Contributed: number " + contribution.id(),
                report.read() + ". " + (outcome.fresh() ? "" : "The very same folder was here already. ") + state,
                Optional.of(report),
                Optional.of(contribution.id()));
    }

    /** Refused by the checks when it was contributed. */
    static HandOver refused(HandOverReport report, int status) {
        return new HandOver(
                "refused",
                status,
                "Not contributed: there is something to mend",
                report.read() + ": " + report.found() + ". Nothing of it has joined the pool.",
                Optional.of(report),
                Optional.empty());
    }

    /** Not even looked at, or not allowed. */
    static HandOver problem(String title, String words, int status) {
        return new HandOver("problem", status, title, words, Optional.empty(), Optional.empty());
    }
}
