package org.tableweather.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.ChartSize;
import org.tableweather.analyzers.host.CurveChart;
import org.tableweather.analyzers.host.TextCurve;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather curve}. */
@Command(
        name = "curve",
        description = "Draws the pooled curve with every room's points, the mean and both bands:"
                + " in the terminal, or into a file.")
final class CurveCommand extends Subcommand {
    @Parameters(
            arity = "0..1",
            paramLabel = "ID",
            defaultValue = "rebound-humidity",
            description = "Which analyzer; standard: ${DEFAULT-VALUE}.")
    private String id;

    @Option(names = "--svg", paramLabel = "FILE", description = "Write an SVG.")
    private Path svg;

    @Option(names = "--png", paramLabel = "FILE", description = "Write a PNG.")
    private Path png;

    @Option(names = "--phone", description = "Draw for a screen 360 px wide.")
    private boolean phone;

    @Option(names = "--ascii", description = "Use no characters beyond ASCII in the terminal.")
    private boolean ascii;

    @Option(names = "--json", description = "Print the analysis as JSON; its plots hold the curve as data.")
    private boolean json;

    @Mixin
    private DataOrServer where;

    @Override
    public Integer call() throws Exception {
        AnalysisRun run = where.run(id, this);
        ChartSize size = phone ? ChartSize.phone() : ChartSize.page();
        if (svg != null) {
            write(svg, CurveChart.svg(run, size).getBytes(StandardCharsets.UTF_8));
        }
        if (png != null) {
            write(png, CurveChart.png(run, size));
        }
        if (json) {
            print(new String(AnalysisJson.bytes(run), StandardCharsets.UTF_8));
        } else if (svg == null && png == null) {
            Terminal terminal = Terminal.current();
            print(TextCurve.of(run, terminal.columns(), ascii ? TextCurve.Ink.ASCII : terminal.ink()));
        }
        return ExitCodes.DONE;
    }

    private void write(Path file, byte[] picture) throws IOException {
        Files.write(file, picture);
        say("wrote " + file);
    }
}
