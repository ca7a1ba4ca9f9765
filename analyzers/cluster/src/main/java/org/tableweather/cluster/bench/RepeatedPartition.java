package org.tableweather.cluster.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.tableweather.cluster.PartitionRefused;
import org.tableweather.cluster.SessionPartition;
import org.tableweather.schema.folder.SessionSink;
import org.tableweather.schema.record.SessionRecord;

/**
 * A partition read once more under other keys, so that a benchmark needs no disk for every row: the same bytes are read,
 * hashed and summarised again, as sessions of rooms of their own.
 *
 * @param copy which time, from 2
 * @param original what is read
 */
public record RepeatedPartition(int copy, SessionPartition original) implements SessionPartition {

    /** The partitions, then the same again until each is there so many times. */
    public static List<SessionPartition> times(int times, List<SessionPartition> originals) {
        List<SessionPartition> all = new ArrayList<>(originals);
        for (int copy = 2; copy <= times; copy++) {
            for (SessionPartition original : originals) {
                all.add(new RepeatedPartition(copy, original));
            }
        }
        return all;
    }

    @Override
    public String name() {
        return original.name() + ", read for the " + copy + ". time";
    }

    @Override
    public void read(SessionSink sink) throws IOException, PartitionRefused {
        original.read((session, trials) -> sink.accept(renamed(session), trials));
    }

    private SessionRecord renamed(SessionRecord session) {
        String mark = "copy-" + copy + "/";
        return new SessionRecord(
                mark + session.roomKey(),
                mark + session.sessionKey(),
                copy + "-" + session.digest(),
                session.invented(),
                session.room(),
                session.table(),
                session.session(),
                session.ballSet(),
                session.cue(),
                session.instrument());
    }
}
