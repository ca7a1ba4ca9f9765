package org.tableweather.server.datafolder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;

/** Where a server keeps its data. Immutable; the folders exist and only their owner may enter. */
public final class DataFolder {
    private final Path root;

    private DataFolder(Path root) {
        this.root = root;
    }

    /**
     * The data folder at this path, created if need be.
     *
     * @param path absolute or relative to the working directory
     * @throws IOException when it cannot be created or written
     */
    public static DataFolder at(Path path) throws IOException {
        Path root = path.toAbsolutePath().normalize();
        if (Files.exists(root) && !Files.isDirectory(root)) {
            throw new IOException("data folder " + root + " is a file: name another folder in TABLEWEATHER_DATA");
        }
        ownerOnly(root);
        DataFolder folder = new DataFolder(root.toRealPath());
        ownerOnly(folder.archives());
        ownerOnly(folder.incoming());
        ownerOnly(folder.releases());
        return folder;
    }

    private static void ownerOnly(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            Files.createDirectories(
                    folder, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        }
        if (!Files.isWritable(folder)) {
            throw new IOException("data folder " + folder
                    + " cannot be written by this user: change its owner, or name another folder in TABLEWEATHER_DATA");
        }
    }

    /** The folder itself. */
    public Path root() {
        return root;
    }

    /** The embedded database's cluster. */
    public Path database() {
        return root.resolve("pg");
    }

    /** The unpacked database programs. */
    public Path databasePrograms() {
        return root.resolve("pg-programs");
    }

    /** What the database says until its own log is open. */
    public Path databaseStartLog() {
        return root.resolve("pg-start.log");
    }

    /** The embedded database's password; only the owner may read it. */
    public Path databasePassword() {
        return root.resolve("pg-password");
    }

    /** Contributed archives, each named by its SHA-256. */
    public Path archives() {
        return root.resolve("archives");
    }

    /** Uploads that are not complete yet. */
    public Path incoming() {
        return root.resolve("incoming");
    }

    /** Releases, each a folder named by its number. */
    public Path releases() {
        return root.resolve("releases");
    }

    /** Jars of analyzers that the operator added; need not exist. */
    public Path plugins() {
        return root.resolve("plugins");
    }

    /** The operator's first token; only the owner may read it. */
    public Path operatorToken() {
        return root.resolve("operator-token");
    }

    /** Process id, port and address of the server that runs on this folder. */
    public Path serverFile() {
        return root.resolve("server.json");
    }

    /** The file whose lock the running server holds. */
    Path lockFile() {
        return root.resolve("lock");
    }

    @Override
    public String toString() {
        return root.toString();
    }
}
