package org.tableweather.server.contribution;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.sql.Connection;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.Finding;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.TrialSink;
import org.tableweather.server.catalogue.Catalogue;
import org.tableweather.server.catalogue.Intake;

/** Reads an archive once: checks it and stores it on the way, in the caller's transaction. */
@ApplicationScoped
class Judgement {
    private final Archives archives;
    private final Catalogue catalogue;
    private final Faults faults;

    Judgement(Archives archives, Catalogue catalogue, Faults faults) {
        this.archives = archives;
        this.catalogue = catalogue;
        this.faults = faults;
    }

    /**
     * An archive that passed, with its rows stored but not committed.
     *
     * @param content what {@code contribution.json} says
     * @param stored what was stored
     * @param report warnings and notes
     */
    record Passed(org.tableweather.schema.record.Contribution content, Intake.Stored stored, CheckReport report) {}

    /**
     * Reads, checks, stores.
     *
     * @param connection in the transaction that is to be rolled back when this throws
     * @throws RefusedByChecks with the report
     * @throws IOException when disk or database fail
     */
    Passed pass(Connection connection, StoredContribution contribution) throws IOException, RefusedByChecks {
        try (ContributionSource source =
                        ContributionSource.of(archives.path(contribution.sha256()), ArchiveLimits.defaults());
                Intake intake = catalogue.intake(connection, contribution.id(), contribution.accountId())) {
            TrialSink trials = (session, run) -> {
                intake.accept(session, run);
                faults.at(FaultPoint.COPYING);
            };
            ContributionReader.Result result = ContributionReader.create().read(source, intake, trials, intake);
            if (result.report().isRefused()) {
                throw new RefusedByChecks(withFindings(result.report(), intake));
            }
            Intake.Stored stored = intake.finish();
            if (!intake.findings().isEmpty()) {
                throw new RefusedByChecks(withFindings(result.report(), intake));
            }
            return new Passed(result.contribution().orElseThrow(), stored, result.report());
        }
    }

    private static CheckReport withFindings(CheckReport report, Intake intake) {
        CheckReport merged = report;
        for (Finding finding : intake.findings()) {
            merged = Reports.add(merged, finding);
        }
        return merged;
    }
}
