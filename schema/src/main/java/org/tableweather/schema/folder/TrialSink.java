package org.tableweather.schema.folder;

import java.io.IOException;
import java.util.List;
import org.tableweather.schema.record.Trial;

/** Takes every trial exactly once, in file order. */
@FunctionalInterface
public interface TrialSink {

    /** Takes no notice. */
    TrialSink NONE = (sessionIndex, run) -> {};

    /**
     * Takes neighbouring rows of one session. A session whose rows are scattered comes in several runs.
     *
     * @param sessionIndex position in {@code contribution.sessions()}
     * @param run the rows; the list is the receiver's to keep
     * @throws IOException when they cannot be passed on; the reading ends
     */
    void accept(int sessionIndex, List<Trial> run) throws IOException;
}
