package org.tableweather.schema.folder;

import java.io.IOException;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.record.Contribution;

/**
 * Reads a contribution once, checks everything on the way, and hands over its rows.
 *
 * <p>Bad data never throws: it is in the report. Rows that cannot be read are reported and left out of the sinks, so a
 * receiver that stores must do so in a transaction and give it up when the report is refused.
 */
public final class ContributionReader {
    private final LongConsumer progress;

    private ContributionReader(LongConsumer progress) {
        this.progress = progress;
    }

    /** A reader that reports no progress. */
    public static ContributionReader create() {
        return new ContributionReader(bytes -> {});
    }

    /**
     * The same reader, reporting.
     *
     * @param progress told the bytes of {@code trials.csv} read so far, now and then
     */
    public ContributionReader withProgress(LongConsumer progress) {
        return new ContributionReader(progress);
    }

    /**
     * The result of reading.
     *
     * @param contribution what {@code contribution.json} says; empty when it could not be understood
     * @param report all findings
     */
    public record Result(Optional<Contribution> contribution, CheckReport report) {}

    /**
     * Told once, before the first trial, when {@code contribution.json} could be understood and nothing in it is refused;
     * otherwise neither it nor a sink is called, and the rows are checked only.
     */
    @FunctionalInterface
    public interface ContributionListener {
        /** Takes no notice. */
        ContributionListener NONE = contribution -> {};

        /**
         * Takes what the rows will refer to.
         *
         * @throws IOException when it cannot go on; the reading ends
         */
        void accept(Contribution contribution) throws IOException;
    }

    /**
     * Reads and checks.
     *
     * @param source folder or archive
     * @param listener told of {@code contribution.json} before the first trial
     * @param trials takes each readable trial once
     * @param sessions takes complete sessions
     * @return contribution and report; an {@link ArchiveRefused} of the source becomes a finding
     * @throws IOException when the disk, or a sink, fails
     */
    public Result read(ContributionSource source, ContributionListener listener, TrialSink trials, SessionSink sessions)
            throws IOException {
        return new Reading(source, listener, trials, sessions, progress).run();
    }
}
