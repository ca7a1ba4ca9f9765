package org.tableweather.schema.logger;

import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.tableweather.schema.csv.CsvText;
import org.tableweather.schema.csv.Dialect;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.table.ClimateColumn;

/**
 * Turns a logger's own CSV into readings for {@code climate.csv}. Columns, units and the form of the times are guessed
 * from names and values unless the options name them, and the guesses are told. Readings keep the order of the file; a
 * repeated time, a time that summer time skips, and a row without temperature or humidity are left out and told.
 */
public final class LoggerImport {
    private static final double MM_HG = 1.33322387415;
    private static final double IN_HG = 33.8638866667;
    private static final double TOO_WARM_C = 45;

    private final LogOptions options;
    private final List<String> guesses = new ArrayList<>();
    private final List<ClimateReading> readings = new ArrayList<>();
    private final List<LogReport.Row> repeated = new ArrayList<>();
    private long repeatedCount;
    private long backwards;

    private LoggerImport(LogOptions options) {
        this.options = options;
    }

    /**
     * What came out of a log.
     *
     * @param readings in the order of the file
     * @param report what was done and met
     */
    public record Result(List<ClimateReading> readings, LogReport report) {}

    /**
     * Reads a log.
     *
     * @param log the file; closed by its owner
     * @param options what is known of it
     * @throws LogNotUnderstood when something must be named first; the message says what
     * @throws IOException when it cannot be read
     */
    public static Result read(InputStream log, LogOptions options) throws IOException, LogNotUnderstood {
        return new LoggerImport(options).run(log);
    }

    private Result run(InputStream log) throws IOException, LogNotUnderstood {
        LogRows rows = new LogRows(options);
        CsvText text = CsvText.open(log, Dialect::ofLog, bytes -> {});
        try {
            text.read(rows);
        } catch (CsvText.Broken e) {
            throw new LogNotUnderstood("row " + e.row() + ": " + e.getMessage());
        }
        LogColumns columns = rows.columns();
        guesses.addAll(rows.guesses());
        if (rows.commas() > 0 || text.dialect().separator() != ',') {
            guesses.add("the file is " + text.dialect().inWords(rows.points(), rows.commas()));
        }
        if (rows.times.isEmpty()) {
            throw new LogNotUnderstood(
                    "no row has a temperature in " + columns.names().get(columns.temp()) + " and a humidity in "
                            + columns.names().get(columns.rh()) + ": name the columns; " + rows.unreadable());
        }
        LogTimes.Format format = LogTimes.find(rows.times, options, guesses);
        WallClock clock = new WallClock(options.zone(), options.clockAhead());
        take(rows, columns, format, clock);
        return new Result(List.copyOf(readings), report(rows, columns, clock));
    }

    private void take(LogRows rows, LogColumns columns, LogTimes.Format format, WallClock clock)
            throws LogNotUnderstood {
        boolean fahrenheit = isFahrenheit(rows, columns);
        double humidityFactor = humidityFactor(rows);
        double pressureFactor = pressureFactor(columns);
        Set<Instant> seen = new HashSet<>();
        Instant previous = Instant.MIN;
        String timeColumn = columns.names().get(columns.time().get(0));
        for (int i = 0; i < rows.times.size(); i++) {
            String text = rows.times.get(i);
            Optional<LogTimes.Stamp> stamp = format.read(text);
            if (stamp.isEmpty()) {
                rows.leaveOut(rows.row(i), timeColumn, text, "not written as " + format.name());
                continue;
            }
            Optional<Instant> time = clock.instant(stamp.get());
            if (time.isEmpty()) {
                rows.leaveOut(
                        rows.row(i),
                        timeColumn,
                        text,
                        "summer time skips this time in " + options.zone().orElseThrow()
                                + ": if the clock did not follow it, give a fixed offset such as +01:00 as zone");
                continue;
            }
            backwards += time.get().isBefore(previous) ? 1 : 0;
            previous = time.get();
            if (!seen.add(time.get())) {
                repeat(rows.row(i), timeColumn, text);
                continue;
            }
            double temp = fahrenheit ? (rows.temp(i) - 32) / 1.8 : rows.temp(i);
            add(rows, columns, i, time.get(), temp, rows.rh(i) * humidityFactor, rows.pressure(i) * pressureFactor);
        }
    }

    private void repeat(long row, String column, String text) {
        repeatedCount++;
        if (repeated.size() < LogReport.KEPT) {
            repeated.add(new LogReport.Row(row, column, text, "this time was read before; the first reading stands"));
        }
    }

    private void add(
            LogRows rows, LogColumns columns, int index, Instant time, double temp, double rh, double pressure) {
        if (temp < ClimateColumn.TEMP_C.min() || temp > ClimateColumn.TEMP_C.max()) {
            String column = columns.names().get(columns.temp());
            rows.leaveOut(rows.row(index), column, Double.toString(rows.temp(index)), "not a room's temperature");
        } else if (rh < 0 || rh > 100) {
            String column = columns.names().get(columns.rh());
            rows.leaveOut(rows.row(index), column, Double.toString(rows.rh(index)), "not within 0 to 100 %");
        } else {
            readings.add(new ClimateReading(options.instrument(), time, temp, rh, pressure, options.placement()));
        }
    }

    private boolean isFahrenheit(LogRows rows, LogColumns columns) {
        if (options.tempUnit().isPresent()) {
            return options.tempUnit().get() == LogOptions.TempUnit.FAHRENHEIT;
        }
        String name = columns.names().get(columns.temp()).toLowerCase(Locale.ROOT);
        if (name.matches(".*(°\\s*c|celsius|[^a-z]c\\)?$).*")) {
            return false;
        }
        if (name.matches(".*(°\\s*f|fahrenheit|[^a-z]f\\)?$).*")) {
            guesses.add("temperature in °F, by the column's name");
            return true;
        }
        double[] values = new double[rows.times.size()];
        Arrays.setAll(values, rows::temp);
        Arrays.sort(values);
        double median = values.length == 0 ? 0 : values[values.length / 2];
        boolean fahrenheit = median > TOO_WARM_C;
        guesses.add("temperature in " + (fahrenheit ? "°F" : "°C") + ", since half of the values are below "
                + Math.round(median * 10) / 10.0);
        return fahrenheit;
    }

    private double humidityFactor(LogRows rows) {
        double highest = 0;
        for (int i = 0; i < rows.times.size(); i++) {
            highest = Math.max(highest, rows.rh(i));
        }
        if (highest > 1 || highest == 0) {
            return 1;
        }
        guesses.add("humidity as a share of 1, since no value is above 1");
        return 100;
    }

    private double pressureFactor(LogColumns columns) {
        if (columns.pressure() < 0) {
            return 1;
        }
        String name =
                columns.names().get(columns.pressure()).toLowerCase(Locale.ROOT).replaceAll("[ _-]", "");
        if (name.contains("mmhg") || name.contains("torr")) {
            guesses.add("pressure in mm Hg, by the column's name");
            return MM_HG;
        }
        if (name.contains("inhg")) {
            guesses.add("pressure in inches of mercury, by the column's name");
            return IN_HG;
        }
        guesses.add("pressure in hPa");
        return 1;
    }

    private LogReport report(LogRows rows, LogColumns columns, WallClock clock) {
        long[] times = readings.stream()
                .mapToLong(reading -> reading.time().toEpochMilli())
                .sorted()
                .toArray();
        long[] steps = new long[Math.max(0, times.length - 1)];
        Arrays.setAll(steps, i -> times[i + 1] - times[i]);
        long[] sorted = steps.clone();
        Arrays.sort(sorted);
        long median = sorted.length == 0 ? 0 : sorted[sorted.length / 2];
        List<LogReport.Gap> gaps = new ArrayList<>();
        long gapCount = 0;
        for (int i = 0; i < steps.length; i++) {
            if (steps[i] > options.gapFactor() * median) {
                gapCount++;
                if (gaps.size() < LogReport.KEPT) {
                    gaps.add(new LogReport.Gap(Instant.ofEpochMilli(times[i]), Instant.ofEpochMilli(times[i + 1])));
                }
            }
        }
        return new LogReport(
                rows.read(),
                readings.size(),
                columns.names(),
                List.copyOf(guesses),
                Duration.ofMillis(median),
                gaps,
                gapCount,
                List.copyOf(repeated),
                repeatedCount,
                backwards,
                clock.ambiguous(),
                List.copyOf(rows.unreadable()),
                rows.unreadableCount());
    }
}
