package org.tableweather.schema.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Real logs of others, who print their own humidity ratio and dew point beside temperature and humidity. Their licence is not
 * confirmed, so they are not part of this project: without them the tests report themselves as skipped.
 */
class HygrometerLogTest {
    private static final String PROPERTY = "tableweather.climateLogs";

    /** Candanedo &amp; Feldheim 2016: one office, every minute, humidity ratio in kg/kg; one column more than the header names. @source Candanedo2016 */
    @Test
    void givesTheAuthorsHumidityRatioOnEveryRow() throws IOException {
        int compared = 0;
        for (CsvRecord row : rowsOf("office-minute-log.csv", 8)) {
            double ours = MoistAir.of(number(row, 2), number(row, 3)).humidityRatio();
            double theirs = number(row, 6);
            assertThat(ours).as("line " + row.getStartingLineNumber()).isCloseTo(theirs, within(1e-4 * theirs));
            compared++;
        }
        assertThat(compared).isEqualTo(2665);
    }

    /** Candanedo, Feldheim &amp; Deramaix 2017: the weather station's temperature, humidity and rounded dew point. @source Candanedo2017 */
    @Test
    void givesTheStationsDewPoint() throws IOException {
        int compared = 0;
        for (CsvRecord row : rowsOf("house-nine-rooms.csv", 21)) {
            double ours = MoistAir.of(number(row, 17), number(row, 19)).dewPointC();
            assertThat(ours).as("line " + row.getStartingLineNumber()).isCloseTo(number(row, 20), within(0.5));
            compared++;
        }
        assertThat(compared).isEqualTo(4932);
    }

    private static double number(CsvRecord row, int column) {
        return Double.parseDouble(row.getField(column).strip());
    }

    private static List<CsvRecord> rowsOf(String name, int columns) throws IOException {
        Path file = folder().resolve(name);
        assumeTrue(
                Files.isReadable(file),
                () -> "skipped: the log " + name + " is not there; its licence keeps it out of this "
                        + "project, set -D" + PROPERTY + "=FOLDER to a folder that holds it");
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(file)) {
            List<CsvRecord> rows = reader.stream().skip(1).toList();
            assertThat(rows).allMatch(row -> row.getFieldCount() == columns);
            return rows;
        }
    }

    /** As told, else the folder that lies beside a checkout. */
    private static Path folder() {
        String told = System.getProperty(PROPERTY);
        if (told != null) {
            return Path.of(told);
        }
        Path root = Path.of("").toAbsolutePath();
        while (root.getParent() != null && !Files.exists(root.resolve("mvnw"))) {
            root = root.getParent();
        }
        return root.resolve("../shared/reference/climate-logs").normalize();
    }
}
