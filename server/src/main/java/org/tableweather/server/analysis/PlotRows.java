package org.tableweather.server.analysis;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import org.tableweather.analyzers.spi.Plot;

/** A plot's data as rows. */
final class PlotRows {
    private static final String[] HEADER = {"series", "mark", "x", "y", "lower", "upper"};

    private PlotRows() {}

    /**
     * Every point of every series as CSV; a cell is empty where the series has no such figure.
     *
     * @source RFC4180
     */
    static String csv(Plot plot) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().build(text)) {
            csv.writeRecord(HEADER);
            plot.series().forEach(series -> write(csv, series));
        } catch (IOException e) {
            throw new UncheckedIOException("memory can be written", e);
        }
        return text.toString();
    }

    private static void write(CsvWriter csv, Plot.Series series) {
        for (int i = 0; i < series.x().size(); i++) {
            csv.writeRecord(
                    series.name(),
                    series.mark().name().toLowerCase(Locale.ROOT),
                    cell(series.x(), i),
                    cell(series.y(), i),
                    cell(series.lower(), i),
                    cell(series.upper(), i));
        }
    }

    private static String cell(List<Double> numbers, int i) {
        return i < numbers.size() && Double.isFinite(numbers.get(i))
                ? numbers.get(i).toString()
                : "";
    }
}
