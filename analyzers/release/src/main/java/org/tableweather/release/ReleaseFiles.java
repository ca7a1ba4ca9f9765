package org.tableweather.release;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.digest.Sha256;

/** The files of a release while it is written. */
final class ReleaseFiles {
    private final Path folder;
    private final List<Manifest.FileEntry> entries = new ArrayList<>();

    ReleaseFiles(Path folder) {
        this.folder = folder;
    }

    /** The place of a file that is about to be written. */
    Path place(String path) throws IOException {
        Path place = folder.resolve(path);
        Files.createDirectories(place.getParent());
        return place;
    }

    /** A text is written. */
    void text(String path, String content) throws IOException {
        Files.writeString(place(path), content, StandardCharsets.UTF_8);
        written(path, Optional.empty(), List.of());
    }

    /** A file was written, and is put on the disk for good. */
    void written(String path, Optional<Long> rows, List<Manifest.ShotRun> shots) throws IOException {
        Path place = folder.resolve(path);
        force(place);
        entries.add(new Manifest.FileEntry(path, Files.size(place), Sha256.hex(place), rows, shots));
    }

    /** Writes the manifest and its hash: they are in no list. */
    void manifest(byte[] bytes) throws IOException {
        Files.write(place(Manifest.FILE), bytes);
        Files.writeString(place(Manifest.HASH_FILE), Sha256.hex(bytes) + "  " + Manifest.FILE + "\n");
        force(folder.resolve(Manifest.FILE));
        force(folder.resolve(Manifest.HASH_FILE));
    }

    private static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** All written so far, by path. */
    List<Manifest.FileEntry> entries() {
        return entries.stream()
                .sorted(Comparator.comparing(Manifest.FileEntry::path))
                .toList();
    }
}
