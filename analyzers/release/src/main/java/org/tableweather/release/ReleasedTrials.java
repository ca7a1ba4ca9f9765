package org.tableweather.release;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.tableweather.schema.folder.SessionSink;

/**
 * What a path names of released trials: a release, a partition of it, a file of it, or a Parquet file that stands alone.
 *
 * <p>Inside a release the manifest is asked first: each file that will be read is there with the length that the manifest
 * states, the checksum of every page is compared while it is read, and the sessions of a whole release must have the hash that
 * the manifest states. A changed byte that a checksum of a page covers is refused by the name of its file. {@link
 * #mustBeUnchanged} reads the files once more and refuses any changed byte of them; {@link ReleaseVerifier} looks at the whole
 * release.
 */
public final class ReleasedTrials {
    private static final String PARQUET = ".parquet";

    private final Path path;
    private final Optional<ReleasePart> part;

    private ReleasedTrials(Path path, Optional<ReleasePart> part) {
        this.path = path;
        this.part = part;
    }

    /**
     * What a path names; empty when it is something else, as the folder of a contribution.
     *
     * @param path of a folder or a file
     * @throws NoSuchFileException when there is nothing
     * @throws IOException when it is a part of a release that is not there, or its manifest cannot be read
     */
    public static Optional<ReleasedTrials> at(Path path) throws IOException {
        if (!Files.exists(path)) {
            throw new NoSuchFileException(path.toString());
        }
        Optional<ReleasePart> part = ReleasePart.at(path);
        if (part.isEmpty() && Files.isDirectory(path)) {
            mustBeNoPartition(path);
            return Optional.empty();
        }
        return part.isPresent() || path.toString().endsWith(PARQUET)
                ? Optional.of(new ReleasedTrials(path, part))
                : Optional.empty();
    }

    private static void mustBeNoPartition(Path path) throws IOException {
        try (Stream<Path> files = Files.list(path)) {
            Optional<Path> lost = files.filter(
                            file -> file.toString().endsWith(PARQUET) || ReleasePart.isPartition(file.getFileName()))
                    .sorted()
                    .findFirst();
            if (lost.isPresent()) {
                throw new IOException(lost.get() + " is a part of a release, and the release is not around it: no "
                        + Manifest.FILE
                        + ", and no table of the sessions. Name the folder of the release, or a partition"
                        + " inside of it");
            }
        }
    }

    /** The release that it belongs to; empty for a file that stands alone. */
    public Optional<ReleaseFolder> release() {
        return part.map(ReleasePart::release);
    }

    /** Whether sessions can be there in part: their trials of one kind, or what of them was asked for. */
    public boolean canHoldParts() {
        return part.isEmpty() || part.get().kind().isPresent();
    }

    /** What it is, in words. */
    public String inWords() {
        return part.map(ReleasePart::inWords).orElse(path + ", a file of trials that stands alone");
    }

    /**
     * Reads every session. One of which only a part is there has the digest of that part: its content is another.
     *
     * @param sink takes each session with its trials in {@link org.tableweather.schema.record.Trial#CANONICAL_ORDER}
     * @throws IOException when a file is not as the manifest states, cannot be read, or does not say what its sessions are; the
     *     message names the file
     */
    public void sessions(SessionSink sink) throws IOException {
        if (part.isPresent()) {
            part.get().sessions(sink);
        } else {
            TrialParquet.sessions(path, sink);
        }
    }

    /**
     * Hashes every file that will be read. Does nothing for a file that stands alone: no manifest says how it was.
     *
     * @throws ReleaseChanged when one is not as the manifest states; the message names it
     * @throws IOException when one cannot be read
     */
    public void mustBeUnchanged() throws IOException {
        if (part.isPresent()) {
            part.get().mustBeUnchanged();
        }
    }

    /** What of a release it is, when every session in it is complete. */
    Optional<ReleasePart> completeSessions() {
        return part.filter(one -> one.kind().isEmpty());
    }

    /** Trials in it; −1 when a file does not tell before it is read. */
    public long rows() {
        return part.map(ReleasePart::rows).orElse(-1L);
    }
}
