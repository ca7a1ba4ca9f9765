package org.tableweather.schema.folder;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;

/** A contribution in a folder. */
final class FolderSource implements ContributionSource {
    private final Path folder;

    FolderSource(Path folder) {
        this.folder = folder;
    }

    @Override
    public String name() {
        return folder.toString();
    }

    @Override
    public SortedMap<String, Long> files() throws IOException {
        SortedMap<String, Long> files = new TreeMap<>();
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
            for (Path entry : entries) {
                String name = entry.getFileName().toString();
                if (!EntryNames.isJunk(name) && Files.isRegularFile(entry)) {
                    files.put(name, Files.size(entry));
                }
            }
        }
        return files;
    }

    @Override
    public Optional<InputStream> open(String file) throws IOException {
        Path path = folder.resolve(file);
        if (!Files.isRegularFile(path)) {
            return Optional.empty();
        }
        if (!path.toRealPath().startsWith(folder.toRealPath())) {
            throw refused(file);
        }
        return Optional.of(Files.newInputStream(path));
    }

    private static ArchiveRefused refused(String file) {
        return ArchiveRefused.because(
                StructureChecks.LINK_OUTSIDE,
                Place.file(file),
                file,
                file + " is a link to a place outside the folder");
    }

    @Override
    public void close() {
        // nothing is held open
    }
}
