package org.tableweather.release;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.release.VerifyReport.Fault;
import org.tableweather.release.VerifyReport.Problem;
import org.tableweather.schema.folder.SessionDigest;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Reads every session back and compares it with what names it. */
final class SessionProof {
    private static final List<String> COLUMNS = List.of(TrialTable.SESSION_DIGEST, SessionColumns.DIGEST_HOLDS);

    private final List<String> digests = new ArrayList<>();
    private final List<Fault> faults = new ArrayList<>();
    private long trials;

    void read(ReleaseFolder release, String group) {
        String file = ReleaseFolder.sessionFile(group);
        try {
            Map<String, Boolean> holds = holds(release, file);
            release.sessions(group, (session, all) -> {
                digests.add(session.digest());
                trials += all.size();
                if (holds.getOrDefault(session.digest(), false)) {
                    compare(file, session, all);
                }
            });
        } catch (IOException e) {
            faults.add(new Fault(file, Problem.ROWS, e.getMessage()));
        }
    }

    private static Map<String, Boolean> holds(ReleaseFolder release, String file) throws IOException {
        Map<String, Boolean> holds = new HashMap<>();
        try (ParquetRows rows = new ParquetRows(release.path().resolve(file), COLUMNS, 0, Long.MAX_VALUE)) {
            while (rows.next()) {
                holds.put(rows.text(0), rows.truth(1));
            }
        }
        return holds;
    }

    private void compare(String file, SessionRecord session, List<Trial> all) {
        String digest = SessionDigest.of(session, all);
        if (!digest.equals(session.digest())) {
            faults.add(new Fault(
                    file,
                    Problem.ROWS,
                    "the content of session " + session.sessionKey() + " has the digest " + digest + " instead of "
                            + session.digest()));
        }
    }

    List<Fault> faults(Manifest manifest) {
        String hash = Summaries.hash(digests);
        if (faults.isEmpty() && !hash.equals(manifest.datasetHash())) {
            faults.add(new Fault(
                    Manifest.FILE,
                    Problem.ROWS,
                    "the sessions have the hash " + hash + " instead of " + manifest.datasetHash()));
        }
        if (faults.isEmpty() && trials != manifest.totals().trials()) {
            faults.add(new Fault(
                    Manifest.FILE,
                    Problem.ROWS,
                    "there are " + trials + " trials instead of "
                            + manifest.totals().trials()));
        }
        return List.copyOf(faults);
    }
}
