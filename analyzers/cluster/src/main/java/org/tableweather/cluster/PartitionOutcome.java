package org.tableweather.cluster;

import java.io.Serializable;
import java.util.ArrayList;

/**
 * What a task brings back: summaries, or why there are none.
 *
 * @param sessions summaries
 * @param refusal why the data are refused; empty when they are not
 * @param fault what the analyzer did against its contract; empty when nothing
 */
record PartitionOutcome(ArrayList<SummarisedSession> sessions, String refusal, String fault) implements Serializable {

    static PartitionOutcome of(ArrayList<SummarisedSession> sessions) {
        return new PartitionOutcome(sessions, "", "");
    }

    static PartitionOutcome refused(String why) {
        return new PartitionOutcome(new ArrayList<>(), why, "");
    }

    static PartitionOutcome failed(String why) {
        return new PartitionOutcome(new ArrayList<>(), "", why);
    }
}
