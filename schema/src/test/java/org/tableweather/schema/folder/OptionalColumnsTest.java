package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.record.OutcomeUncertainty;

/** What a folder may state beyond the usual: uncertainties, a bed channel, marks on video frames. */
class OptionalColumnsTest {
    @TempDir
    private Path directory;

    private static ExampleFolder withUncertainties() {
        StringBuilder csv = new StringBuilder();
        ExampleFolder.sound()
                .get("trials.csv")
                .lines()
                .forEach(line -> csv.append(line)
                        .append(
                                line.startsWith("session,")
                                        ? ",rebound_angle_u_deg,landing_offset_u_dia\n"
                                        : ",0.4,\n"));
        return ExampleFolder.sound().put("trials.csv", csv.toString());
    }

    @Test
    void uncertaintiesAreReadAndWritten() throws IOException {
        TestReading plain = TestReading.of(ExampleFolder.sound().writeTo(directory.resolve("plain")));
        TestReading stated = TestReading.of(withUncertainties().writeTo(directory.resolve("stated")));
        Path copy = directory.resolve("copy");
        try (ContributionWriter writer =
                ContributionWriter.into(copy, stated.contribution().orElseThrow())) {
            for (var trial : stated.trials) {
                writer.write(trial);
            }
        }

        assertThat(plain.trials.get(0).uncertainty()).isSameAs(OutcomeUncertainty.NONE);
        assertThat(stated.report().isRefused()).isFalse();
        assertThat(stated.trials).allMatch(trial -> trial.uncertainty().reboundAngleUDeg() == 0.4);
        assertThat(stated.trials.get(0).uncertainty().landingOffsetUDia()).isNaN();
        assertThat(TestReading.of(copy).trials)
                .extracting(trial -> trial.uncertainty().reboundAngleUDeg())
                .containsOnly(0.4);
        assertThat(stated.records.get("s1").digest())
                .isNotEqualTo(plain.records.get("s1").digest());
    }

    @Test
    void negativeUncertaintiesAreRefused() throws IOException {
        ExampleFolder folder = withUncertainties();
        folder.put("trials.csv", folder.get("trials.csv").replaceFirst("0\\.4", "-0.4"));

        TestReading reading = TestReading.of(folder.writeTo(directory.resolve("negative")));

        assertThat(reading.report().isRefused()).isTrue();
        assertThat(reading.report().findings().get(0).column()).contains("rebound_angle_u_deg");
    }

    private TestReading withBed(String header, String cell) throws IOException {
        StringBuilder csv = new StringBuilder();
        ExampleFolder.sound()
                .get("climate.csv")
                .lines()
                .forEach(line -> csv.append(line)
                        .append(line.startsWith("instrument") ? header : cell)
                        .append('\n'));
        return TestReading.of(
                ExampleFolder.sound().put("climate.csv", csv.toString()).writeTo(directory.resolve("bed" + cell)));
    }

    @Test
    void aLogMayHaveABedChannel() throws IOException {
        assertThat(withBed(",bed_c", ",24.5").report().findings()).isEmpty();
        assertThat(withBed(",bed_f", ",76.1").report().findings()).isEmpty();
        assertThat(withBed(",bed_c,bed_f", ",24.5,76.1").report().findings()).isEmpty();
        assertThat(withBed(",bed_c,bed_f", ",24.5,90").report().isRefused()).isTrue();
        assertThat(withBed(",bed_c", ",95").report().isRefused()).isTrue();
    }

    private static final String MARKS = """
            "marks": [{"camera": "cam1", "errorPx": 1.5, "points": [{"xDia": 0, "yDia": 0, "xPx": 100, "yPx": 700},
              {"xDia": 8, "yDia": 0, "xPx": 1370, "yPx": 700}, {"xDia": 8, "yDia": 4, "xPx": 1370, "yPx": 65},
              {"xDia": 0, "yDia": 4, "xPx": 100, "yPx": 65}]}], "shots": []""";

    @Test
    void contactsMayBeMarkedInPixels() throws IOException {
        String contacts = "session,trial,seq,point,rail,x_px,y_px,camera\ns1,1,1,start,,452.4,382.5,cam1\n"
                + "s1,1,2,rail,near,627.5,685.7,cam1\ns1,1,3,rail,far,968.4,79.3,cam1\n";
        Path folder = ExampleFolder.sound()
                .replace("contribution.json", "\"shots\": []", MARKS)
                .put("contacts.csv", contacts)
                .writeTo(directory.resolve("pixels"));

        TestReading reading = TestReading.of(folder);

        assertThat(reading.report().findings()).isEmpty();
        assertThat(reading.contribution().orElseThrow().marks().get(0).points()).hasSize(4);
        assertThat(Files.exists(folder.resolve("contacts.csv"))).isTrue();
    }

    @Test
    void threeKnownPointsAreTooFew() throws IOException {
        String three = MARKS.replaceFirst(",\\s*\\{\"xDia\": 0, \"yDia\": 4[^}]*}", "");
        TestReading reading = TestReading.of(ExampleFolder.sound()
                .replace("contribution.json", "\"shots\": []", three)
                .writeTo(directory.resolve("three")));

        assertThat(reading.report().isRefused()).isTrue();
        assertThat(reading.report().findings().get(0).message()).contains("3 of 4");
    }
}
