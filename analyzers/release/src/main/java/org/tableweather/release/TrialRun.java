package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import org.tableweather.schema.record.Trial;

/** The rows of one shot in one file, in the order of sessions. */
final class TrialRun implements Closeable {
    static final Comparator<TrialRun> ORDER = Comparator.comparing(TrialRun::roomKey)
            .thenComparing(TrialRun::sessionKey)
            .thenComparing(TrialRun::digest);

    private final TrialRows rows;
    private boolean more;

    TrialRun(Path path, long first, long count) throws IOException {
        rows = new TrialRows(path, first, count);
        more = rows.next();
    }

    boolean hasMore() {
        return more;
    }

    String roomKey() {
        return rows.roomKey();
    }

    String sessionKey() {
        return rows.sessionKey();
    }

    String digest() {
        return rows.digest();
    }

    /** Takes the rows of the session that stands at the cursor. */
    void takeSession(String digest, List<Trial> to) throws IOException {
        while (more && rows.digest().equals(digest)) {
            to.add(rows.trial());
            more = rows.next();
        }
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
