package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Rail;

/** Readings and marked points row by row. Expected values: the rows as they are written here; 32 °F = 0 °C, 212 °F = 100 °C. */
class RecordingsTest {
    private static final String CLIMATE = "climate.csv";

    @TempDir
    Path directory;

    private final List<ClimateReading> readings = new ArrayList<>();
    private final List<Contact> contacts = new ArrayList<>();

    private void read(ExampleFolder folder) throws IOException {
        try (ContributionSource source =
                ContributionSource.of(folder.writeTo(directory.resolve("folder")), ArchiveLimits.defaults())) {
            Recordings.read(source, readings::add, contacts::add);
        }
    }

    @Test
    void everyReadingComesInTheOrderOfTheFile() throws IOException {
        read(ExampleFolder.sound().put(CLIMATE, """
                instrument;time;temp_f;rh_pct;pressure_hpa;bed_f;placement
                h1;2026-01-13T18:00:00+01:00;68;55,5;;;outdoor
                h1;2026-01-12T18:00:00.25+01:00;32;38;1003,5;50;
                h1;2026-01-12T18:00:00+01:00;;38;;;bed
                """));
        assertThat(readings)
                .extracting(ClimateReading::time)
                .containsExactly(
                        Instant.parse("2026-01-13T17:00:00Z"),
                        Instant.parse("2026-01-12T17:00:00.25Z"),
                        Instant.parse("2026-01-12T17:00:00Z"));
        assertThat(readings).extracting(ClimateReading::placement).containsExactly("outdoor", "", "bed");
        assertThat(readings).extracting(ClimateReading::rhPct).containsExactly(55.5, 38.0, 38.0);
        assertThat(readings.get(1).tempC()).isZero();
        assertThat(readings.get(1).bedC()).isCloseTo(10, within(1e-12));
        assertThat(readings.get(1).pressureHpa()).isEqualTo(1003.5);
        assertThat(readings.get(2).tempC()).isNaN();
        assertThat(contacts).isEmpty();
    }

    @Test
    void everyMarkedPointComesInTheOrderOfTheFile() throws IOException {
        read(DoubtfulFolders.filmed(ExampleFolder.sound(), ""));
        assertThat(contacts).extracting(Contact::seq).containsExactly(1, 2, 3);
        double none = Double.NaN;
        assertThat(contacts.get(1))
                .isEqualTo(new Contact(
                        "s1",
                        "2",
                        2,
                        Contact.Point.RAIL,
                        Optional.of(Rail.NEAR),
                        none,
                        none,
                        none,
                        none,
                        604.8,
                        685.7,
                        "cam1",
                        none));
    }

    /** A row that the checks refuse is never left out in silence. */
    @Test
    void aRowThatDoesNotPassIsNamed() {
        assertThatThrownBy(() -> read(ExampleFolder.sound().replace(CLIMATE, "38.5", "385")))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("climate.csv, row 3, column rh_pct")
                .hasMessageContaining("385");
        assertThatThrownBy(() -> read(DoubtfulFolders.filmed(ExampleFolder.sound(), "")
                        .replace("contacts.csv", "rail,near", "rail,")))
                .hasMessageContaining("contacts.csv, row 3, column rail");
        assertThatThrownBy(() -> read(ExampleFolder.sound().put("contribution.json", "{")))
                .hasMessageContaining("no contribution that can be read");
    }

    @Test
    void aFileThatNobodyWantsIsNotRead() throws IOException {
        ExampleFolder folder = ExampleFolder.sound().put(CLIMATE, "nothing of the kind\n1\n");
        try (ContributionSource source =
                ContributionSource.of(folder.writeTo(directory.resolve("folder")), ArchiveLimits.defaults())) {
            Recordings.read(source, ReadingSink.NONE, contacts::add);
        }
        assertThat(contacts).isEmpty();
    }
}
