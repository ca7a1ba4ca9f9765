package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code tableweather release create}. */
@Command(
        name = "create",
        description = "Has a server freeze all that is accepted there now into its next release, and waits for it;"
                + " needs an operator's token.",
        footer = {
            "",
            "Example:",
            "  tableweather release create --title \"Spring sessions\" --token-file operator-token"
        })
final class ReleaseCreateCommand extends Subcommand {
    private static final long PAUSE_MILLIS = 500;

    @Option(names = "--title", required = true, paramLabel = "TEXT", description = "What is released, in words.")
    private String title;

    @Option(
            names = "--wait-minutes",
            paramLabel = "N",
            defaultValue = "60",
            description = "How long to wait for its files; standard: ${DEFAULT-VALUE}.")
    private int waitMinutes;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Mixin
    private ServerOptions server;

    @Override
    public Integer call() throws Exception {
        ServerClient client = server.client();
        JsonNode release = client.post("/api/v1/releases", Map.of("title", title));
        int number = release.path("number").asInt();
        say("release " + number + " is fixed; its files are being written");
        Instant end = Instant.now().plus(Duration.ofMinutes(waitMinutes));
        while (release.path("state").asText().equals("building")) {
            if (Instant.now().isAfter(end)) {
                throw Failure.server(
                        "release " + number + " is still being built after " + waitMinutes + " minutes",
                        "tableweather release list tells when it is frozen");
            }
            pause();
            release = client.get("/api/v1/releases/" + number, Map.of());
        }
        if (!release.path("state").asText().equals("frozen")) {
            throw Failure.server(
                    "release " + number + " could not be built: "
                            + release.path("failure").asText(),
                    "the server's log says more");
        }
        print(json ? JsonText.of(release) : ReleaseLine.of(release) + "\n");
        return ExitCodes.DONE;
    }

    private static void pause() throws IOException {
        try {
            Thread.sleep(PAUSE_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw Failure.fault("interrupted", "the server goes on; tableweather release list tells when it is frozen")
                    .because(e);
        }
    }
}
