package org.tableweather.cli;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.Finding;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** {@code tableweather check}. */
@Command(
        name = "check",
        description = "Judges contribution folders or .zip archives as a server would; nothing is sent.")
final class CheckCommand extends Subcommand {
    private static final List<String> CSV_HEADER = List.of(
            "path", "check", "severity", "file", "row", "column", "value", "bound", "message", "remedy", "reference");

    @Parameters(arity = "0..*", paramLabel = "PATH", description = "Contribution folder or .zip archive.")
    private List<Path> paths = List.of();

    @Option(
            names = "--explain",
            paramLabel = "ID",
            description =
                    "Tell one check's rule, bound, remedy and source, and read nothing: --explain units.humidity-range")
    private Optional<String> explain = Optional.empty();

    @Option(
            names = "--all",
            description = "Tell all findings, not the first " + FindingText.FEW + " of each check; a report keeps "
                    + CheckReport.KEPT_PER_CHECK + ".")
    private boolean all;

    @ArgGroup
    private Format format = new Format();

    static final class Format {
        @Option(names = "--json", description = "Print the reports as JSON.")
        private boolean json;

        @Option(names = "--csv", description = "Print the findings as CSV.")
        private boolean csv;
    }

    record Reports(boolean refused, List<PathReport> reports) {}

    record PathReport(String path, @JsonUnwrapped CheckReport report) {}

    @Override
    public Integer call() throws Exception {
        if (explain.isPresent()) {
            print(CheckExplanation.of(explain.get(), format.json));
            return ExitCodes.DONE;
        }
        if (paths.isEmpty()) {
            throw new ParameterException(spec().commandLine(), "name a folder or archive, or --explain a check");
        }
        for (Path path : paths) {
            LocalData.mustExist(path);
        }
        List<PathReport> reports = new ArrayList<>();
        for (Path path : paths) {
            CheckReport report = LocalData.check(path, Terminal.current()).report();
            reports.add(new PathReport(path.toString(), report));
            if (!format.json && !format.csv) {
                print(text(path, report));
                CautionText.lines(report).forEach(this::say);
            }
        }
        boolean refused = reports.stream().anyMatch(one -> one.report().isRefused());
        if (format.json) {
            print(JsonText.of(new Reports(refused, reports)));
        }
        if (format.csv) {
            print(CsvLines.of(
                    CSV_HEADER,
                    reports.stream().flatMap(one -> rows(one).stream()).toList()));
        }
        return refused ? ExitCodes.REFUSED : ExitCodes.DONE;
    }

    private String text(Path path, CheckReport report) {
        StringBuilder text = new StringBuilder(FindingText.headline(path.toString(), report)).append('\n');
        for (Map.Entry<String, String> dialect : report.dialects().entrySet()) {
            text.append("  read ")
                    .append(dialect.getKey())
                    .append(" as ")
                    .append(dialect.getValue())
                    .append('\n');
        }
        return text.append(FindingText.all(report, all ? CheckReport.KEPT_PER_CHECK : FindingText.FEW))
                .toString();
    }

    private static List<List<String>> rows(PathReport one) {
        return one.report().findings().stream()
                .map(finding -> row(one.path(), finding))
                .toList();
    }

    private static List<String> row(String path, Finding finding) {
        return List.of(
                path,
                finding.check(),
                finding.severity().schemaName(),
                finding.file(),
                finding.row().isPresent() ? Long.toString(finding.row().getAsLong()) : "",
                finding.column().orElse(""),
                finding.value().orElse(""),
                finding.bound(),
                finding.message(),
                finding.remedy(),
                finding.reference());
    }
}
