package org.tableweather.server.contribution;

import org.tableweather.schema.check.CheckReport;

/** Ends the transaction of a contribution that the checks refuse. */
final class RefusedByChecks extends Exception {
    private static final long serialVersionUID = 1L;
    private final transient CheckReport report;

    RefusedByChecks(CheckReport report) {
        super("refused by the checks");
        this.report = report;
    }

    CheckReport report() {
        return report;
    }
}
