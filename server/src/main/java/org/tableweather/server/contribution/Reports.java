package org.tableweather.server.contribution;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.Finding;

/** Adds to a report what only the server can find. */
final class Reports {
    private Reports() {}

    /** The report with one more finding, listed unless there are enough of its check already. */
    static CheckReport add(CheckReport report, Finding finding) {
        Map<String, Long> counts = new TreeMap<>(report.counts());
        long count = counts.merge(finding.check(), 1L, Long::sum);
        List<Finding> findings = new ArrayList<>(report.findings());
        if (count <= CheckReport.KEPT_PER_CHECK) {
            findings.add(finding);
            findings.sort(Comparator.comparing(Finding::severity));
        }
        return new CheckReport(
                report.trials(), report.sessions(), findings, counts, report.dialects(), report.cautions());
    }
}
