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
import java.util.List;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.json.ContributionDocument;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Shot;
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
     * The shots that a kept archive defines beside the catalogue's.
     *
     * @throws UncheckedIOException when it cannot be read
     */
    List<Shot> shots(String sha256) {
        Path archive = path(sha256);
        try (ContributionSource source = ContributionSource.of(archive, ArchiveLimits.defaults());
                InputStream json = source.open(ContributionJson.FILE)
                        .orElseThrow(() -> new NoSuchFileException(archive + "/" + ContributionJson.FILE))) {
            return ContributionDocument.read(json, new Findings())
                    .contribution()
                    .map(Contribution::shots)
                    .orElseThrow(() -> new IOException(archive + " is not the contribution that was accepted"));
        } catch (IOException e) {
            throw new UncheckedIOException("the shots of archive " + archive, e);
        }
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
