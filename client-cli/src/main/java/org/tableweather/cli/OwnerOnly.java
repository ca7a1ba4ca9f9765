package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;

/** Files and folders that only their owner may read. */
final class OwnerOnly {
    private OwnerOnly() {}

    /** A folder, made if need be. */
    static void folder(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            Files.createDirectories(
                    folder, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        }
    }

    /** A line of text in a file, replacing what was there. */
    static void write(Path file, String line) throws IOException {
        Path fresh = Files.createTempFile(file.toAbsolutePath().getParent(), "new", "");
        Files.writeString(fresh, line + "\n");
        Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }
}
