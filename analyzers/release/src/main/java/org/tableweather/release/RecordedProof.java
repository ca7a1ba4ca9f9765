package org.tableweather.release;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.tableweather.release.VerifyReport.Fault;
import org.tableweather.release.VerifyReport.Problem;

/** Reads the keys of every reading and marked point and looks for the session that they belong to. */
final class RecordedProof {
    private static final List<String> INSTRUMENT =
            List.of(TrialTable.ROOM_KEY, SessionColumns.CONTRIBUTION, SessionColumns.INSTRUMENT);
    private static final List<String> SESSION =
            List.of(TrialTable.ROOM_KEY, TrialTable.SESSION_KEY, TrialTable.SESSION_DIGEST);

    private final List<Fault> faults = new ArrayList<>();

    /** All tables of readings and marked points of a release. */
    List<Fault> read(ReleaseFolder release) {
        for (Manifest.FileEntry file : release.manifest().files()) {
            if (file.isIn(RecordedTables.READINGS)) {
                compare(release, file, INSTRUMENT);
            } else if (file.isIn(RecordedTables.CONTACTS)) {
                compare(release, file, SESSION);
            }
        }
        return List.copyOf(faults);
    }

    private void compare(ReleaseFolder release, Manifest.FileEntry file, List<String> columns) {
        try {
            String sessions = ReleaseFolder.sessionFile(ReleaseFolder.groupOf(file));
            Set<List<String>> known = new HashSet<>();
            each(release, sessions, columns, (key, row) -> known.add(key));
            each(release, file.path(), columns, (key, row) -> mustBe(known, key, row, file));
        } catch (IOException e) {
            faults.add(new Fault(file.path(), Problem.ROWS, e.getMessage()));
        }
    }

    private static void mustBe(Set<List<String>> known, List<String> key, long row, Manifest.FileEntry file)
            throws IOException {
        if (!known.contains(key)) {
            throw new IOException("row " + row + " belongs to no session of the release: " + String.join(", ", key)
                    + " is in no row of the sessions of room group " + ReleaseFolder.groupOf(file));
        }
    }

    private interface Keys {
        void take(List<String> key, long row) throws IOException;
    }

    /** Tells each key that differs from the one before, with its row, from 1. */
    private static void each(ReleaseFolder release, String file, List<String> columns, Keys to) throws IOException {
        List<String> last = List.of();
        long row = 0;
        try (ParquetRows rows = new ParquetRows(release.path().resolve(file), columns, 0, Long.MAX_VALUE)) {
            while (rows.next()) {
                row++;
                List<String> key = List.of(rows.text(0), rows.text(1), rows.text(2));
                if (!key.equals(last)) {
                    to.take(key, row);
                    last = key;
                }
            }
        }
    }
}
