package org.tableweather.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.ChartSize;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code tableweather predict}. */
@Command(
        name = "predict",
        description =
                "Tells how far a pattern drifts between two climates, how sure that is, where to aim instead, and why.",
        footer = {
            "",
            "A shot of the catalogue (tableweather shots), or --start and --aim in diamonds.",
            "With --check-on-pool it tells instead how well the landings of each room are foretold from the others.",
            "",
            "Examples:",
            "  tableweather predict --shot kick-2-rail --from \"24C 40%\" --to \"24C 70%\" --data winter/ spring.zip",
            "  tableweather predict --shot kick-4-rail --from \"75F 40%\" --to \"75F 60%\" --room elm --plots pictures",
            "  tableweather predict --start 2,3 --aim 5.6,0.09 --speed-mps 2.5 --from \"21C 35%\" --to \"21C 65%\"",
            "  tableweather predict --shot kick-2-rail --check-on-pool --data winter/ spring.zip"
        })
final class PredictCommand extends Subcommand {
    private static final String ANALYZER = "path-prediction";

    @Option(names = "--shot", paramLabel = "ID", description = "A shot over rails of the catalogue.")
    private String shot;

    @Option(names = "--from", paramLabel = "CLIMATE", description = "The first climate: \"24C 40%%\" or \"75F 40%%\".")
    private String from;

    @Option(names = "--to", paramLabel = "CLIMATE", description = "The second climate.")
    private String to;

    @Option(names = "--room", paramLabel = "ID", description = "A room of the pool; otherwise a new room.")
    private String room;

    @Option(names = "--start", paramLabel = "X,Y", description = "Where the ball starts, diamonds along and across.")
    private String start;

    @Option(names = "--aim", paramLabel = "X,Y", description = "The point that it is sent at, diamonds.")
    private String aim;

    @Option(names = "--rails", paramLabel = "LIST", description = "The rails in order: near,foot,far,head.")
    private String rails;

    @Option(names = "--speed-mps", paramLabel = "SPEED", description = "Speed at the start, m/s.")
    private String speed;

    @Option(
            names = "--side-spin-rps",
            paramLabel = "SPIN",
            description = "Side spin at the start, revolutions a second, counter-clockwise from above.")
    private String spin;

    @Option(
            names = "--table-length-mm",
            paramLabel = "LENGTH",
            description = "Playing length of a new room's table, mm.")
    private String table;

    @Option(names = "--seed", paramLabel = "NUMBER", description = "Of all that is drawn; standard: 1.")
    private String seed;

    @Option(
            names = "--check-on-pool",
            description = "Hold the pool's landings of the shot against what the other rooms foretell.")
    private boolean check;

    @Option(names = "--json", description = "Print the analysis as JSON.")
    private boolean json;

    @Option(
            names = "--plots",
            paramLabel = "FOLDER",
            description = "Also draw both ways on the table, and the drift over humidity, as SVG and PNG.")
    private Path plots;

    @Option(names = "--phone", description = "Draw for a screen 360 px wide.")
    private boolean phone;

    @Option(names = "--overwrite", description = "Replace pictures of the same names in that folder.")
    private boolean overwrite;

    @Mixin
    private DataOrServer where;

    @Override
    public Integer call() throws Exception {
        mustSayEnough();
        set(where.parameters());
        AnalysisRun run = where.run(ANALYZER, this);
        if (plots != null) {
            PlotFiles files = new PlotFiles(run, plots, phone ? ChartSize.phone() : ChartSize.page());
            files.write(overwrite).forEach(file -> say("wrote " + file));
        }
        print(json ? new String(AnalysisJson.bytes(run), StandardCharsets.UTF_8) : text(run));
        return ExitCodes.DONE;
    }

    private String text(AnalysisRun run) {
        return check
                ? AnalysisText.of(run)
                : PredictionText.of(run, Terminal.current().columns());
    }

    private void mustSayEnough() {
        if (shot == null && (start == null || aim == null)) {
            throw Failure.usage(
                    "which shot?",
                    "name one with --shot ID (tableweather shots lists them), or give --start and --aim");
        }
        if (!check && (from == null || to == null)) {
            throw Failure.usage("between which climates?", "give both: --from \"24C 40%\" --to \"24C 70%\"");
        }
    }

    private void set(Map<String, String> parameters) {
        put(parameters, "shot", shot);
        put(parameters, "room", room);
        put(parameters, "start_dia", start);
        put(parameters, "aim_dia", aim);
        put(parameters, "rails", rails);
        put(parameters, "speed_mps", speed);
        put(parameters, "side_spin_rps", spin);
        put(parameters, "table_length_mm", table);
        put(parameters, "seed", seed);
        put(parameters, "task", check ? "check-on-pool" : null);
        climate(parameters, "--from", from, "from");
        climate(parameters, "--to", to, "to");
    }

    private static void climate(Map<String, String> parameters, String option, String text, String name) {
        if (text != null) {
            TypedClimate climate = TypedClimate.of(option, text);
            put(parameters, name + "_temp_c", plain(climate.tempC()));
            put(parameters, name + "_rh_pct", plain(climate.rhPct()));
        }
    }

    // to a thousandth of a kelvin, which no thermometer tells
    private static String plain(double number) {
        return new java.math.BigDecimal(number)
                .setScale(3, java.math.RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    private static void put(Map<String, String> parameters, String name, String value) {
        if (value != null) {
            parameters.put(name, value);
        }
    }
}
