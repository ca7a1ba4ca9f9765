package org.tableweather.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerPage;
import org.tableweather.analyzers.host.ChartSize;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** {@code tableweather analyze}. */
@Command(
        name = "analyze",
        description = "Answers a question over folders and releases (--data) or over what a server holds (--server).",
        footer = {
            "",
            "Examples:",
            "  tableweather analyze --list",
            "  tableweather analyze table-speed --explain",
            "  tableweather analyze rebound-humidity --data winter/ spring.zip --json",
            "  tableweather analyze rebound-humidity --data release-3/ my-hall/ --json",
            "  tableweather analyze rebound-humidity --data winter/ --set response=landing_offset_dia",
            "  tableweather analyze rebound-humidity --server http://127.0.0.1:8080 --keep",
            "  tableweather analyze rebound-humidity --data /shared/release-3 --spark spark://127.0.0.1:7077"
        })
final class AnalyzeCommand extends Subcommand {
    @Parameters(arity = "0..1", paramLabel = "ID", description = "Which analyzer; see --list.")
    private String id;

    @Option(names = "--list", description = "List the analyzers and their parameters.")
    private boolean list;

    @Option(
            names = "--explain",
            description =
                    "Describe the analyzer, or all when no ID is named: method, assumptions, when it declines, sources.")
    private boolean explain;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Option(
            names = "--keep",
            description = "Have the server keep the result under a name; tableweather rerun verifies it later.")
    private boolean keep;

    @Option(
            names = "--plots",
            paramLabel = "FOLDER",
            description = "Also draw every plot, as SVG and PNG, into this folder.")
    private Path plots;

    @Option(names = "--phone", description = "Draw the plots for a screen 360 px wide.")
    private boolean phone;

    @Option(names = "--overwrite", description = "Replace pictures of the same names in that folder.")
    private boolean overwrite;

    @Mixin
    private SparkOptions spark;

    @Mixin
    private DataOrServer where;

    record Analyzers(List<AnalyzerInfo> analyzers) {}

    record Pages(List<AnalyzerPage.Explained> analyzers) {}

    @Override
    public Integer call() throws Exception {
        if (list) {
            print(listed());
            return ExitCodes.DONE;
        }
        if (explain) {
            print(explained());
            return ExitCodes.DONE;
        }
        if (id == null) {
            throw new ParameterException(spec().commandLine(), "which analyzer? name its ID, or ask with --list");
        }
        if (keep) {
            if (spark.isTyped()) {
                throw Failure.usage("--keep is for a server, --spark for a cluster", "leave one of them out");
            }
            if (plots != null) {
                throw Failure.usage("--keep and --plots cannot be asked together", "draw with a second command");
            }
            printKept();
            return ExitCodes.DONE;
        }
        if (plots == null) {
            print(json ? new String(madeJson(), StandardCharsets.UTF_8) : AnalysisText.of(made()));
            return ExitCodes.DONE;
        }
        AnalysisRun run = made();
        PlotFiles files = new PlotFiles(run, plots, phone ? ChartSize.phone() : ChartSize.page());
        files.write(overwrite).forEach(file -> say("wrote " + file));
        print(json ? new String(AnalysisJson.bytes(run), StandardCharsets.UTF_8) : AnalysisText.of(run));
        return ExitCodes.DONE;
    }

    private byte[] madeJson() throws IOException {
        return spark.isTyped() ? where.json(id, spark, this) : where.json(id, this);
    }

    private AnalysisRun made() throws IOException {
        return spark.isTyped() ? AnalysisJson.read(where.json(id, spark, this)) : where.run(id, this);
    }

    private void printKept() throws IOException {
        ServerRun run = where.keep(id);
        byte[] result = run.result();
        print(json ? new String(result, StandardCharsets.UTF_8) : AnalysisText.of(AnalysisJson.read(result)));
        say("kept as run " + run.id() + "; verify it with: tableweather rerun " + run.id());
    }

    private String listed() throws IOException {
        List<AnalyzerInfo> infos =
                where.analyzers().catalogue().all().stream().map(Analyzer::info).toList();
        if (json) {
            return JsonText.of(new Analyzers(infos));
        }
        StringBuilder text = new StringBuilder();
        infos.forEach(info -> text.append(described(info)));
        return text.toString();
    }

    private String explained() throws IOException {
        AnalyzerChoice choice = where.analyzers();
        Collection<Analyzer<?>> chosen = id == null ? choice.catalogue().all() : List.<Analyzer<?>>of(choice.find(id));
        if (json) {
            return JsonText.of(new Pages(chosen.stream()
                    .map(Analyzer::info)
                    .map(AnalyzerPage::explained)
                    .toList()));
        }
        return id == null
                ? AnalyzerPage.of(chosen)
                : AnalyzerPage.of(choice.find(id).info());
    }

    private static String described(AnalyzerInfo info) {
        StringBuilder text = new StringBuilder(info.id() + " " + info.version() + "\n  " + info.question() + "\n");
        for (ParameterInfo parameter : info.parameters()) {
            String standard = parameter.standard().isEmpty() ? "" : " (standard: " + parameter.standard() + ")";
            String allowed = parameter.allowed().isEmpty() ? "" : "; one of " + String.join(", ", parameter.allowed());
            text.append("    --set ")
                    .append(parameter.name())
                    .append("=...  ")
                    .append(parameter.meaning())
                    .append(standard)
                    .append(allowed)
                    .append('\n');
        }
        return text.toString();
    }
}
