package org.tableweather.server;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.tableweather.schema.folder.ExampleFolder;

/** Rooms in several climates, enough for a pooled curve; each room its own contributor and folder. */
public final class SampleLeague {
    /** Rooms of the league. */
    public static final int ROOMS = 5;

    /** Sessions of each. */
    public static final int SESSIONS = 4;

    /** Attempts of each session. */
    public static final int TRIALS = 12;

    private SampleLeague() {}

    /** Writes the folders below a directory. */
    public static List<Path> writeTo(Path directory) throws IOException {
        List<Path> folders = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(20260112);
        for (int room = 0; room < ROOMS; room++) {
            folders.add(folder(room, random).writeTo(directory.resolve("room-" + room)));
        }
        return folders;
    }

    /** The contributor of a room. */
    public static String contributor(int room) {
        return "league-" + room;
    }

    private static ExampleFolder folder(int room, SplittableRandom random) {
        return ExampleFolder.sound()
                .remove("climate.csv")
                .put("contribution.json", contribution(room))
                .put("trials.csv", trials(random));
    }

    private static String contribution(int room) {
        StringBuilder sessions = new StringBuilder();
        for (int session = 0; session < SESSIONS; session++) {
            sessions.append(session == 0 ? "" : ", ")
                    .append("{\"id\": \"s%d\", \"table\": \"t1\", \"delivery\": \"ramp\", \"everyAttemptLogged\": true}"
                            .formatted(session));
        }
        return """
                {"schemaVersion": "1.0", "title": "League", "licence": "CC0-1.0", "invented": true,
                 "contributor": {"name": "%s"},
                 "rooms": [{"id": "hall", "name": "Hall %d"}],
                 "tables": [{"id": "t1", "room": "hall", "playingLengthMm": 2540, "playingWidthMm": 1270}],
                 "sessions": [%s]}
                """.formatted(contributor(room), room, sessions);
    }

    private static String trials(SplittableRandom random) {
        StringBuilder csv = new StringBuilder("session,trial,kind,shot,temp_c,rh_pct,final_rebound_angle_deg,made\n");
        double shift = random.nextGaussian(0, 1);
        for (int session = 0; session < SESSIONS; session++) {
            double rhPct = 30 + 12 * session + random.nextGaussian(0, 2);
            double tempC = random.nextGaussian(21, 1);
            for (int trial = 1; trial <= TRIALS; trial++) {
                double angle = 48 + shift - 0.08 * (rhPct - 50) + random.nextGaussian(0, 1.5);
                csv.append(String.format(
                        Locale.ROOT,
                        "s%d,%d,kick,kick-3-rail,%.1f,%.1f,%.2f,%s%n",
                        session,
                        trial,
                        tempC,
                        rhPct,
                        angle,
                        trial % 3 == 0 ? "yes" : "no"));
            }
        }
        return csv.toString();
    }
}
