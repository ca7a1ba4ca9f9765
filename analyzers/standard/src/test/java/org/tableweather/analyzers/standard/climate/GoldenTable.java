package org.tableweather.analyzers.standard.climate;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;

/** Values from outside this project, one CSV per source, the source in its first lines. */
final class GoldenTable {

    private GoldenTable() {}

    /** The rows of {@code golden/climate/<name>.csv}. */
    static List<NamedCsvRecord> rows(String name) {
        try (InputStream in = GoldenTable.class.getResourceAsStream("/golden/climate/" + name + ".csv")) {
            return CsvReader.builder().commentStrategy(CommentStrategy.SKIP).ofNamedCsvRecord(in).stream()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A whole column as numbers. */
    static double[] column(String name, String column) {
        return rows(name).stream()
                .mapToDouble(row -> Double.parseDouble(row.getField(column)))
                .toArray();
    }

    /** The value of {@code regain_points.csv} with this key. */
    static double point(String key) {
        return rows("regain_points").stream()
                .filter(row -> row.getField("key").equals(key))
                .mapToDouble(row -> Double.parseDouble(row.getField("value")))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no point " + key));
    }
}
