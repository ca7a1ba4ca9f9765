package org.tableweather.schema.check;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Map;

/**
 * The outcome of all checks on one contribution.
 *
 * @param trials rows of trials read
 * @param sessions sessions that have trials
 * @param findings the first findings, most severe first, at most {@link #KEPT_PER_CHECK} of a check
 * @param counts how many findings there were of each check, listed or not; ordered by check id
 * @param dialects how each CSV file was understood: separator, decimal mark, byte-order mark, line ends; by file name
 * @param cautions what the climates of the sessions call for, one of each kind, the gravest
 */
public record CheckReport(
        long trials,
        long sessions,
        List<Finding> findings,
        Map<String, Long> counts,
        Map<String, String> dialects,
        List<SessionCaution> cautions) {

    public CheckReport {
        cautions = cautions == null ? List.of() : List.copyOf(cautions);
    }

    /** A report without cautions. */
    public CheckReport(
            long trials,
            long sessions,
            List<Finding> findings,
            Map<String, Long> counts,
            Map<String, String> dialects) {
        this(trials, sessions, findings, counts, dialects, List.of());
    }

    /** How many findings of one check are kept; the rest is counted. */
    public static final int KEPT_PER_CHECK = 20;

    /** Whether anything forbids acceptance. */
    @JsonProperty("refused")
    public boolean isRefused() {
        return findings.stream().anyMatch(finding -> finding.severity() == Severity.REFUSE);
    }

    /** Findings counted but not listed. */
    @JsonProperty("notListed")
    public long notListed() {
        return counts.values().stream().mapToLong(Long::longValue).sum() - findings.size();
    }
}
