package org.tableweather.release;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import org.tableweather.schema.folder.ExampleFolder;

/**
 * A contribution with all that may be recorded beside trials: one instrument that serves two rooms and one that serves none,
 * readings in °F of every placement and out of order, marks on the table and on frames.
 */
final class RecordedFolder {
    /** Readings of the instrument that sessions use. */
    static final int READINGS = 43;
    /** Readings of the other. */
    static final int OTHER_READINGS = 1;

    static final int CONTACTS = 11;

    private static final int TRIALS = 12;

    private RecordedFolder() {}

    /** Writes it; equal contributors give equal content. */
    static Path write(Path folder, String contributor) throws IOException {
        ExampleFolder.sound()
                .put("contribution.json", CONTRIBUTION.formatted(contributor))
                .put("climate.csv", climate())
                .put("trials.csv", trials(contributor))
                .put("contacts.csv", CONTACT_ROWS)
                .writeTo(folder);
        return folder;
    }

    private static final String CONTRIBUTION = """
            {"schemaVersion": "1.0", "title": "Recorded", "licence": "CC0-1.0", "invented": true,
             "contributor": {"name": "%s"},
             "rooms": [{"id": "attic"}, {"id": "cellar"}],
             "tables": [{"id": "t1", "room": "attic", "playingLengthMm": 2540, "playingWidthMm": 1270},
               {"id": "t2", "room": "cellar", "playingLengthMm": 2540, "playingWidthMm": 1270}],
             "instruments": [{"id": "h1", "quantities": ["temperature", "humidity"]},
               {"id": "spare", "quantities": ["temperature", "humidity"]}],
             "marks": [{"camera": "cam1", "errorPx": 1.5, "points": [
                {"xDia": 0, "yDia": 0, "xPx": 100, "yPx": 700}, {"xDia": 8, "yDia": 0, "xPx": 1370, "yPx": 700},
                {"xDia": 8, "yDia": 4, "xPx": 1370, "yPx": 65}, {"xDia": 0, "yDia": 4, "xPx": 100, "yPx": 65}]}],
             "shots": [],
             "sessions": [
              {"id": "s1", "table": "t1", "instrument": "h1", "startedAt": "2026-01-12T18:00:00+01:00",
               "delivery": "ramp", "everyAttemptLogged": true},
              {"id": "s2", "table": "t2", "instrument": "h1", "startedAt": "2026-01-12T19:00:00+01:00",
               "delivery": "ramp", "everyAttemptLogged": true},
              {"id": "s3", "table": "t2", "delivery": "ramp", "everyAttemptLogged": true}]}
            """;

    /** Latest first; one time twice; a time finer than a microsecond; a reading of pressure alone; °F. */
    private static String climate() {
        StringBuilder csv = new StringBuilder("instrument,time,temp_f,rh_pct,pressure_hpa,bed_f,placement\n");
        for (int five = 36; five >= 0; five--) {
            csv.append(String.format(
                    Locale.ROOT,
                    "h1,2026-01-12T%02d:%02d:00+01:00,%.1f,%.1f,,%s,%s%n",
                    17 + five / 12,
                    five * 5 % 60,
                    68 + five / 10.0,
                    40 + five / 4.0,
                    five % 3 == 0 ? "70.5" : "",
                    five % 2 == 0 ? "room" : ""));
        }
        return csv.toString().replace(System.lineSeparator(), "\n") + """
                h1,2026-01-12T18:00:00+01:00,71.3,43.5,,,room
                h1,2026-01-12T18:02:00.1234567+01:00,69.3,43.1,,,
                h1,2026-01-12T18:03:00+01:00,,,1003.2,,
                h1,2026-01-12T18:00:00+01:00,31.2,88,,,outdoor
                h1,2026-01-12T18:00:00+01:00,70.1,,,,bed
                h1,2026-01-12T18:06:00+01:00,-4,5,,,outside
                spare,2026-01-12T18:00:00+01:00,99,99,,,
                """;
    }

    /** Equal sessions of two contributors would count once. */
    private static String trials(String contributor) {
        StringBuilder csv = new StringBuilder("session,trial,started_at,kind,shot,rebound_angle_deg\n");
        for (int session = 1; session <= 3; session++) {
            for (int trial = 1; trial <= TRIALS; trial++) {
                csv.append(String.format(
                        Locale.ROOT,
                        "s%d,%d,%s,rebound,rebound-30-ramp,%.1f%n",
                        session,
                        trial,
                        "2026-01-12T%02d:%02d:00+01:00".formatted(17 + session, trial),
                        28 + (trial * 7 + session) % 5 / 5.0 + contributor.charAt(0) % 7 / 10.0));
            }
        }
        return csv.toString().replace(System.lineSeparator(), "\n");
    }

    /** Trial 10 before trial 2; a session without an instrument. */
    private static final String CONTACT_ROWS = """
            session,trial,seq,point,rail,x_dia,y_dia,x_m,y_m,x_px,y_px,camera,t_s
            s1,10,1,start,,1.27,2,,,,,,0
            s1,10,2,rail,near,3.18,0.09,,,,,,0.6
            s1,10,3,rail,far,6.93,3.91,,,,,,1.75
            s1,2,1,start,,,,,,301.6,382.5,cam1,
            s1,2,2,rail,near,,,,,604.8,685.7,cam1,
            s1,2,3,rail,far,,,,,1200.1,79.3,cam1,
            s3,1,1,start,,,,0.4,0.6,,,,0
            s3,1,2,rail,near,,,1.0,0.03,,,,0.5
            s3,1,3,rail,far,,,2.2,1.24,,,,1.5
            s2,1,1,start,,1.27,2,,,,,,
            s2,1,2,rail,near,3.18,0.09,,,,,,
            """;
}
