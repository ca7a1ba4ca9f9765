package org.tableweather.server.contribution;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.digest.Sha256;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.json.ContributionDocument;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.Contribution;
import org.tableweather.server.datafolder.DataFolder;

/** The archives that were handed over, each a file named by its SHA-256. */
@ApplicationScoped
class Archives {
    private final DataFolder folder;
    private final Faults faults;

    Archives(DataFolder folder, Faults faults) {
        this.folder = folder;
        this.faults = faults;
    }

    Path path(String sha256) {
        return folder.archives().resolve(sha256 + ".zip");
    }

    boolean exists(String sha256) {
        return Files.isRegularFile(path(sha256));
    }

    /**
     * Opens a kept archive.
     *
     * @return to be closed
     * @throws IOException when it is gone, or its bytes are not those that were handed over
     */
    ContributionSource open(String sha256) throws IOException {
        mustBeThere(sha256);
        String found = Sha256.hex(path(sha256));
        if (!found.equals(sha256)) {
            throw new IOException(name(sha256) + " in the data folder has the SHA-256 " + found
                    + ", so it is not the archive that was contributed: put it back from a backup");
        }
        return ContributionSource.of(path(sha256), ArchiveLimits.defaults());
    }

    /**
     * What {@code contribution.json} of a kept archive says.
     *
     * @throws UncheckedIOException when it is gone or cannot be read
     */
    Contribution contribution(String sha256) {
        try {
            return read(sha256);
        } catch (IOException e) {
            throw new UncheckedIOException(
                    name(sha256) + " in the data folder cannot be read, put it back from a backup: " + e.getMessage(),
                    e);
        }
    }

    private Contribution read(String sha256) throws IOException {
        mustBeThere(sha256);
        try (ContributionSource source = ContributionSource.of(path(sha256), ArchiveLimits.defaults());
                InputStream json = source.open(ContributionJson.FILE)
                        .orElseThrow(() -> new NoSuchFileException(name(sha256) + "/" + ContributionJson.FILE))) {
            return ContributionDocument.read(json, new Findings())
                    .contribution()
                    .orElseThrow(() -> new IOException(name(sha256) + " in the data folder is not the contribution that"
                            + " was accepted: put it back from a backup"));
        }
    }

    private void mustBeThere(String sha256) throws IOException {
        if (!exists(sha256)) {
            throw new IOException(name(sha256) + " is gone from the data folder: put it back from a backup");
        }
    }

    /** What the public may know of where it lies. */
    private static String name(String sha256) {
        return "archives/" + sha256 + ".zip";
    }

    /**
     * Moves a complete upload to its place, so that it is there whole after a loss of power.
     *
     * @param upload in the same file system
     */
    void store(Path upload, String sha256) throws IOException {
        faults.at(FaultPoint.UPLOAD_COMPLETE);
        try (FileChannel channel = FileChannel.open(upload, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        Files.move(upload, path(sha256), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        // the name is an entry of the folder: it must reach the disk too
        try (FileChannel channel = FileChannel.open(folder.archives(), StandardOpenOption.READ)) {
            channel.force(true);
        }
        faults.at(FaultPoint.ARCHIVE_STORED);
    }

    /** Forgets the archive of a refused contribution. */
    void delete(String sha256) throws IOException {
        Files.deleteIfExists(path(sha256));
    }
}
