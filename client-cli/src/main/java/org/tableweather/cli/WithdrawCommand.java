package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather withdraw}. */
@Command(
        name = "withdraw",
        description = "Takes a contribution back: it leaves the pool and later releases, which name it with the day and"
                + " the reason; releases that have it keep it.",
        footer = {"", "Example:", "  tableweather withdraw 12 --reason \"wrong hygrometer\" --token-file my-token"})
final class WithdrawCommand extends Subcommand {
    @Parameters(paramLabel = "NUMBER", description = "Number of the contribution on the server.")
    private long number;

    @Option(names = "--reason", paramLabel = "TEXT", defaultValue = "", description = "Why, in words; is published.")
    private String reason;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Mixin
    private ServerOptions server;

    @Override
    public Integer call() throws Exception {
        String query = reason.isBlank() ? "" : "?reason=" + ServerClient.encoded(reason);
        JsonNode withdrawn = server.client()
                .post("/api/v1/contributions/" + number + "/withdraw" + query, Map.of(), BodyPublishers.noBody(), 200);
        print(json ? JsonText.of(withdrawn) : "contribution " + number + " is withdrawn\n");
        return ExitCodes.DONE;
    }
}
