package org.tableweather.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.ChartSize;
import org.tableweather.analyzers.host.ChartUnavailable;
import org.tableweather.analyzers.host.CurveChart;
import org.tableweather.cli.demo.DemoShots;
import org.tableweather.cli.demo.Truth;
import org.tableweather.schema.folder.ContributionWriter;

/**
 * One demonstration over HTTP: contribute, pool, compare with the truth.
 *
 * @param server where
 * @param truth what the data were made from
 * @param command to talk through
 */
record DemoRun(LocalServer server, Truth truth, Subcommand command) {
    private static final String ACCOUNT = "invented-league";
    private static final int TOKEN_DAYS = 30;

    /** Contributes the folders and answers with what to print. */
    String over(List<Path> folders) throws IOException {
        ServerClient client = new ServerClient(server.url(), Optional.of(contributorToken()));
        int accepted = contribute(new ContributionUpload(client, Terminal.current()), folders);
        Map<String, String> question =
                Map.of("shot", DemoShots.ofTheCatalogue().pooled().id());
        AnalysisRun run = client.analysis("rebound-humidity", question);
        StringBuilder text = new StringBuilder();
        text.append(
                "\nINVENTED DATA: every figure below comes from a seeded generator; nothing was measured anywhere.\n\n");
        text.append(accepted + " of " + folders.size() + " contributions accepted. ");
        text.append(TruthTable.of(truth, run)).append('\n');
        text.append(drawn(run));
        text.append("page:   ").append(server.url()).append("/\n");
        return text.append("stop:   tableweather demo --stop")
                .append(server.data().equals(Path.of("tableweather-demo")) ? "" : " --data " + server.data())
                .append('\n')
                .toString();
    }

    // the token of an earlier run is used again; a name can be taken once only
    private String contributorToken() throws IOException {
        Path kept = server.data().resolve("demo-contributor-token");
        if (Files.exists(kept)) {
            return Files.readString(kept).strip();
        }
        String operator =
                Files.readString(server.data().resolve("operator-token")).strip();
        String token = new ServerAccounts(new ServerClient(server.url(), Optional.of(operator)))
                .add(ACCOUNT, "contributor", TOKEN_DAYS);
        OwnerOnly.write(kept, token);
        return token;
    }

    private int contribute(ContributionUpload upload, List<Path> folders) throws IOException {
        int accepted = 0;
        for (Path folder : folders) {
            Path archive = Files.createTempFile("tableweather-", ".zip");
            try {
                ContributionWriter.pack(folder, archive);
                ContributionUpload.Answer answer = upload.send(archive);
                command.say(answer.inWords(folder.getFileName()));
                if (answer.isRefused()) {
                    throw Failure.fault(
                            "the server refuses the invented room " + folder.getFileName() + ": "
                                    + FindingText.refusals(answer.report()),
                            "report this");
                }
                accepted += answer.state().equals("accepted") ? 1 : 0;
            } finally {
                Files.deleteIfExists(archive);
            }
        }
        return accepted;
    }

    private String drawn(AnalysisRun run) throws IOException {
        Path svg = server.data().resolve("curve.svg");
        Path png = server.data().resolve("curve.png");
        try {
            Files.write(svg, CurveChart.svg(run, ChartSize.page()).getBytes(StandardCharsets.UTF_8));
            Files.write(png, CurveChart.png(run, ChartSize.page()));
            return "curve:  " + svg + "\n        " + png + "\n";
        } catch (ChartUnavailable e) {
            return "curve:  not drawn: " + e.getMessage() + "\n";
        }
    }
}
