package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Another program of this class path in a Java of its own. */
final class Java {

    private Java() {}

    /**
     * Runs it and waits.
     *
     * @param folder where
     * @param heap its largest heap, as {@code -Xmx} takes it
     * @param program a class with {@code main}
     */
    static Measured run(Path folder, String heap, Class<?> program, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + heap,
                "-cp",
                System.getProperty("java.class.path"),
                program.getName()));
        command.addAll(List.of(arguments));
        return Measured.run(folder, Map.of(), command);
    }
}
