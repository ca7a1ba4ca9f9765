package org.tableweather.schema.folder;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.SortedMap;

/** A folder or a zip archive that holds a contribution. */
public interface ContributionSource extends Closeable {

    /** What a user calls it: the path, or the archive's name. */
    String name();

    /**
     * The files in it and their sizes in bytes as far as known (−1 when not), by name.
     *
     * @throws IOException when it cannot be listed
     */
    SortedMap<String, Long> files() throws IOException;

    /**
     * Opens one file.
     *
     * @param file {@code trials.csv} ...
     * @return empty when there is no such file
     * @throws IOException when it cannot be read
     * @throws ArchiveRefused when the archive is unsafe or damaged: too large, bomb, path traversal, truncated
     */
    Optional<InputStream> open(String file) throws IOException;

    /**
     * The folder or zip archive at this path. Whether an archive is safe and whole shows when it is read.
     *
     * @param path a folder, or a file that is taken for a zip archive
     * @param limits bounds for archives
     * @return to be closed
     * @throws IOException when there is nothing, or it cannot be read
     */
    static ContributionSource of(Path path, ArchiveLimits limits) throws IOException {
        if (Files.isDirectory(path)) {
            return new FolderSource(path);
        }
        if (!Files.isReadable(path)) {
            throw new NoSuchFileException(path.toString(), null, "no folder or archive that can be read");
        }
        return new ZipSource(path, limits);
    }
}
