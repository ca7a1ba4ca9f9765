package org.tableweather.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.ChartSize;
import org.tableweather.analyzers.host.ChartUnavailable;
import org.tableweather.analyzers.host.CurveChart;
import org.tableweather.cli.demo.DemoShots;
import org.tableweather.schema.folder.ContributionWriter;

/**
 * One demonstration over HTTP: contribute, pool, draw.
 *
 * @param server where
 * @param command to talk through
 */
record DemoRun(LocalServer server, Subcommand command) {
    private static final String ACCOUNT = "invented-league";
    private static final int TOKEN_DAYS = 365;

    /**
     * What came of it.
     *
     * @param contributions what the server made of each folder
     * @param analysis the pooled answer
     * @param curve files with the curve; none on a machine without fonts
     * @param notDrawn why there are none; empty otherwise
     */
    record Outcome(
            List<ContributionUpload.Answer> contributions, AnalysisRun analysis, List<Path> curve, String notDrawn) {}

    /** Contributes the folders, pools, draws. */
    Outcome over(List<Path> folders) throws IOException {
        ServerClient client = new ServerClient(server.url(), Optional.of(contributorToken()));
        List<ContributionUpload.Answer> answers =
                contribute(new ContributionUpload(client, Terminal.current()), folders);
        String shot = DemoShots.ofTheCatalogue().pooled().id();
        AnalysisRun run = client.analysis("rebound-humidity", Map.of("shot", shot));
        try {
            return new Outcome(answers, run, drawn(run), "");
        } catch (ChartUnavailable e) {
            return new Outcome(answers, run, List.of(), e.getMessage());
        }
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

    private List<ContributionUpload.Answer> contribute(ContributionUpload upload, List<Path> folders)
            throws IOException {
        List<ContributionUpload.Answer> answers = new ArrayList<>();
        for (Path folder : folders) {
            Path archive = Files.createTempFile("tableweather-", ".zip");
            try {
                byte[] digest = ContributionWriter.pack(folder, archive);
                ContributionUpload.Answer answer = upload.send(archive, digest);
                command.say(answer.inWords(folder.getFileName()));
                if (answer.isRefused()) {
                    command.say(FindingText.refusals(answer.report()));
                    throw Failure.fault("the server refuses the invented room " + folder.getFileName(), "report this");
                }
                answers.add(answer);
            } finally {
                Files.deleteIfExists(archive);
            }
        }
        return answers;
    }

    private List<Path> drawn(AnalysisRun run) throws IOException {
        Path svg = server.data().resolve("curve.svg");
        Path png = server.data().resolve("curve.png");
        Files.write(svg, CurveChart.svg(run, ChartSize.page()).getBytes(StandardCharsets.UTF_8));
        Files.write(png, CurveChart.png(run, ChartSize.page()));
        return List.of(svg, png);
    }
}
