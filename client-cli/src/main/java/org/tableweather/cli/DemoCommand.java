package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.tableweather.cli.demo.InventedLeague;
import org.tableweather.cli.demo.Truth;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code tableweather demo}. */
@Command(
        name = "demo",
        description = {
            "Shows the whole way on INVENTED DATA: starts a server, has an invented league of twelve rooms contribute"
                    + " to it over HTTP, pools, and prints the truth beside the estimates.",
            "The server keeps running until: tableweather demo --stop"
        })
final class DemoCommand extends Subcommand {
    static final Path STANDARD_DATA = Path.of("tableweather-demo");

    @Option(
            names = "--data",
            paramLabel = "DIR",
            defaultValue = "tableweather-demo",
            description = "The server's data folder, and where the curve is written; standard: ./${DEFAULT-VALUE}.")
    private Path data;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "0",
            description = "Port of the server; standard: a free one.")
    private int port;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "Seed of all chance in the data; standard: ${DEFAULT-VALUE}.")
    private long seed;

    @Option(names = "--keep-folders", paramLabel = "DIR", description = "Keep the contribution folders here.")
    private Path keepFolders;

    @Option(names = "--stop", description = "Stop the server of an earlier demo; its data stay.")
    private boolean stop;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Override
    public Integer call() throws Exception {
        return stop ? stopServer() : run();
    }

    private int stopServer() throws IOException, InterruptedException {
        Optional<LocalServer> running = LocalServer.running(data);
        if (running.isEmpty()) {
            say("no server of a demo runs on " + data);
            return ExitCodes.DONE;
        }
        running.get().stop();
        say("stopped the server; " + data + " can be deleted, or used again");
        return ExitCodes.DONE;
    }

    private int run() throws IOException, InterruptedException {
        mustBeTheSameSeed();
        LocalServer server = server();
        Truth truth = Truth.ofTheDemo();
        Path folders = keepFolders == null ? Files.createTempDirectory("tableweather-league-") : keepFolders;
        try {
            say("generating twelve contribution folders, seed " + seed + ": INVENTED DATA");
            List<Path> written = new InventedLeague(truth, seed).write(folders);
            DemoText text = new DemoText(truth, server.url(), data, new DemoRun(server, this).over(written));
            print(json ? text.json() : text.text());
        } finally {
            if (keepFolders == null) {
                delete(folders);
            }
        }
        return ExitCodes.DONE;
    }

    // rooms of two seeds would be pooled as if they were one league
    private void mustBeTheSameSeed() throws IOException {
        Path kept = data.resolve("demo-seed");
        if (Files.exists(kept)) {
            String earlier = Files.readString(kept).strip();
            if (!earlier.equals(Long.toString(seed))) {
                throw Failure.usage(
                        data + " holds the league of seed " + earlier + ", not " + seed,
                        "give the new league a data folder of its own: --data DIR");
            }
            return;
        }
        OwnerOnly.folder(data);
        Files.writeString(kept, seed + "\n");
    }

    private LocalServer server() throws IOException, InterruptedException {
        Optional<LocalServer> running = LocalServer.running(data);
        if (running.isPresent()) {
            say("using the server that runs at " + running.get().url());
            return running.get();
        }
        say("starting a server with its own PostgreSQL in " + data + " ...");
        LocalServer started = LocalServer.start(data, port);
        say("it answers at " + started.url());
        return started;
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
