package org.tableweather.cli.journey;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Runs the packaged command in processes of its own, as a shell does.
 *
 * @param directory where a user stands
 */
record Shell(Path directory) {
    private static final Path MODULE = Path.of("").toAbsolutePath();
    private static final Path CLIENT = MODULE.resolve("target/tableweather-client-cli.jar");
    private static final Path SERVER = MODULE.resolveSibling("server").resolve("target/quarkus-app/quarkus-run.jar");
    private static final long PATIENCE_MINUTES = 5;

    /**
     * What a run gave.
     *
     * @param exitCode what it ended with
     * @param out standard output
     * @param err standard error
     */
    record Result(int exitCode, String out, String err) {}

    /** Runs the command to its end. */
    Result run(Object... arguments) throws IOException, InterruptedException {
        Path out = Files.createTempFile(directory, "out", "");
        Path err = Files.createTempFile(directory, "err", "");
        Process process = new ProcessBuilder(command(arguments))
                .directory(directory.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        if (!process.waitFor(PATIENCE_MINUTES, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new IOException("no end after " + PATIENCE_MINUTES + " min: " + List.of(arguments));
        }
        return new Result(process.exitValue(), Files.readString(out), Files.readString(err));
    }

    /** Runs the command, reads one line, and closes the pipe as {@code head -1} does. */
    String firstLine(Object... arguments) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command(arguments))
                .directory(directory.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String line;
        try (var reader = process.inputReader(StandardCharsets.UTF_8)) {
            line = reader.readLine();
        }
        process.waitFor();
        return line;
    }

    private static List<String> command(Object... arguments) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-Dtableweather.server.jar=" + SERVER,
                "-jar",
                CLIENT.toString()));
        for (Object argument : arguments) {
            command.add(argument.toString());
        }
        return command;
    }
}
