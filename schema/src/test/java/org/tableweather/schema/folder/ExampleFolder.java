package org.tableweather.schema.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** A small folder without any fault, as texts by file name: the start of every faulty one. */
public final class ExampleFolder {
    private final Map<String, String> files = new LinkedHashMap<>();

    private ExampleFolder() {}

    /** Two sessions of one table with a log, and fifteen trials of two shots in each. */
    public static ExampleFolder sound() {
        ExampleFolder folder = new ExampleFolder();
        folder.put("contribution.json", CONTRIBUTION);
        folder.put("climate.csv", climate());
        folder.put("trials.csv", trials());
        return folder;
    }

    private static final String CONTRIBUTION = """
            {"schemaVersion": "1.0", "title": "Winter sessions", "licence": "CC-BY-4.0", "invented": true,
             "contributor": {"name": "A. Example", "orcid": "0000-0002-1825-0097"},
             "rooms": [{"id": "cellar", "name": "Cellar club", "country": "NO", "latitude": 59.9, "longitude": 10.7,
               "altitudeM": 90, "climateControl": ["heating", "dehumidifier"]}],
             "tables": [{"id": "t1", "room": "cellar", "playingLengthMm": 2540, "playingWidthMm": 1270,
               "cloth": {"woolPct": 85, "nylonPct": 15, "weave": "worsted", "weightGsm": 500, "fittedOn": "2025-03-01"},
               "cushion": {"rubber": "natural", "fittedOn": "2019-05-01", "noseHeightMm": 36.3}}],
             "ballSets": [{"id": "b1", "material": "phenolic", "diameterMm": 57.15, "massG": 168,
               "cleanedOn": "2026-01-10"}],
             "instruments": [{"id": "h1", "quantities": ["temperature", "humidity"], "accuracyRhPct": 2,
               "accuracyC": 0.3, "calibrations": [{"on": "2026-01-02", "quantity": "humidity",
               "method": "saturated-salt", "salt": "NaCl", "referenceValue": 75.3, "reading": 76.1}]}],
             "shots": [],
             "sessions": [
              {"id": "s1", "table": "t1", "ballSet": "b1", "instrument": "h1", "visit": "2026-01-12",
               "startedAt": "2026-01-12T18:05:00+01:00", "settledFrom": "2026-01-12T14:00:00+01:00",
               "delivery": "ramp", "orderRandomised": true, "everyAttemptLogged": true},
              {"id": "s2", "table": "t1", "ballSet": "b1", "instrument": "h1", "visit": "2026-01-13",
               "startedAt": "2026-01-13T18:05:00+01:00", "settledFrom": "2026-01-13T14:00:00+01:00",
               "delivery": "ramp", "orderRandomised": true, "everyAttemptLogged": true}]}
            """;

    private static String climate() {
        StringBuilder csv = new StringBuilder("instrument,time,temp_c,rh_pct\n");
        for (int day = 12; day <= 13; day++) {
            for (int minute = 0; minute <= 60; minute += 10) {
                csv.append("h1,2026-01-%d%s,%s,%s%n"
                        .formatted(
                                day,
                                "T%02d:%02d:00+01:00".formatted(18 + minute / 60, minute % 60),
                                20 + minute / 100.0,
                                (day == 12 ? 38 : 55) + minute / 20.0));
            }
        }
        return csv.toString().replace(System.lineSeparator(), "\n");
    }

    private static String trials() {
        StringBuilder csv = new StringBuilder(
                "session,trial,started_at,kind,shot,approach_angle_deg,rebound_angle_deg,landing_offset_dia,made\n");
        for (int session = 1; session <= 2; session++) {
            for (int trial = 1; trial <= 15; trial++) {
                boolean steep = (trial * 5 + session) % 3 == 0;
                double scatter = (trial * 7 + session) % 5 / 5.0;
                csv.append("s%d,%d,2026-01-%dT18:%02d:00+01:00,rebound,%s,%s,%s,%s,%n"
                        .formatted(
                                session,
                                trial,
                                11 + session,
                                5 + 2 * trial,
                                steep ? "rebound-30-ramp" : "rebound-45-ramp",
                                steep ? "30.1" : "45",
                                steep ? 28 + scatter : 42.5 + scatter,
                                scatter / 10));
            }
        }
        return csv.toString().replace(System.lineSeparator(), "\n");
    }

    /** The text of a file. */
    public String get(String file) {
        return files.get(file);
    }

    /** Puts a file in. */
    public ExampleFolder put(String file, String text) {
        files.put(file, text);
        return this;
    }

    /** Takes a file out. */
    public ExampleFolder remove(String file) {
        files.remove(file);
        return this;
    }

    /** Replaces a text that occurs in a file. */
    public ExampleFolder replace(String file, String text, String by) {
        String content = files.get(file);
        if (!content.contains(text)) {
            throw new IllegalArgumentException(file + " has no '" + text + "'");
        }
        return put(file, content.replace(text, by));
    }

    /** Writes it. */
    public Path writeTo(Path folder) throws IOException {
        Files.createDirectories(folder);
        for (Map.Entry<String, String> file : files.entrySet()) {
            Files.writeString(folder.resolve(file.getKey()), file.getValue());
        }
        return folder;
    }
}
