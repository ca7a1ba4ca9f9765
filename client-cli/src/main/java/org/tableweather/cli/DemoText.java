package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.cli.demo.Truth;

/**
 * A demonstration's outcome for people and for programs.
 *
 * @param truth what the data were made from
 * @param url of the server
 * @param data its data folder
 * @param outcome what came of it
 */
record DemoText(Truth truth, URI url, Path data, DemoRun.Outcome outcome) {

    record Json(
            boolean invented,
            String page,
            String stop,
            List<String> curve,
            List<ContributionUpload.Answer> contributions,
            Truth truth,
            JsonNode analysis) {}

    String text() {
        long accepted = outcome.contributions().stream()
                .filter(answer -> answer.state().equals("accepted"))
                .count();
        StringBuilder text = new StringBuilder(
                "\nINVENTED DATA: every figure below comes from a seeded generator; nothing was measured anywhere.\n\n");
        text.append(accepted)
                .append(" of ")
                .append(outcome.contributions().size())
                .append(" contributions accepted. ")
                .append(TruthTable.of(truth, outcome.analysis()))
                .append('\n');
        if (outcome.curve().isEmpty()) {
            text.append("curve:  not drawn: ").append(outcome.notDrawn()).append('\n');
        }
        for (Path file : outcome.curve()) {
            text.append("curve:  ").append(file).append('\n');
        }
        text.append("page:   ").append(page()).append('\n');
        return text.append("stop:   ").append(stop()).append('\n').toString();
    }

    String json() throws IOException {
        return JsonText.of(new Json(
                true,
                page(),
                stop(),
                outcome.curve().stream().map(Path::toString).toList(),
                outcome.contributions(),
                truth,
                JsonText.tree(AnalysisJson.bytes(outcome.analysis()))));
    }

    private String page() {
        return url + "/";
    }

    private String stop() {
        String where = data.equals(DemoCommand.STANDARD_DATA) ? "" : " --data " + data;
        return "tableweather demo --stop" + where;
    }
}
