package org.tableweather.release;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** What goes into a release: contributions and their sessions, one at a time. */
public interface ReleaseInput {

    /**
     * The folder or archive of a contribution: the readings of its instruments and its marked points are read from it once all
     * sessions are known.
     */
    @FunctionalInterface
    interface Origin {
        /** There is none: the sessions have neither readings nor marked points. */
        Origin NONE = Optional::empty;

        /**
         * Opens it.
         *
         * @return to be closed; empty when nothing was recorded beside the trials
         * @throws IOException when it is gone or is not what was contributed
         */
        Optional<ContributionSource> open() throws IOException;
    }

    /** Takes what a release is made of, in any order. */
    interface Sink {
        /**
         * Takes one session with all its trials. Handed over again under the same contribution and session key it replaces
         * the former; equal ones of several contributions count once.
         *
         * @param contribution id of the contribution
         * @param session with its digest
         * @param trials all of them in {@link Trial#CANONICAL_ORDER}
         * @throws IOException when it cannot be kept
         */
        void session(String contribution, SessionRecord session, List<Trial> trials) throws IOException;

        /**
         * Takes one contribution, before or after its sessions.
         *
         * @param origin opened at most once, after {@link ReleaseInput#read} has ended; not at all when no session of it is released
         * @throws IOException when it cannot be kept
         */
        void contribution(ReleasedContribution contribution, Origin origin) throws IOException;
    }

    /**
     * Hands over everything. The order does not matter: the release has its own.
     *
     * @throws IOException when it cannot be read, or the sink fails
     */
    void read(Sink sink) throws IOException;

    /**
     * Contribution folders or zip archives on this machine.
     *
     * @param paths each holds one contribution; any order gives the same release
     */
    static ReleaseInput ofFolders(Collection<Path> paths) {
        return ofFolders(paths, bytes -> {});
    }

    /**
     * The same, reporting.
     *
     * @param progress told the bytes of trials read so far, now and then
     */
    static ReleaseInput ofFolders(Collection<Path> paths, LongConsumer progress) {
        return new FolderInput(List.copyOf(paths), progress);
    }
}
