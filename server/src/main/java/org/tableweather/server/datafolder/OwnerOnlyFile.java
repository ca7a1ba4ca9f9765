package org.tableweather.server.datafolder;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/** A small secret on disk, mode 0600 from its first byte on, complete or absent. */
public final class OwnerOnlyFile {
    private static final FileAttribute<Set<PosixFilePermission>> MODE =
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));

    private OwnerOnlyFile() {}

    /**
     * Writes the text and a line end, replacing what was there.
     *
     * @param file its folder exists
     * @param text without line end
     * @throws IOException when it cannot be written
     */
    public static void write(Path file, String text) throws IOException {
        Path fresh = file.resolveSibling(file.getFileName() + ".new");
        Files.deleteIfExists(fresh);
        Set<StandardOpenOption> options = Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        try (FileChannel channel = FileChannel.open(fresh, options, MODE)) {
            ByteBuffer bytes = StandardCharsets.UTF_8.encode(text + "\n");
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
        Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    /**
     * The text, without line end.
     *
     * @throws IOException when it cannot be read
     */
    public static String read(Path file) throws IOException {
        return Files.readString(file).strip();
    }
}
