package org.tableweather.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;

/** An analysis on a cluster: a program of its own, with Spark's class path, makes it. */
final class SparkRun {
    private static final String PROPERTY = "tableweather.cluster";
    private static final String VARIABLE = "TABLEWEATHER_CLUSTER";
    private static final String COMPLAINT = "tableweather-cluster: ";
    private static final String REMEDY = "  remedy: ";

    private final Consumer<String> talk;
    private String complaint = "";
    private String remedy = "";

    private SparkRun(Consumer<String> talk) {
        this.talk = talk;
    }

    /**
     * Has it made.
     *
     * @param arguments of the program
     * @param talk told what it says meanwhile
     * @return the analysis as JSON, its very bytes
     * @throws Failure when it fails: what the program said of it
     */
    static byte[] json(List<String> arguments, Consumer<String> talk) throws IOException {
        return new SparkRun(talk).run(arguments);
    }

    /** The program's arguments for an analysis. */
    static List<String> arguments(
            String id, SparkOptions spark, List<Path> data, Map<String, String> parameters, List<Path> plugins) {
        if (data.size() != 1 || !Files.isDirectory(data.get(0))) {
            throw Failure.usage(
                    "--spark reads one release, --data names "
                            + (data.size() == 1 ? data.get(0) : data.size() + " paths"),
                    "name the folder of a release that every worker sees under the same path");
        }
        List<String> arguments =
                new ArrayList<>(List.of(id, "--data", data.get(0).toString()));
        spark.addTo(arguments);
        parameters.forEach((name, value) -> arguments.addAll(List.of("--set", name + "=" + value)));
        plugins.forEach(jar -> arguments.addAll(List.of("--plugin", jar.toString())));
        return arguments;
    }

    private byte[] run(List<String> arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(location().toString()));
        command.addAll(arguments);
        Process process = new ProcessBuilder(command).start();
        Thread ending = new Thread(process::destroy);
        Runtime.getRuntime().addShutdownHook(ending);
        try {
            process.getOutputStream().close();
            CompletableFuture<Void> said = CompletableFuture.runAsync(() -> listen(process));
            byte[] json = process.getInputStream().readAllBytes();
            int exitCode = process.waitFor();
            said.join();
            mustBeDone(exitCode);
            return json;
        } catch (InterruptedException e) {
            process.destroy();
            Thread.currentThread().interrupt();
            throw Failure.fault("interrupted", "");
        } finally {
            Runtime.getRuntime().removeShutdownHook(ending);
        }
    }

    private void listen(Process process) {
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                hear(line);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The last complaint is told as the command's own; all else is passed on. */
    private void hear(String line) {
        if (line.startsWith(COMPLAINT) && !line.endsWith("...")) {
            complaint = line.substring(COMPLAINT.length());
        } else if (line.startsWith(REMEDY)) {
            remedy = line.substring(REMEDY.length());
        } else {
            talk.accept(line);
        }
    }

    private void mustBeDone(int exitCode) {
        String told = complaint.isEmpty() ? "the cluster's program ended with code " + exitCode : complaint;
        switch (exitCode) {
            case ExitCodes.DONE -> {
                return;
            }
            case ExitCodes.USAGE -> throw Failure.usage(told, remedy);
            case ExitCodes.REFUSED -> throw Failure.refused(told, remedy);
            case ExitCodes.SERVER -> throw Failure.server(told, remedy);
            default -> throw Failure.fault(told, remedy);
        }
    }

    private static Path location() {
        String stated = System.getProperty(PROPERTY, System.getenv().getOrDefault(VARIABLE, ""));
        if (stated.isEmpty() || !Files.isExecutable(Path.of(stated))) {
            throw Failure.fault(
                    "the cluster's program is not there" + (stated.isEmpty() ? "" : ": " + stated),
                    "start through client-cli/bin/tableweather, or name analyzers/cluster/bin/tableweather-cluster in "
                            + VARIABLE);
        }
        return Path.of(stated);
    }
}
