package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code tableweather release list}. */
@Command(name = "list", description = "Lists the releases of a server, latest first.")
final class ReleaseListCommand extends Subcommand {
    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Mixin
    private ServerOptions server;

    @Override
    public Integer call() throws Exception {
        List<JsonNode> releases = new ArrayList<>();
        Map<String, String> query = new TreeMap<>();
        JsonNode page;
        do {
            page = server.client().get("/api/v1/releases", query);
            page.path("releases").forEach(releases::add);
            query.put("after", page.path("next").asText(""));
        } while (!page.path("next").isNull() && !page.path("next").isMissingNode());
        if (json) {
            print(JsonText.of(Map.of("releases", releases)));
        } else if (releases.isEmpty()) {
            print("no release yet\n");
        } else {
            releases.forEach(release -> print(ReleaseLine.of(release) + "\n"));
        }
        return ExitCodes.DONE;
    }
}
