package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.record.Trial;

/**
 * What a marked path gives to a row that leaves it empty. Expected values: plane geometry worked by hand from the marks, with
 * a diamond of 317.5 mm and the centre one ball radius (28.575 mm, 0.09 diamond) inside the nose.
 */
class DerivedColumnsTest {
    private static final String TRIALS = "trials.csv";

    @TempDir
    Path directory;

    private ExampleFolder marked() {
        return DoubtfulFolders.marked(
                ExampleFolder.sound(), DoubtfulFolders.START, DoubtfulFolders.NEAR, DoubtfulFolders.LANDING);
    }

    private Trial second(ExampleFolder folder) throws IOException {
        TestReading reading = TestReading.of(folder.writeTo(directory.resolve("folder")));
        assertThat(reading.report().isRefused()).isFalse();
        return reading.sessions.get("s1").get(1);
    }

    @Test
    void areComputedWhereTheRowIsEmpty() throws IOException {
        ExampleFolder folder = marked();
        folder.put(TRIALS, folder.get(TRIALS).replaceFirst("(?m)^(s1,2,.*rebound-45-ramp).*$", "$1,,,"));

        Trial trial = second(folder);

        // atan((3.18 − 1.27)/(2 − 0.09)) = 45°
        assertThat(trial.approachAngleDeg()).isCloseTo(45, within(1e-6));
        // atan((6.93 − 3.18)/(3.91 − 0.09)) = 44.470°
        assertThat(trial.reboundAngleDeg()).isCloseTo(44.470, within(5e-4));
        assertThat(trial.finalReboundAngleDeg()).isEqualTo(trial.reboundAngleDeg());
        // the target is at 7
        assertThat(trial.landingOffsetDia()).isCloseTo(-0.07, within(1e-9));
        // √(1.91² + 1.91²) · 0.3175 m in 0.6 s
        assertThat(trial.approachSpeedMps()).isCloseTo(1.4293, within(5e-4));
        // √(3.75² + 3.82²) · 0.3175 m in 1.4 s
        assertThat(trial.reboundSpeedMps()).isCloseTo(1.2140, within(5e-4));
        assertThat(trial.rails()).isEqualTo(1);
        assertThat(trial.uncertainty().reboundAngleUDeg()).isBetween(0.1, 1.0);
    }

    @Test
    void leaveWhatWasTyped() throws IOException {
        Trial trial = second(marked());

        assertThat(trial.reboundAngleDeg()).isEqualTo(44.0);
        assertThat(trial.landingOffsetDia()).isZero();
        assertThat(trial.finalReboundAngleDeg()).isEqualTo(44.0);
    }

    @Test
    void comeFromFramesToo() throws IOException {
        ExampleFolder folder = DoubtfulFolders.filmed(ExampleFolder.sound(), "");
        folder.put(TRIALS, folder.get(TRIALS).replaceFirst("(?m)^(s1,2,.*rebound-45-ramp).*$", "$1,,,"));

        // the same path as above; a pixel is 2 mm
        assertThat(second(folder).reboundAngleDeg()).isCloseTo(44.470, within(0.02));
    }

    @Test
    void makeAnOutcomeColumnUnneeded() throws IOException {
        ExampleFolder folder = marked();
        StringBuilder csv = new StringBuilder("session,trial,started_at,kind,shot\n");
        StringBuilder contacts = new StringBuilder("session,trial,seq,point,rail,x_dia,y_dia,t_s\n");
        for (int i = 1; i <= 6; i++) {
            csv.append("s1,%d,2026-01-12T18:%02d:00+01:00,rebound,rebound-45-ramp\n".formatted(i, 5 + 2 * i));
            contacts.append("s1,%d,3,rail,far,6.9%d,3.91,2.0\n".formatted(i, i));
        }
        for (int i = 1; i <= 6; i++) {
            contacts.append("s1,%d,1,start,,1.27,2,0\n".formatted(i));
            contacts.append("s1,%d,2,rail,near,3.18,0.09,0.6\n".formatted(i));
        }
        folder.put(TRIALS, csv.toString()).put("contacts.csv", contacts.toString());

        // rows of a path may stand apart in the file
        assertThat(second(folder).landingOffsetDia()).isCloseTo(-0.08, within(1e-9));
    }
}
