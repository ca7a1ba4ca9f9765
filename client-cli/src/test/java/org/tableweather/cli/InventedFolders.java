package org.tableweather.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.tableweather.cli.demo.InventedLeague;
import org.tableweather.cli.demo.Truth;

/** The demonstration's twelve folders, generated once for all tests; read only. */
final class InventedFolders {
    private static final List<Path> ALL = generate();

    private InventedFolders() {}

    static List<Path> all() {
        return ALL;
    }

    static Path of(String room) {
        return ALL.stream().filter(folder -> folder.endsWith(room)).findFirst().orElseThrow();
    }

    /** A command line that ends in all folders. */
    static String[] after(String... arguments) {
        List<String> whole = new ArrayList<>(List.of(arguments));
        ALL.forEach(folder -> whole.add(folder.toString()));
        return whole.toArray(String[]::new);
    }

    private static List<Path> generate() {
        try {
            Path parent = Files.createTempDirectory("invented-league-");
            parent.toFile().deleteOnExit();
            List<Path> folders = new InventedLeague(Truth.ofTheDemo(), 1).write(parent);
            for (Path folder : folders) {
                folder.toFile().deleteOnExit();
                for (String file : List.of("contribution.json", "trials.csv", "climate.csv")) {
                    folder.resolve(file).toFile().deleteOnExit();
                }
            }
            return folders;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
