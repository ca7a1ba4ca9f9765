package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.record.ClimateReading;

/**
 * What is read of one session beside its trials. Expected places: the marks as written, a diamond of the 2540 by 1270 mm table
 * being 317.5 mm both ways; expected readings: the rows of the example's log.
 */
class SessionTracesTest {
    private static final double DIAMOND_M = 0.3175;
    private static final SessionTraces.Wanted FIRST = new SessionTraces.Wanted(
            "s1", Instant.parse("2026-01-12T17:05:00Z"), Instant.parse("2026-01-12T17:35:00Z"));

    @TempDir
    Path directory;

    private Optional<SessionTraces> read(ExampleFolder folder, SessionTraces.Wanted wanted) throws IOException {
        try (ContributionSource source =
                ContributionSource.of(folder.writeTo(directory.resolve("folder")), ArchiveLimits.defaults())) {
            return SessionTraces.read(source, wanted);
        }
    }

    @Test
    void pathsAreInMetresByTrial() throws IOException {
        SessionTraces traces = read(
                        DoubtfulFolders.marked(
                                ExampleFolder.sound(),
                                DoubtfulFolders.START,
                                DoubtfulFolders.NEAR,
                                DoubtfulFolders.LANDING),
                        FIRST)
                .orElseThrow();
        assertThat(traces.paths()).containsOnlyKeys("2");
        near(traces.paths().get("2"));
        assertThat(traces.complete()).isTrue();
    }

    @Test
    void pathsOnFramesAreBroughtToTheTable() throws IOException {
        SessionTraces traces =
                read(DoubtfulFolders.filmed(ExampleFolder.sound(), ""), FIRST).orElseThrow();
        near(traces.paths().get("2"));
    }

    private static void near(List<TablePoint> points) {
        double[][] marksDia = {{1.27, 2}, {3.18, 0.09}, {6.93, 3.91}};
        assertThat(points).hasSize(3);
        for (int i = 0; i < marksDia.length; i++) {
            // a pixel is a 158.75th of a diamond, the marks are written to a tenth of one
            assertThat(points.get(i).xM()).isCloseTo(marksDia[i][0] * DIAMOND_M, within(1e-3));
            assertThat(points.get(i).yM()).isCloseTo(marksDia[i][1] * DIAMOND_M, within(1e-3));
        }
    }

    @Test
    void theLogIsThatOfTheInstrumentWithinTheTime() throws IOException {
        ExampleFolder folder = ExampleFolder.sound();
        folder.put("climate.csv", folder.get("climate.csv") + "h2,2026-01-12T18:10:00+01:00,5,90\n");
        List<ClimateReading> log = read(folder, FIRST).orElseThrow().log();
        assertThat(log)
                .extracting(reading -> reading.time().toString())
                .containsExactly("2026-01-12T17:10:00Z", "2026-01-12T17:20:00Z", "2026-01-12T17:30:00Z");
        assertThat(log).extracting(ClimateReading::tempC).containsExactly(20.1, 20.2, 20.3);
        assertThat(log).extracting(ClimateReading::rhPct).containsExactly(38.5, 39.0, 39.5);
    }

    @Test
    void aSessionWithoutMarksOrLogHasNone() throws IOException {
        SessionTraces traces =
                read(ExampleFolder.sound().remove("climate.csv"), FIRST).orElseThrow();
        assertThat(traces.paths()).isEmpty();
        assertThat(traces.log()).isEmpty();
        assertThat(traces.position()).isZero();
    }

    @Test
    void anUnknownSessionHasNothing() throws IOException {
        assertThat(read(ExampleFolder.sound(), new SessionTraces.Wanted("s9", FIRST.from(), FIRST.to())))
                .isEmpty();
    }
}
