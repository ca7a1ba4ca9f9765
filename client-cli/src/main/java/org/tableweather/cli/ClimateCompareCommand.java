package org.tableweather.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import org.tableweather.analyzers.standard.climate.LoggerComparison;
import org.tableweather.schema.logger.LogNotUnderstood;
import org.tableweather.schema.logger.LogOptions;
import org.tableweather.schema.logger.LoggerImport;
import org.tableweather.schema.record.ClimateReading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather climate compare}. */
@Command(
        name = "compare",
        description =
                "Holds two loggers of one room against each other: two log files, or two instruments of one folder."
                        + " Humidity is also compared with the vapour brought to the first one's temperature, which tells a"
                        + " warmer corner from a faulty sensor.",
        footer = {
            "",
            "Examples:",
            "  tableweather climate compare wall.csv table.csv --zone Europe/Oslo",
            "  tableweather climate compare my-hall --instrument h1 h2"
        })
final class ClimateCompareCommand extends Subcommand {
    @Parameters(
            arity = "1..2",
            paramLabel = "FILE",
            description = "Two files of loggers; or one folder or climate.csv, with --instrument.")
    private List<Path> files;

    @Option(
            names = "--instrument",
            arity = "2",
            paramLabel = "ID",
            description = "The two instruments, where both are in one climate.csv.")
    private List<String> instruments = List.of();

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            converter = ClimateImportCommand.Zone.class,
            description = "Zone of times that state none: Europe/Oslo, +01:00, Z.")
    private ZoneId zone;

    @Option(
            names = "--clock-offset",
            paramLabel = "TIME",
            converter = ClimateImportCommand.Offset.class,
            description = "How far the second logger's clock was ahead of the first one's: 90s, -5m, 1h.")
    private Duration clockOffset = Duration.ZERO;

    @Option(
            names = "--max-gap",
            paramLabel = "TIME",
            defaultValue = "30m",
            converter = ClimateImportCommand.Offset.class,
            description = "Widest gap of the second logger to draw a straight line across; standard: ${DEFAULT-VALUE}.")
    private Duration maxGap;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    record Outcome(
            String first,
            String second,
            LoggerComparison comparison,
            String agreement,
            boolean temperaturesApart,
            String reference) {}

    @Override
    public Integer call() throws Exception {
        boolean oneFolder = instruments.size() == 2;
        if (oneFolder == (files.size() == 2)) {
            throw Failure.usage(
                    "two files, or one folder with --instrument A B, are wanted", "see climate compare --help");
        }
        for (Path file : files) {
            LocalData.mustExist(file);
        }
        List<ClimateReading> first = oneFolder ? of(instruments.get(0)) : read(files.get(0), Duration.ZERO);
        List<ClimateReading> second = oneFolder ? of(instruments.get(1)) : read(files.get(1), clockOffset);
        LoggerComparison comparison = LoggerComparison.of(first, second, maxGap)
                .orElseThrow(() -> Failure.refused(
                        "the two have fewer than two times in common",
                        "check --zone and --clock-offset, or widen --max-gap"));
        Outcome outcome = outcome(oneFolder, comparison);
        print(json ? JsonText.of(outcome) : LoggerComparisonText.of(outcome));
        return ExitCodes.DONE;
    }

    private Outcome outcome(boolean oneFolder, LoggerComparison comparison) {
        return new Outcome(
                oneFolder ? instruments.get(0) : files.get(0).toString(),
                oneFolder ? instruments.get(1) : files.get(1).toString(),
                comparison,
                comparison.agreement().name().toLowerCase(java.util.Locale.ROOT),
                comparison.differInTemperature(),
                "Morgner2017");
    }

    private List<ClimateReading> of(String instrument) throws IOException {
        Path file = Files.isDirectory(files.get(0)) ? files.get(0).resolve(ClimateFile.NAME) : files.get(0);
        LocalData.mustExist(file);
        List<ClimateReading> readings = new ClimateFile(file).readings(instrument, clockOffset(instrument));
        if (readings.isEmpty()) {
            throw Failure.usage(file + " has no readings of " + instrument, "name an instrument that is in it");
        }
        return readings;
    }

    private Duration clockOffset(String instrument) {
        return instrument.equals(instruments.get(1)) ? clockOffset : Duration.ZERO;
    }

    private List<ClimateReading> read(Path file, Duration ahead) throws IOException {
        LogOptions options = LogOptions.of("h1").withClockAhead(ahead);
        try (InputStream log = Files.newInputStream(file)) {
            return LoggerImport.read(log, zone == null ? options : options.withZone(zone))
                    .readings();
        } catch (LogNotUnderstood e) {
            throw Failure.refused(
                            file + ": " + e.getMessage(),
                            "bring it into a folder with climate import, which takes all details, and compare there")
                    .because(e);
        }
    }
}
