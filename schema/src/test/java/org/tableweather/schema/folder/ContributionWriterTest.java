package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.digest.Sha256;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Trial;

class ContributionWriterTest {
    private static final double NOT = Double.NaN;

    @TempDir
    Path directory;

    private Trial trial(String id, double angle, String note) {
        return new Trial(
                "s1",
                id,
                Optional.of(Instant.parse("2026-01-12T17:07:00.25Z")),
                Kind.REBOUND,
                "rebound-45-ramp",
                "",
                NOT,
                NOT,
                45,
                1e-7,
                NOT,
                NOT,
                NOT,
                angle,
                NOT,
                NOT,
                -0.125,
                Made.NO,
                1,
                NOT,
                NOT,
                NOT,
                NOT,
                NOT,
                -1,
                NOT,
                NOT,
                note,
                Climate.NONE);
    }

    private TestReading rewritten(TestReading reading, Path folder) throws IOException {
        try (ContributionWriter writer =
                ContributionWriter.into(folder, reading.contribution().orElseThrow())) {
            for (Trial trial : reading.trials) {
                writer.write(trial);
            }
        }
        return TestReading.of(folder);
    }

    @Test
    void writesWhatReadsBackAsTheSame() throws IOException {
        ExampleFolder example = ExampleFolder.sound().remove("climate.csv");
        TestReading reading = TestReading.of(example.writeTo(directory.resolve("first")));

        TestReading again = rewritten(reading, directory.resolve("second"));

        assertThat(again.contribution()).isEqualTo(reading.contribution());
        assertThat(again.trials.equals(reading.trials)).isTrue();
        assertThat(again.records).isEqualTo(reading.records);
    }

    @Test
    void writesOnlyColumnsThatSomeRowFills() throws IOException {
        TestReading reading = TestReading.of(ExampleFolder.sound().writeTo(directory.resolve("first")));
        Path folder = directory.resolve("second");
        try (ContributionWriter writer =
                ContributionWriter.into(folder, reading.contribution().orElseThrow())) {
            writer.write(trial("1", 44.5, ""));
            writer.write(trial("2", NOT, "a \"quoted\", note\nof two lines"));
            writer.write(new ClimateReading("h1", Instant.parse("2026-01-12T17:00:00Z"), 20.1, 38, NOT, ""));
            writer.write(new Contact("s1", "1", 1, Contact.Point.RAIL, Optional.of(Rail.NEAR), 3, 0.09, NOT, NOT, 0.5));
        }

        assertThat(Files.readString(folder.resolve("trials.csv")))
                .isEqualTo("session,trial,started_at,kind,shot,approach_angle_deg,approach_speed_mps,rebound_angle_deg,"
                        + "landing_offset_dia,made,rails,note\n"
                        + "s1,1,2026-01-12T17:07:00.250Z,rebound,rebound-45-ramp,45,0.0000001,44.5,-0.125,no,1,\n"
                        + "s1,2,2026-01-12T17:07:00.250Z,rebound,rebound-45-ramp,45,0.0000001,,-0.125,no,1,"
                        + "\"a \"\"quoted\"\", note\nof two lines\"\n");
        assertThat(Files.readString(folder.resolve("climate.csv")))
                .isEqualTo("instrument,time,temp_c,rh_pct\nh1,2026-01-12T17:00:00Z,20.1,38\n");
        assertThat(Files.readString(folder.resolve("contacts.csv")))
                .isEqualTo("session,trial,seq,point,rail,x_dia,y_dia,t_s\ns1,1,1,rail,near,3,0.09,0.5\n");
        assertThat(TestReading.of(folder).trials.get(1).note()).isEqualTo("a \"quoted\", note\nof two lines");
    }

    @Test
    void leavesNothingBehindWhenAbandoned() throws IOException {
        TestReading reading = TestReading.of(ExampleFolder.sound().writeTo(directory.resolve("first")));
        Path folder = directory.resolve("second");
        try (ContributionWriter writer =
                ContributionWriter.into(folder, reading.contribution().orElseThrow())) {
            writer.write(trial("1", 44.5, ""));
            writer.abandon();
        }

        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void showsNothingUntilItIsComplete() throws IOException {
        TestReading reading = TestReading.of(ExampleFolder.sound().writeTo(directory.resolve("first")));
        Path folder = directory.resolve("second");
        try (ContributionWriter writer =
                ContributionWriter.into(folder, reading.contribution().orElseThrow())) {
            writer.write(trial("1", 44.5, ""));
            assertThat(folder.resolve("contribution.json")).doesNotExist();
            assertThat(folder.resolve("trials.csv")).doesNotExist();
        }

        assertThat(folder).isDirectoryNotContaining(path -> path.toString().endsWith(".part"));
        assertThat(folder.resolve("contribution.json")).exists();
    }

    @Test
    void doesNotOverwriteAContribution() throws IOException {
        TestReading reading = TestReading.of(ExampleFolder.sound().writeTo(directory));

        assertThatThrownBy(() -> ContributionWriter.into(
                        directory, reading.contribution().orElseThrow()))
                .isInstanceOf(FileAlreadyExistsException.class);
    }

    @Test
    void packsEqualContentIntoEqualBytes() throws IOException {
        Path one = ExampleFolder.sound().writeTo(directory.resolve("one"));
        Path two = ExampleFolder.sound().put("photo.jpg", "x").writeTo(directory.resolve("two"));
        for (String file : List.of("trials.csv", "contribution.json")) {
            Files.setLastModifiedTime(two.resolve(file), FileTime.from(Instant.parse("2020-01-01T00:00:00Z")));
        }
        byte[] digest = ContributionWriter.pack(one, directory.resolve("one.zip"));
        assertThat(digest).isEqualTo(Sha256.of(directory.resolve("one.zip")));
        ContributionWriter.pack(two, directory.resolve("two.zip"));

        assertThat(directory.resolve("one.zip")).hasSameBinaryContentAs(directory.resolve("two.zip"));
        assertThat(TestReading.of(directory.resolve("one.zip")).report().findings())
                .isEmpty();
        assertThat(directory).isDirectoryNotContaining(path -> path.toString().endsWith(".part"));
    }

    @Test
    void packsNoFolderWithoutContribution() throws IOException {
        Path empty = Files.createDirectory(directory.resolve("empty"));

        assertThatThrownBy(() -> ContributionWriter.pack(empty, directory.resolve("empty.zip")))
                .isInstanceOf(FileNotFoundException.class)
                .hasMessageContaining("contribution.json");
        assertThat(directory.resolve("empty.zip")).doesNotExist();
    }
}
