package org.tableweather.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.logger.LogNotUnderstood;
import org.tableweather.schema.logger.LogOptions;
import org.tableweather.schema.logger.LogReport;
import org.tableweather.schema.logger.LoggerImport;
import org.tableweather.schema.logger.Smoothing;
import org.tableweather.schema.record.ClimateReading;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** {@code tableweather climate import}. */
@Command(
        name = "import",
        description =
                "Turns a logger's CSV into climate.csv. What is not stated is guessed from names and values, and told;"
                        + " gaps, repeated times and rows left out are told also.",
        footer = {
            "",
            "Examples:",
            "  tableweather climate import log.csv --zone Europe/Oslo --into my-hall",
            "  tableweather climate import log.csv --zone +01:00 --instrument h2 --time-column Date,Clock --unit F"
        })
final class ClimateImportCommand extends Subcommand {
    @Parameters(paramLabel = "FILE", description = "The logger's file.")
    private Path file;

    @Option(
            names = "--instrument",
            paramLabel = "ID",
            description = "Instrument in contribution.json; standard: the only one of --into's folder, else h1.")
    private String instrument;

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            converter = Zone.class,
            description = "Zone of times that state none: Europe/Oslo, +01:00, Z.")
    private ZoneId zone;

    @Option(
            names = "--time-column",
            paramLabel = "NAME",
            split = ",",
            description = "Column of the time, or two with a comma between: date, time of day.")
    private List<String> timeColumns = List.of();

    @Option(names = "--temp-column", paramLabel = "NAME", description = "Column of the air temperature.")
    private String tempColumn;

    @Option(names = "--rh-column", paramLabel = "NAME", description = "Column of the relative humidity.")
    private String rhColumn;

    @Option(names = "--pressure-column", paramLabel = "NAME", description = "Column of the station's pressure.")
    private String pressureColumn;

    @Option(
            names = "--time-format",
            paramLabel = "PATTERN",
            description = "How times are written: dd.MM.yyyy HH:mm, M/d/yyyy h:mm a ...")
    private String timeFormat;

    enum Unit {
        C,
        F
    }

    @Option(names = "--unit", paramLabel = "C|F", description = "Unit of the temperature.")
    private Unit unit;

    @Option(
            names = "--clock-offset",
            paramLabel = "TIME",
            converter = Offset.class,
            description = "How far the logger's clock was ahead, negative for behind: 90s, -5m, 1h. It is taken off.")
    private Duration clockOffset = Duration.ZERO;

    @Option(
            names = "--smooth",
            paramLabel = "TIME",
            converter = Offset.class,
            description = "Replace each reading by the centred mean over this time, never across a gap; not done unless"
                    + " asked for, and stated in the report.")
    private Duration smooth;

    @Option(
            names = "--gap-factor",
            paramLabel = "N",
            defaultValue = "3",
            description =
                    "How many usual steps make a gap, which is reported and never filled; standard: ${DEFAULT-VALUE}.")
    private double gapFactor;

    @Option(
            names = "--placement",
            paramLabel = "WHERE",
            defaultValue = "room",
            description = "Where the sensor was; standard: ${DEFAULT-VALUE}.")
    private String placement;

    @Option(
            names = "--into",
            paramLabel = "FOLDER",
            description = "Add the readings to this folder's climate.csv; without it they are printed.")
    private Path into;

    @Option(names = "--json", description = "Print the report as JSON; needs --into.")
    private boolean json;

    @Override
    public Integer call() throws Exception {
        if (json && into == null) {
            throw Failure.usage(
                    "--json without --into: readings and report cannot both be printed", "add --into FOLDER");
        }
        if (!(gapFactor > 1)) {
            throw Failure.usage("--gap-factor " + gapFactor + " must be above 1", "3 is usual");
        }
        LoggerImport.Result result = read(options());
        if (result.readings().isEmpty()) {
            say(LogReportText.of(result.report()));
            throw Failure.refused(
                    "no row of " + file + " gave a reading", "name columns and time format; see climate import --help");
        }
        Optional<Smoothing> smoothing = smoothing(result.report());
        List<ClimateReading> readings =
                smoothing.map(mean -> mean.of(result.readings())).orElse(result.readings());
        if (into == null) {
            print(ClimateFile.text(readings));
        } else {
            ClimateFile.Merged merged = ClimateFile.in(into).add(readings);
            say("added " + merged.added() + " readings to " + into.resolve(ClimateFile.NAME)
                    + (merged.known() > 0 ? "; " + merged.known() + " were there already" : "")
                    + (merged.examples() > 0 ? "; took out " + merged.examples() + " example rows" : ""));
        }
        if (json) {
            print(JsonText.of(LogReportText.json(result.report(), smoothing)));
        } else {
            say(LogReportText.of(result.report()));
            smoothing.ifPresent(mean -> say("  smoothed: " + mean.inWords()));
        }
        return ExitCodes.DONE;
    }

    private Optional<Smoothing> smoothing(LogReport report) {
        if (smooth == null) {
            return Optional.empty();
        }
        if (smooth.isNegative() || smooth.isZero() || report.medianStep().isZero()) {
            throw Failure.usage("--smooth " + smooth.toSeconds() + "s cannot be a window", "write 10m or 600s");
        }
        Duration gap = Duration.ofMillis((long) (gapFactor * report.medianStep().toMillis()));
        return Optional.of(new Smoothing(smooth, gap));
    }

    private LoggerImport.Result read(LogOptions options) throws IOException {
        LocalData.mustExist(file);
        try (InputStream log = Files.newInputStream(file)) {
            return LoggerImport.read(log, options);
        } catch (LogNotUnderstood e) {
            throw Failure.refused(
                            file + ": " + e.getMessage(),
                            "state what is missing: --zone, --time-column, --time-format, --temp-column, --rh-column")
                    .because(e);
        } catch (IllegalArgumentException e) {
            throw Failure.usage(e.getMessage(), "see climate import --help").because(e);
        }
    }

    private LogOptions options() throws IOException {
        String id = instrument != null ? instrument : ClimateFile.onlyInstrument(into);
        LogOptions options = LogOptions.of(id)
                .withPlacement(placement)
                .withTimeColumns(timeColumns)
                .withClockAhead(clockOffset)
                .withGapFactor(gapFactor);
        options = tempColumn == null ? options : options.withTempColumn(tempColumn);
        options = rhColumn == null ? options : options.withRhColumn(rhColumn);
        options = pressureColumn == null ? options : options.withPressureColumn(pressureColumn);
        options = timeFormat == null ? options : options.withTimePattern(timeFormat);
        options = zone == null ? options : options.withZone(zone);
        return unit == null
                ? options
                : options.withTempUnit(unit == Unit.C ? LogOptions.TempUnit.CELSIUS : LogOptions.TempUnit.FAHRENHEIT);
    }

    static final class Zone implements ITypeConverter<ZoneId> {
        @Override
        public ZoneId convert(String text) {
            try {
                return ZoneId.of(text);
            } catch (DateTimeException e) {
                throw new TypeConversionException("'" + text + "' is no zone: write Europe/Oslo, +01:00 or Z");
            }
        }
    }

    static final class Offset implements ITypeConverter<Duration> {
        @Override
        public Duration convert(String text) {
            if (!text.matches("[+-]?[0-9]{1,9}[smh]")) {
                throw new TypeConversionException("'" + text + "' is no time: write 90s, -5m or 1h");
            }
            long count = Long.parseLong(text.substring(0, text.length() - 1));
            return switch (text.charAt(text.length() - 1)) {
                case 's' -> Duration.ofSeconds(count);
                case 'm' -> Duration.ofMinutes(count);
                default -> Duration.ofHours(count);
            };
        }
    }
}
