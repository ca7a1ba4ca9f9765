package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class AnalyzeCommandTest {

    @Test
    void printsTheContractWithItsNamesInOrder() throws Exception {
        Ran ran = Ran.with(InventedFolders.after("analyze", "rebound-humidity", "--json", "--data"));

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        JsonNode json = parsed(ran.out());
        assertThat(names(json))
                .containsExactly(
                        "analyzer",
                        "version",
                        "outcome",
                        "sentence",
                        "dataset",
                        "parameters",
                        "fit",
                        "estimates",
                        "variance",
                        "curve",
                        "rooms",
                        "plots",
                        "warnings",
                        "references");
        assertThat(json.path("outcome").asText()).isEqualTo("estimated");
        assertThat(names(json.path("estimates").path(0)))
                .containsExactly("name", "value", "standardError", "df", "lower", "upper", "unit", "meaning");
        assertThat(names(json.path("curve").path(0)))
                .containsExactly("rhPct", "mean", "lower", "upper", "newRoomLower", "newRoomUpper");
        assertThat(names(json.path("rooms").path(0))).containsExactly("room", "sessions", "trials", "effects");
        assertThat(json.path("dataset").path("trials").asLong()).isEqualTo(12 * 5 * 32);
        assertThat(json.path("dataset").path("invented").asBoolean()).isTrue();
        assertThat(json.path("dataset").path("hash").asText()).matches("sha256:[0-9a-f]{64}");
    }

    @Test
    void givesTheSameBytesWhateverTheOrderOfTheFolders() {
        List<String> reversed = new ArrayList<>(List.of("analyze", "rebound-humidity", "--json", "--data"));
        for (int i = InventedFolders.all().size() - 1; i >= 0; i--) {
            reversed.add(InventedFolders.all().get(i).toString());
        }

        assertThat(Ran.with(reversed.toArray(String[]::new)).out())
                .isEqualTo(Ran.with(InventedFolders.after("analyze", "rebound-humidity", "--json", "--data"))
                        .out());
    }

    @Test
    void countsAFolderOnceThatIsNamedTwice() {
        String folder = InventedFolders.of("elm").toString();

        Ran ran = Ran.with("analyze", "rebound-humidity", "--json", "--data", folder, "--data", folder);

        assertThat(ran.out()).contains("\"sessions\" : 5,");
        assertThat(ran.err()).contains("is there twice with the same content: counted once");
    }

    @Test
    void tellsPeopleTheSentenceTheFiguresAndThatTheyAreInvented() {
        Ran ran = Ran.with(InventedFolders.after("analyze", "rebound-humidity", "--data"));

        assertThat(ran.out())
                .startsWith("INVENTED DATA")
                .contains("relative humidity the final rebound angle changes by")
                .contains("upper 95 %")
                .contains("room.intercept")
                .contains("references: ");
        assertThat(ran.err()).as("nothing to say about sound folders").isEmpty();
    }

    @Test
    void setsParameters() {
        String folder = InventedFolders.of("elm").toString();

        assertThat(Ran.with("analyze", "rebound-humidity", "--data", folder, "--set", "shot=rebound-45-cue")
                        .out())
                .contains("shot=rebound-45-cue");
        Ran unknown = Ran.with("analyze", "rebound-humidity", "--data", folder, "--set", "shto=x");
        assertThat(unknown.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(unknown.err()).contains("parameter shto is unknown");
    }

    @Test
    void listsTheAnalyzersAsJson() throws Exception {
        JsonNode analyzers =
                parsed(Ran.with("analyze", "--list", "--json").out()).path("analyzers");

        assertThat(names(analyzers.path(0))).startsWith("id", "version");
        assertThat(analyzers.findValuesAsText("id")).contains("rebound-humidity");
        assertThat(analyzers.path(0).path("question").asText()).endsWith("?");
    }

    @Test
    void asksWhichAnalyzer() {
        assertThat(Ran.with("analyze", "--data", "x").exitCode()).isEqualTo(ExitCodes.USAGE);
    }

    static JsonNode parsed(String json) throws IOException {
        return JsonText.tree(json.getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> names(JsonNode json) {
        List<String> names = new ArrayList<>();
        json.fieldNames().forEachRemaining(names::add);
        return names;
    }
}
