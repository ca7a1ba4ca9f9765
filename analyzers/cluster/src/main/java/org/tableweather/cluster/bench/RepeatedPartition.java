package org.tableweather.cluster.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.cluster.PartitionRefused;
import org.tableweather.cluster.SessionPartition;

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
    public <S> void summarise(Analyzer<S> analyzer, Consumer<SessionSummary<S>> sink)
            throws IOException, PartitionRefused {
        original.summarise(analyzer, summary -> sink.accept(renamed(summary)));
    }

    private <S> SessionSummary<S> renamed(SessionSummary<S> one) {
        String mark = "copy-" + copy + "/";
        return new SessionSummary<>(
                mark + one.roomKey(),
                mark + one.sessionKey(),
                copy + "-" + one.digest(),
                one.invented(),
                one.trials(),
                one.summary());
    }
}
