package org.tableweather.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code tableweather serve}. */
@Command(
        name = "serve",
        description = "Runs a server in the foreground, on its own PostgreSQL in the data folder, until Ctrl-C.",
        footer = {
            "",
            "The operator's first token is in the file operator-token of the data folder.",
            "Settings beyond these are environment variables; see server/README.md."
        })
final class ServeCommand extends Subcommand {
    @Option(
            names = "--data",
            paramLabel = "DIR",
            defaultValue = "tableweather-data",
            description = "Data folder; standard: ./${DEFAULT-VALUE}.")
    private Path data;

    @Option(
            names = "--host",
            paramLabel = "ADDRESS",
            defaultValue = "127.0.0.1",
            description = "Address to listen on; standard: ${DEFAULT-VALUE}, this machine alone.")
    private String host;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "8080",
            description = "Port to listen on, 0 for a free one; standard: ${DEFAULT-VALUE}.")
    private int port;

    @Override
    public Integer call() throws Exception {
        if (port < 0 || port > 65535) {
            throw Failure.usage("--port " + port + " is outside 0..65535", "choose one within");
        }
        Process server = new ProcessBuilder(ServerJar.command(data, host, port == 0 ? LocalServer.freePort() : port))
                .inheritIO()
                .start();
        Thread ending = new Thread(() -> end(server), "tableweather-serve-end");
        Runtime.getRuntime().addShutdownHook(ending);
        int exitCode = server.waitFor();
        return exitCode == 0 ? ExitCodes.DONE : ExitCodes.FAULT;
    }

    // also when only this process is told to end: the server must not be left behind
    private static void end(Process server) {
        server.destroy();
        try {
            server.waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
