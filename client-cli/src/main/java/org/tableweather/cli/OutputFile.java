package org.tableweather.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.function.Consumer;

/** A file that is written under another name first, so that nobody finds half of it, and what stood there stays until then. */
final class OutputFile {
    private OutputFile() {}

    /** Makes a text piece by piece. */
    @FunctionalInterface
    interface Texts {
        void writeTo(Consumer<String> out) throws IOException;
    }

    /** Fills a file that is not in place yet. */
    @FunctionalInterface
    private interface Filling {
        void fill(Path part) throws IOException;
    }

    /** Writes a text as UTF-8. */
    static void write(Path file, Texts texts) throws IOException {
        replace(file, part -> {
            try (BufferedWriter writer = Files.newBufferedWriter(part)) {
                IOException[] failed = {null};
                texts.writeTo(text -> {
                    try {
                        writer.write(text);
                    } catch (IOException e) {
                        failed[0] = failed[0] == null ? e : failed[0];
                    }
                });
                if (failed[0] != null) {
                    throw failed[0];
                }
            }
        });
    }

    /** Writes all that comes. */
    static void copy(Path file, InputStream bytes) throws IOException {
        replace(file, part -> Files.copy(bytes, part, StandardCopyOption.REPLACE_EXISTING));
    }

    /** Refuses a place where no file can be, before anything is asked for. */
    static void mustBePossible(Path file) {
        if (Files.isDirectory(file)) {
            throw Failure.usage("--output " + file + " is a folder", "name a file in it");
        }
        Path folder = file.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw Failure.usage("there is no folder " + folder, "make it first, or name another file");
        }
    }

    private static void replace(Path file, Filling filling) throws IOException {
        mustBePossible(file);
        Path folder = file.toAbsolutePath().getParent();
        Path part = Files.createTempFile(folder, file.getFileName().toString(), ".part");
        try {
            filling.fill(part);
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }
}
