package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.table.ClimateColumn;
import org.tableweather.schema.table.Column;

/**
 * The climate.csv of a folder: readings are added, a reading that is there already counts once, and example rows go.
 *
 * @param file where it is, or will be
 */
record ClimateFile(Path file) {
    static final String NAME = "climate.csv";

    private static final String USUAL_INSTRUMENT = "h1";
    private static final int DECIMALS = 3;

    /**
     * What adding did.
     *
     * @param added readings that are new
     * @param known readings that were there
     * @param examples example rows taken out
     */
    record Merged(long added, long known, long examples) {}

    /**
     * The file of a folder.
     *
     * @throws NoSuchFileException when there is no such folder
     */
    static ClimateFile in(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            throw new NoSuchFileException(folder.toString());
        }
        return new ClimateFile(folder.resolve(NAME));
    }

    /** The only instrument of a folder's contribution.json; {@code h1} where there is no folder. */
    static String onlyInstrument(Path folder) throws IOException {
        if (folder == null || !Files.exists(folder.resolve("contribution.json"))) {
            return USUAL_INSTRUMENT;
        }
        JsonNode instruments = JsonText.tree(Files.readAllBytes(folder.resolve("contribution.json")))
                .path("instruments");
        if (instruments.size() == 1) {
            return instruments.path(0).path("id").asText();
        }
        throw Failure.usage(
                folder + " has " + instruments.size() + " instruments", "say which one with --instrument ID");
    }

    /**
     * The readings of one instrument in the room's air, in the order of the file.
     *
     * @param instrument its id
     * @param clockAhead how far its clock was ahead; taken off
     */
    List<ClimateReading> readings(String instrument, Duration clockAhead) throws IOException {
        List<ClimateReading> readings = new ArrayList<>();
        try (CsvReader<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(file)) {
            for (NamedCsvRecord row : rows) {
                if (instrument.equals(cell(row, ClimateColumn.INSTRUMENT))) {
                    readings.add(reading(row, clockAhead));
                }
            }
        } catch (CsvParseException | DateTimeException | NumberFormatException e) {
            throw Failure.refused(file + ": " + e.getMessage(), "tableweather check on the folder tells row and remedy")
                    .because(e);
        }
        return readings;
    }

    private static ClimateReading reading(NamedCsvRecord row, Duration clockAhead) {
        double celsius = value(row, ClimateColumn.TEMP_C);
        return new ClimateReading(
                cell(row, ClimateColumn.INSTRUMENT),
                OffsetDateTime.parse(cell(row, ClimateColumn.TIME)).toInstant().minus(clockAhead),
                Double.isNaN(celsius) ? (value(row, ClimateColumn.TEMP_F) - 32) / 1.8 : celsius,
                value(row, ClimateColumn.RH_PCT),
                value(row, ClimateColumn.PRESSURE_HPA),
                value(row, ClimateColumn.BED_C),
                cell(row, ClimateColumn.PLACEMENT));
    }

    private static String cell(NamedCsvRecord row, ClimateColumn column) {
        return row.findField(column.header()).orElse("").strip();
    }

    private static double value(NamedCsvRecord row, ClimateColumn column) {
        String text = cell(row, column);
        return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
    }

    /** The readings as text, header included. */
    static String text(List<ClimateReading> readings) {
        return text(readings.stream().map(ClimateFile::cells).toList(), new LinkedHashSet<>());
    }

    /** Adds readings. */
    Merged add(List<ClimateReading> readings) throws IOException {
        List<Map<String, String>> rows = new ArrayList<>();
        Set<String> columns = new LinkedHashSet<>();
        long examples = Files.exists(file) ? readOld(rows, columns) : 0;
        Set<String> known = new HashSet<>();
        rows.forEach(row -> known.add(identity(row)));
        long added = 0;
        for (ClimateReading reading : readings) {
            Map<String, String> row = cells(reading);
            if (known.add(identity(row))) {
                rows.add(row);
                added++;
            }
        }
        Path fresh = file.resolveSibling(NAME + ".new");
        Files.writeString(fresh, text(rows, columns));
        Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
        return new Merged(added, readings.size() - added, examples);
    }

    private long readOld(List<Map<String, String>> rows, Set<String> columns) throws IOException {
        long examples = 0;
        try (CsvReader<NamedCsvRecord> old = CsvReader.builder().ofNamedCsvRecord(file)) {
            for (NamedCsvRecord row : old) {
                Map<String, String> cells = new TreeMap<>(row.getFieldsAsMap());
                columns.addAll(row.getHeader());
                if (!ClimateColumn.headers().containsAll(columns)) {
                    throw notOurs();
                }
                if (ExampleRows.PLACEMENT.equals(cells.get(ClimateColumn.PLACEMENT.header()))) {
                    examples++;
                } else {
                    rows.add(cells);
                }
            }
        } catch (CsvParseException e) {
            throw notOurs().because(e);
        }
        return examples;
    }

    private Failure notOurs() {
        return Failure.usage(
                file + " is there already, and is not comma-separated with the format's column names alone",
                "import without --into and join the two by hand, or move the old file away");
    }

    private static String identity(Map<String, String> row) {
        return row.get(ClimateColumn.INSTRUMENT.header()) + " " + row.get(ClimateColumn.TIME.header());
    }

    private static Map<String, String> cells(ClimateReading reading) {
        Map<String, String> cells = new TreeMap<>();
        cells.put(ClimateColumn.INSTRUMENT.header(), reading.instrument());
        cells.put(ClimateColumn.TIME.header(), reading.time().toString());
        cells.put(ClimateColumn.TEMP_C.header(), number(reading.tempC()));
        cells.put(ClimateColumn.RH_PCT.header(), number(reading.rhPct()));
        cells.put(ClimateColumn.PRESSURE_HPA.header(), number(reading.pressureHpa()));
        cells.put(ClimateColumn.BED_C.header(), number(reading.bedC()));
        cells.put(ClimateColumn.PLACEMENT.header(), reading.placement());
        return cells;
    }

    // three decimals are finer than any room sensor, and keep what a conversion of units gave
    private static String number(double value) {
        return Double.isNaN(value)
                ? ""
                : BigDecimal.valueOf(value)
                        .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                        .stripTrailingZeros()
                        .toPlainString();
    }

    private static String text(List<Map<String, String>> rows, Set<String> columns) {
        List<String> header = ClimateColumn.all().stream()
                .map(Column::header)
                .filter(name -> columns.contains(name)
                        || rows.stream()
                                .anyMatch(row -> !row.getOrDefault(name, "").isEmpty()))
                .toList();
        return CsvLines.of(
                header,
                rows.stream()
                        .map(row -> header.stream()
                                .map(name -> row.getOrDefault(name, ""))
                                .toList())
                        .toList());
    }
}
