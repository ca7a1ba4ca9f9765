package org.tableweather.schema.climate;

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
    static List<Row> rows(String name) {
        try (InputStream in = GoldenTable.class.getResourceAsStream("/golden/climate/" + name + ".csv")) {
            return CsvReader.builder().commentStrategy(CommentStrategy.SKIP).ofNamedCsvRecord(in).stream()
                    .map(Row::new)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The row of {@code facts.csv} with this key. */
    static Row fact(String key) {
        return rows("facts").stream()
                .filter(row -> row.text("key").equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no fact " + key));
    }

    /** One row. */
    record Row(NamedCsvRecord cells) {
        double number(String column) {
            return Double.parseDouble(text(column));
        }

        String text(String column) {
            return cells.getField(column);
        }

        boolean has(String column) {
            return !text(column).isEmpty();
        }

        double value() {
            return number("value");
        }

        double tolerance() {
            return number("tolerance");
        }

        /** Half a unit of the last digit as printed. */
        double halfDigit(String column) {
            String text = text(column);
            int point = text.indexOf('.');
            return 0.5 * Math.pow(10, point < 0 ? 0 : point + 1 - text.length()) * (1 + 1e-6);
        }

        @Override
        public String toString() {
            return cells.getFields().toString();
        }
    }
}
