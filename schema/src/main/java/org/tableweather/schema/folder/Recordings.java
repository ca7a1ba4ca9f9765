package org.tableweather.schema.folder;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.check.Finding;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Severity;
import org.tableweather.schema.json.ContributionDocument;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.table.ClimateColumn;
import org.tableweather.schema.table.ContactColumn;

/**
 * What a contribution holds beside its trials, row by row: the readings of its instruments and the marked points of its balls'
 * paths. Memory holds one row.
 */
public final class Recordings {
    private Recordings() {}

    /**
     * Reads {@code climate.csv}, then {@code contacts.csv}; a file that is not there has no rows.
     *
     * @param source a contribution that passed the checks
     * @param readings takes the readings; {@code climate.csv} is not opened for {@link ReadingSink#NONE}
     * @param contacts takes the marked points; {@code contacts.csv} is not opened for {@link ContactSink#NONE}
     * @throws IOException when a file cannot be read or does not pass the checks, with row, column, value and remedy; or when a
     *     sink fails
     */
    public static void read(ContributionSource source, ReadingSink readings, ContactSink contacts) throws IOException {
        ContributionDocument document = SecondReading.document(source);
        Optional<Contribution> contribution = document.contribution();
        if (contribution.isEmpty()) {
            throw new IOException(source.name() + " holds no contribution that can be read");
        }
        if (readings != ReadingSink.NONE) {
            Findings findings = new Findings();
            ClimateRows rows = new ClimateRows(contribution, findings, (instrument, second) -> false, readings);
            SecondReading.rows(source, ClimateRows.FILE, ClimateColumn.headers(), rows);
            mustPass(source, findings);
        }
        if (contacts != ContactSink.NONE) {
            SessionIndex sessions = new SessionIndex(document, new ClimateLog.ByInstrument(), new Findings());
            Findings findings = new Findings();
            ContactPaths none = new ContactPaths(session -> false, 0);
            ContactRows rows = new ContactRows(sessions, none, contacts, findings);
            SecondReading.rows(source, ContactRows.FILE, ContactColumn.headers(), rows);
            mustPass(source, findings);
        }
    }

    private static void mustPass(ContributionSource source, Findings findings) throws IOException {
        Optional<Finding> refused = findings.report(0, 0, Map.of()).findings().stream()
                .filter(finding -> finding.severity() == Severity.REFUSE)
                .findFirst();
        if (refused.isPresent()) {
            throw new IOException(source.name() + " does not pass the checks: " + inWords(refused.get()));
        }
    }

    private static String inWords(Finding finding) {
        String row = finding.row().isPresent() ? ", row " + finding.row().getAsLong() : "";
        return finding.file() + row
                + finding.column().map(column -> ", column " + column).orElse("") + ": " + finding.message() + "; "
                + finding.remedy();
    }
}
