package org.tableweather.schema.folder;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.Finding;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Everything that one reading hands over. */
final class TestReading {
    final List<Trial> trials = new ArrayList<>();
    final List<List<Trial>> runs = new ArrayList<>();
    final Map<String, List<Trial>> sessions = new LinkedHashMap<>();
    final Map<String, SessionRecord> records = new LinkedHashMap<>();
    final List<String> handOvers = new ArrayList<>();
    Optional<Contribution> told = Optional.empty();
    private ContributionReader.Result result;

    static TestReading of(Path path) throws IOException {
        try (ContributionSource source = ContributionSource.of(path, ArchiveLimits.defaults())) {
            return of(source);
        }
    }

    static TestReading of(ContributionSource source) throws IOException {
        TestReading reading = new TestReading();
        reading.result = ContributionReader.create()
                .read(
                        source,
                        contribution -> reading.told = Optional.of(contribution),
                        (session, run) -> {
                            reading.runs.add(run);
                            reading.trials.addAll(run);
                        },
                        (session, trials) -> {
                            String id = session.session().id();
                            reading.handOvers.add(id);
                            reading.sessions.put(id, trials);
                            reading.records.put(id, session);
                        });
        return reading;
    }

    CheckReport report() {
        return result.report();
    }

    Optional<Contribution> contribution() {
        return result.contribution();
    }

    /** The only finding of a check. */
    Finding finding(String check) {
        List<Finding> found = report().findings().stream()
                .filter(finding -> finding.check().equals(check))
                .toList();
        if (found.size() != 1) {
            throw new AssertionError(found.size() + " findings of " + check + ": " + report());
        }
        return found.get(0);
    }
}
