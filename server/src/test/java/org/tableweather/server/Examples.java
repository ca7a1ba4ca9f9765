package org.tableweather.server;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.folder.ExampleFolder;

/** Archives for tests, each of its own contributor and room, so that no test meets another's data. */
public final class Examples {
    /** Trials of an example: two sessions of fifteen. */
    public static final int TRIALS = 30;

    private Examples() {}

    /** The folder of this contributor, without any fault. */
    public static ExampleFolder folder(String contributor) {
        return ExampleFolder.sound()
                .replace("contribution.json", ", \"orcid\": \"0000-0002-1825-0097\"", "")
                .replace("contribution.json", "A. Example", contributor)
                .replace("contribution.json", "Cellar club", "Cellar of " + contributor);
    }

    /** The archive of this contributor. */
    public static byte[] archive(String contributor) {
        return pack(folder(contributor));
    }

    /** The folder as an archive. */
    public static byte[] pack(ExampleFolder folder) {
        try {
            Path root = Files.createTempDirectory("tableweather-example");
            try {
                Path archive = root.resolve("example.zip");
                ContributionWriter.pack(folder.writeTo(root.resolve("folder")), archive);
                return Files.readAllBytes(archive);
            } finally {
                delete(root);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Deletes a folder of ours with all in it. */
    public static void delete(Path root) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
