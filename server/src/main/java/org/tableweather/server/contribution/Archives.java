package org.tableweather.server.contribution;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
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
