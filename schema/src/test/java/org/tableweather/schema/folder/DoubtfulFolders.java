package org.tableweather.schema.folder;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** Contributions that are accepted, each with one thing that a check warns of or notes. */
public final class DoubtfulFolders {
    private static final String JSON = "contribution.json";
    private static final String TRIALS = "trials.csv";
    private static final String CLIMATE = "climate.csv";

    private static final List<Doubtful> ALL = new ArrayList<>();

    /**
     * One contribution that gives rise to doubt.
     *
     * @param check id of the check that must find it
     * @param companion id of a check that cannot but find something too; the same when there is none
     * @param change makes it of a sound one
     */
    public record Doubtful(String check, String companion, UnaryOperator<ExampleFolder> change) {

        /**
         * Writes it into a directory.
         *
         * @return the folder
         */
        public Path writeTo(Path directory) throws IOException {
            return change.apply(ExampleFolder.sound()).writeTo(directory.resolve(check));
        }

        @Override
        public String toString() {
            return check;
        }
    }

    private DoubtfulFolders() {}

    static {
        structureAndClimate();
        equipment();
        protocol();
    }

    /** All of them. */
    public static List<Doubtful> all() {
        return List.copyOf(ALL);
    }

    private static void add(String check, UnaryOperator<ExampleFolder> change) {
        ALL.add(new Doubtful(check, check, change));
    }

    private static void add(String check, String companion, UnaryOperator<ExampleFolder> change) {
        ALL.add(new Doubtful(check, companion, change));
    }

    private static ExampleFolder first(ExampleFolder f, String field) {
        return f.replace(JSON, "\"visit\": \"2026-01-12\"", field + ", \"visit\": \"2026-01-12\"");
    }

    private static void structureAndClimate() {
        add("structure.unknown-file", f -> f.put("photo.jpg", "x"));
        add("structure.unknown-field", f -> f.replace(JSON, "\"title\"", "\"headline\""));
        add("structure.unknown-column", f -> f.replace(TRIALS, ",made\n", ",luck\n"));
        add("structure.row-short", f -> f.put(TRIALS, f.get(TRIALS).replaceAll(",\n", "\n")));
        add("structure.spreadsheet-dialect", f -> f.put(TRIALS, f.get(TRIALS).replace(',', '\t')));
        add("structure.session-without-trials", f -> f.put(TRIALS, f.get(TRIALS).replaceAll("s2,.*\n", "")));
        add("units.temperature-unusual", f -> f.put(CLIMATE, f.get(CLIMATE).replaceAll(",20(\\.\\d+)?,", ",2$1,")));
        add("climate.unknown", f -> f.remove(CLIMATE));
        add(
                "climate.stated-by-hand",
                f -> f.remove(CLIMATE)
                        .put(JSON, f.get(JSON).replace("\"delivery\"", "\"tempC\": 21, \"rhPct\": 40, \"delivery\"")));
        add("climate.log-without-times", f -> f.put(TRIALS, f.get(TRIALS).replaceAll("2026-01-1\\dT[^,]*", "")));
        add(
                "climate.spot-differs-from-log",
                f -> f.put(
                        TRIALS, f.get(TRIALS).replace(",made\n", ",rh_pct\n").replaceAll("(?m)^(s1,.*),$", "$1,52")));
        add("climate.not-held", f -> f.put(CLIMATE, f.get(CLIMATE).replace("38.5", "48.5")));
        add("climate.bed-below-dew-point", f -> first(f, "\"bedC\": 4"));
        add(
                "climate.humidity-zero",
                f -> f.replace(CLIMATE, "2026-01-13T18:50:00+01:00,20.5,57.5", "2026-01-13T18:50:00+01:00,20.5,0"));
        add("climate.reading-repeated", f -> f.put(CLIMATE, f.get(CLIMATE) + "h1,2026-01-13T19:00:00+01:00,20.6,58\n"));
        add(
                "climate.readings-disordered",
                f -> f.put(CLIMATE, f.get(CLIMATE) + "h1,2026-01-13T17:50:00+01:00,20.6,55\n"));
        add(
                "climate.uncalibrated",
                f -> f.replace(JSON, "\"quantity\": \"humidity\"", "\"quantity\": \"temperature\""));
        add(
                "climate.log-gap",
                "climate.stated-by-hand",
                f -> f.put(CLIMATE, f.get(CLIMATE).replaceAll("h1,2026-01-13T18:[2-5]0.*\n", ""))
                        .put(JSON, f.get(JSON).replace("\"delivery\"", "\"tempC\": 21, \"rhPct\": 55, \"delivery\"")));
        add(
                "climate.no-instrument",
                "climate.unknown",
                f -> f.put(
                        JSON,
                        f.get(JSON).replace("\"ballSet\": \"b1\", \"instrument\": \"h1\"", "\"ballSet\": \"b1\"")));
    }

    private static void equipment() {
        add("equipment.table-size", f -> f.replace(JSON, "2540", "2500").replace(JSON, "1270", "1250"));
        add("equipment.table-ratio", f -> f.replace(JSON, "1270", "1300"));
        add("equipment.ball-size", f -> f.replace(JSON, "57.15", "56.5"));
        add("equipment.ball-mass", f -> f.replace(JSON, "\"massG\": 168", "\"massG\": 180"));
        add("equipment.nose-height", f -> f.replace(JSON, "36.3", "34"));
        add("equipment.cloth-unknown", f -> f.replace(JSON, "\"woolPct\": 85, ", ""));
    }

    private static void protocol() {
        add(
                "protocol.every-attempt-logged",
                f -> f.put(
                        JSON,
                        f.get(JSON).replaceFirst("\"everyAttemptLogged\": true", "\"everyAttemptLogged\": false")));
        add(
                "protocol.every-attempt-unstated",
                f -> f.put(JSON, f.get(JSON).replaceFirst(", \"everyAttemptLogged\": true", "")));
        add("protocol.only-made", f -> f.put(TRIALS, kicks(",yes")));
        add("protocol.trial-gap", f -> f.replace(TRIALS, "s1,15,", "s1,17,"));
        add(
                "protocol.order-fixed",
                f -> f.put(JSON, f.get(JSON).replaceFirst("\"orderRandomised\": true", "\"orderRandomised\": false")));
        add("protocol.order-unstated", f -> f.put(JSON, f.get(JSON).replaceFirst("\"orderRandomised\": true, ", "")));
        add("protocol.order-blocked", f -> f.put(TRIALS, blocked(f.get(TRIALS))));
        add("protocol.settled-short", f -> f.replace(JSON, "2026-01-12T14:00:00+01:00", "2026-01-12T17:00:00+01:00"));
        add("protocol.settled-unstated", f -> f.replace(JSON, ", \"settledFrom\": \"2026-01-12T14:00:00+01:00\"", ""));
        add(
                "protocol.few-trials",
                f -> f.put(
                        TRIALS,
                        f.get(TRIALS)
                                .replaceAll("s2,(\\d{2}|[5-9]),.*\n", "")
                                .replaceAll("(s2,.*)rebound-30-ramp", "$1rebound-45-ramp")));
        add("protocol.outcome-missing", f -> f.put(TRIALS, f.get(TRIALS).replaceFirst(",30\\.1,[^,]*,", ",30.1,,")));
        add(
                "protocol.approach-unknown",
                f -> f.replace(JSON, "\"shots\": []", "\"shots\": [{\"id\": \"mine\", \"kind\": \"rebound\"}]")
                        .put(TRIALS, f.get(TRIALS).replace("rebound-45-ramp,45,", "mine,,")));
        add(
                "protocol.kind-differs",
                f -> f.put(TRIALS, f.get(TRIALS).replaceAll("rebound,rebound-45-ramp", "rebound,kick-2-rail")));
        add("protocol.outside-session", f -> f.replace(JSON, "2026-01-12T18:05:00+01:00", "2026-01-12T20:05:00+01:00"));
        add(
                "geometry.final-differs",
                f -> f.put(
                        TRIALS,
                        f.get(TRIALS)
                                .replace(",landing_offset_dia,", ",final_rebound_angle_deg,")
                                .replaceAll("(?m),[^,]*,$", ",,")
                                .replaceFirst(",30\\.1,28\\.6,,", ",30.1,28.6,29.6,")));
        add(
                "geometry.negative-rebound",
                f -> f.put(TRIALS, f.get(TRIALS).replaceAll("(45|30\\.1),(\\d+\\.\\d+),", "$1,-$2,")));
        add("statistics.outlier", f -> f.put(TRIALS, f.get(TRIALS).replaceFirst(",45,42\\.5,", ",45,24.5,")));
    }

    private static String kicks(String made) {
        StringBuilder csv = new StringBuilder("session,trial,started_at,kind,shot,made\n");
        for (int session = 1; session <= 2; session++) {
            for (int trial = 1; trial <= 20; trial++) {
                csv.append("s%d,%d,2026-01-%dT18:%02d:00+01:00,kick,kick-2-rail%s\n"
                        .formatted(session, trial, 11 + session, 5 + trial, made));
            }
        }
        return csv.toString();
    }

    private static String blocked(String csv) {
        String[] lines = csv.split("\n");
        for (int i = 1; i <= 15; i++) {
            lines[i] = i <= 7
                    ? lines[i].replaceAll("rebound-..-ramp,[^,]*,[^,]*", "rebound-30-ramp,30.1,28." + i)
                    : lines[i].replaceAll("rebound-..-ramp,[^,]*,[^,]*", "rebound-45-ramp,45,43." + i % 7);
        }
        return String.join("\n", lines) + "\n";
    }
}
