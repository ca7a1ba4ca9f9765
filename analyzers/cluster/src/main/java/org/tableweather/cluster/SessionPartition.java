package org.tableweather.cluster;

import java.io.IOException;
import java.io.Serializable;
import org.tableweather.schema.folder.SessionSink;

/** Sessions that one task reads, independent of all others. */
public interface SessionPartition extends Serializable {

    /** What it is called in messages. */
    String name();

    /**
     * Hands over every session, complete.
     *
     * @throws PartitionRefused when the data are not what they should be: reading them elsewhere would not help
     * @throws IOException when they cannot be read; another executor may do better
     */
    void read(SessionSink sink) throws IOException, PartitionRefused;
}
