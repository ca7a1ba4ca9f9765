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
    private static final String CONTACTS = "contacts.csv";

    private static final String CALIBRATION = "\"referenceValue\": 75.3, \"reading\": 76.1}";

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
        instruments();
        airAndEquipment();
        outcomes();
        sessions();
        contacts();
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
                f -> f.put(JSON, f.get(JSON).replaceAll("\"calibrations\": \\[[^]]*]", "\"calibrations\": []")));
        add(
                "climate.log-gap",
                "climate.stated-by-hand",
                f -> f.put(CLIMATE, f.get(CLIMATE).replaceAll("h1,2026-01-13T18:[2-5]0.*\n", ""))
                        .replace(JSON, "\"id\": \"s2\",", "\"id\": \"s2\", \"tempC\": 21, \"rhPct\": 55,"));
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
        add("equipment.cloth-unknown", f -> f.replace(JSON, ", \"fittedOn\": \"2025-03-01\"", ""));
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
        add(
                "protocol.only-made",
                f -> f.put(TRIALS, kicks(",yes")).put(JSON, f.get(JSON).replace("\"ramp\"", "\"cue\"")));
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
                f -> f.put(TRIALS, f.get(TRIALS).replaceAll("rebound,rebound-45-ramp", "rebound,roll-out-ramp")));
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

    private static void instruments() {
        add("instrument.accuracy-unstated", f -> f.replace(JSON, "\"accuracyRhPct\": 2,", ""));
        add("instrument.accuracy-poor", f -> f.replace(JSON, "\"accuracyC\": 0.3", "\"accuracyC\": 2.5"));
        add(
                "instrument.resolution-coarse",
                f -> f.replace(JSON, "\"accuracyC\": 0.3", "\"accuracyC\": 0.3, \"resolutionC\": 1"));
        add("instrument.calibration-old", f -> f.replace(JSON, "2026-01-02", "2024-06-02"));
        add("instrument.calibration-error", f -> f.replace(JSON, "\"reading\": 76.1", "\"reading\": 87.1"));
        add("instrument.beyond-accuracy", f -> f.replace(JSON, "\"reading\": 76.1", "\"reading\": 79.1"));
        add(
                "instrument.drift",
                f -> f.replace(JSON, CALIBRATION, CALIBRATION.replace("76.1", "77.0") + second("75.4", "73.8")));
        add("instrument.salt-unknown", f -> f.replace(JSON, "NaCl", "table salt"));
        add("instrument.salt-value", f -> f.replace(JSON, "NaCl", "KCl"));
        add(
                "instrument.calibrated-quantity",
                f -> f.replace(
                                JSON,
                                CALIBRATION,
                                CALIBRATION + ", {\"on\": \"2026-01-02\", \"quantity\": \"temperature\", "
                                        + "\"referenceValue\": 20, \"reading\": 20.1}")
                        .replace(JSON, "[\"temperature\", \"humidity\"]", "[\"humidity\"]"));
        add(
                "instrument.salt-of-another-method",
                f -> f.replace(JSON, "\"saturated-salt\"", "\"reference-instrument\""));
    }

    static String second(String reference, String reading) {
        return ", {\"on\": \"2026-01-09\", \"quantity\": \"humidity\", \"method\": \"saturated-salt\", \"salt\": \"NaCl\", "
                + "\"referenceValue\": " + reference + ", \"reading\": " + reading + "}";
    }

    /** Moves the humidity of the log of the second session. */
    static ExampleFolder humidity(ExampleFolder f, int rhPct) {
        return f.put(
                CLIMATE, f.get(CLIMATE).replaceAll("(?m)^(h1,2026-01-13.*,)5(\\d\\.\\d)$", "$1" + rhPct / 10 + "$2"));
    }

    /** Moves the temperature of the whole log. */
    static ExampleFolder temperature(ExampleFolder f, int tempC) {
        return f.put(CLIMATE, f.get(CLIMATE).replaceAll(",20(\\.\\d+)?,", "," + tempC + "$1,"));
    }

    static ExampleFolder pressure(ExampleFolder f, int hPa) {
        return f.put(
                CLIMATE,
                f.get(CLIMATE).replace("rh_pct\n", "rh_pct,pressure_hpa\n").replaceAll("(?m)(\\d)$", "$1," + hPa));
    }

    /** A night of readings, every quarter of an hour for 7 h, warming by 2 K. */
    static ExampleFolder night(ExampleFolder f, double rhStep) {
        StringBuilder csv = new StringBuilder(f.get(CLIMATE));
        for (int i = 0; i <= 28; i++) {
            csv.append("h1,2026-01-14T%02d:%02d:00+01:00,%s,%s%n"
                    .formatted(i / 4, i % 4 * 15, 18 + i / 14.0, 50 - i * rhStep));
        }
        return f.put(CLIMATE, csv.toString().replace(System.lineSeparator(), "\n"));
    }

    private static void airAndEquipment() {
        add("climate.bed-damp", f -> first(f, "\"bedC\": 8.5"));
        add("climate.bed-unread", f -> f.replace(JSON, "\"playingWidthMm\"", "\"heated\": true, \"playingWidthMm\""));
        add("climate.heat-danger", f -> temperature(f, 38));
        add("climate.damp-room", f -> humidity(f, 70));
        add("climate.damp-mould", f -> humidity(f, 80));
        add(
                "climate.dew-point-extreme",
                f -> f.put(
                        CLIMATE,
                        humidity(f, 70).get(CLIMATE).replaceAll("(?m)^(h1,2026-01-13.*),20(\\.\\d+)?,", "$1,37$2,")));
        add("climate.temperature-jump", f -> f.put(CLIMATE, f.get(CLIMATE) + "h1,2026-01-13T19:10:00+01:00,26.6,58\n"));
        add("climate.humidity-jump", f -> f.put(CLIMATE, f.get(CLIMATE) + "h1,2026-01-13T19:10:00+01:00,20.6,75\n"));
        add("climate.humidity-stuck", f -> night(f, 0));
        add(
                "climate.pressure-altitude",
                f -> pressure(f.replace(JSON, "\"altitudeM\": 90", "\"altitudeM\": 1600"), 1013));
        add("climate.stated-differs-from-log", f -> first(f, "\"tempC\": 24, \"rhPct\": 38"));
        add(
                "climate.humidity-fraction",
                f -> f.put(CLIMATE, f.get(CLIMATE).replaceAll("(?m),(\\d\\d)\\.(\\d)$", ",0.$1$2")));
        add("equipment.cloth-fibres-short", f -> f.replace(JSON, "\"nylonPct\": 15, ", ""));
        add("equipment.cloth-weight", f -> f.replace(JSON, "\"weightGsm\": 500", "\"weightGsm\": 1000"));
        add("equipment.fitted-later", f -> f.replace(JSON, "2025-03-01", "2026-03-01"));
        add("equipment.cleaned-later", f -> f.replace(JSON, "2026-01-10", "2026-02-10"));
    }

    /** Fifteen trials of one kind in both sessions; {@code .#} stands for a fraction from .0 to .8, {@code ~} for its digit. */
    static ExampleFolder kind(ExampleFolder f, String kind, String shot, String columns, String cells) {
        StringBuilder csv = new StringBuilder("session,trial,started_at,kind,shot," + columns + "\n");
        for (int session = 1; session <= 2; session++) {
            for (int trial = 1; trial <= 15; trial++) {
                String scatter = Double.toString((trial * 7 + session) % 5 / 5.0);
                csv.append("s%d,%d,2026-01-%dT18:%02d:00+01:00,%s,%s,%s\n"
                        .formatted(
                                session,
                                trial,
                                11 + session,
                                5 + 2 * trial,
                                kind,
                                shot,
                                cells.replace(".#", scatter.substring(1)).replace("~", scatter.substring(2))));
            }
        }
        boolean byCue = !shot.endsWith("ramp");
        return f.put(TRIALS, csv.toString())
                .put(JSON, byCue ? f.get(JSON).replace("\"ramp\"", "\"cue\"") : f.get(JSON));
    }

    private static void outcome(String check, String kind, String shot, String columns, String cells) {
        add("outcome." + check, f -> kind(f, kind, shot, columns, cells));
    }

    private static void outcomes() {
        String rebound = "approach_angle_deg,rebound_angle_deg,approach_speed_mps,rebound_speed_mps";
        outcome("approach-speed", "break", "break-15", "approach_speed_mps,balls_made", "17.#,2");
        outcome("faster-off-rail", "rebound", "rebound-45-ramp", rebound, "45,43.#,1.5,2.#");
        outcome("rebound-unlike-approach", "rebound", "rebound-45-ramp", rebound, "45,13.#,1.9,1.#");
        outcome("landing-far", "kick", "kick-3-rail", "landing_offset_dia", "3.#5");
        outcome("run-outs-disagree", "speed", "roll-out-ramp", "run_out_m,run_out_lengths", "2.#,2");
        outcome("rolling-resistance", "speed", "roll-out-ramp", "approach_speed_mps,run_out_m", "2,2.#");
        outcome("balls-made", "break", "break-15", "balls_made,spread_nearest_mm", "9,150.#");
        outcome("spread", "break", "break-15", "balls_made,spread_nearest_mm", "2,15.#");
        outcome("cue-ball-travel", "break", "break-15", "balls_made,cue_ball_travel_m", "2,36.#");
        outcome("throw-angle", "throw", "throw-half-ball", "object_angle_deg", "33.#");
        outcome("deflection-angle", "deflection", "deflection-long", "deflection_angle_deg", "12.#");
        outcome("hop-height", "hop", "hop-drop", "hop_height_mm", "520.#");
        outcome("rails-of-kind", "kick", "kick-3-rail", "landing_offset_dia,rails", "0.#,0");
        outcome("rails-unlike-shot", "kick", "kick-3-rail", "landing_offset_dia,rails", "0.#,4");
        outcome(
                "approach-unlike-shot",
                "rebound",
                "rebound-30-ramp",
                "approach_angle_deg,rebound_angle_deg",
                "60,58.#");
        outcome(
                "other-kind",
                "rebound",
                "rebound-45-ramp",
                "approach_angle_deg,rebound_angle_deg,hop_height_mm",
                "45,43.#,2");
    }

    /** One path marked beside typed outcomes that agree with it. */
    static ExampleFolder marked(ExampleFolder f, String... points) {
        kind(
                f,
                "rebound",
                "rebound-45-ramp",
                "approach_angle_deg,rebound_angle_deg,landing_offset_dia",
                "45,44.#,0.0~");
        return f.put(CONTACTS, contacts(points));
    }

    static final String START = "start,,1.27,2,0";
    static final String NEAR = "rail,near,3.18,0.09,0.6";
    static final String LANDING = "rail,far,6.93,3.91,2.0";

    static String contacts(String... points) {
        StringBuilder csv = new StringBuilder("session,trial,seq,point,rail,x_dia,y_dia,t_s\n");
        for (int i = 0; i < points.length; i++) {
            csv.append("s1,2,").append(i + 1).append(',').append(points[i]).append('\n');
        }
        return csv.toString();
    }

    /** The same path on the frame of a camera straight above: 158.75 pixels to a diamond. */
    static ExampleFolder filmed(ExampleFolder f, String morePoints) {
        marked(f);
        f.replace(JSON, "\"shots\": []", """
                "marks": [{"camera": "cam1", "errorPx": 1.5, "points": [%s{"xDia": 0, "yDia": 0, "xPx": 100, "yPx": 700},
                  {"xDia": 8, "yDia": 0, "xPx": 1370, "yPx": 700}, {"xDia": 8, "yDia": 4, "xPx": 1370, "yPx": 65},
                  {"xDia": 0, "yDia": 4, "xPx": 100, "yPx": 65}]}], "shots": []""".formatted(morePoints));
        return f.put(CONTACTS, """
                session,trial,seq,point,rail,x_px,y_px,camera
                s1,2,1,start,,301.6,382.5,cam1
                s1,2,2,rail,near,604.8,685.7,cam1
                s1,2,3,rail,far,1200.1,79.3,cam1
                """);
    }

    private static void contact(String check, String... points) {
        add("geometry." + check, f -> marked(f, points));
    }

    private static void contacts() {
        add("geometry.contact-seq-gap", f -> marked(f, START, NEAR, LANDING).replace(CONTACTS, "s1,2,3,", "s1,2,4,"));
        contact("path-too-short", START);
        contact("path-sequence", START, "rest,,3.18,0.2,0.6", LANDING);
        contact("contact-without-place", START, "rail,near,,0.09,0.6", LANDING);
        add(
                "geometry.contact-two-places",
                f -> marked(f, START, NEAR, LANDING)
                        .put(
                                CONTACTS,
                                f.get(CONTACTS).replaceAll("(?m)$(?=\\n)", ",,").replaceFirst(",,\n", ",x_m,y_m\n"))
                        .replace(CONTACTS, NEAR + ",,", NEAR + ",1.2,0.0286"));
        contact("centre-too-near-nose", "start,,1.27,0,0", NEAR, LANDING);
        contact("contact-off-rail", START, "rail,near,3.18,0,0.6", LANDING);
        contact("rails-order", START, NEAR, "rail,near,5,0.09,1.0", LANDING);
        contact("contact-same-place", START, "ball,,1.27,2,0.1", NEAR, LANDING);
        contact("contact-times", START, NEAR, "rail,far,6.93,3.91,0.6");
        contact("path-unlike-shot", START, "rail,far,3.18,3.91,0.6", "rail,near,6.93,0.09,2.0");
        contact("angle-unlike-contacts", "start,,2,2,0", NEAR, "rail,far,6.93,3.91,2.4");
        contact("landing-unlike-contacts", "start,,1.77,2,0", "rail,near,3.68,0.09,0.6", "rail,far,7.43,3.91,2.0");
        add("geometry.camera-unknown", f -> filmed(f, "").replace(CONTACTS, "cam1", "cam2"));
        add(
                "geometry.camera-unfit",
                f -> filmed(f, "").replace(JSON, "\"yDia\": 4, \"xPx\": 1370", "\"yDia\": 0, \"xPx\": 1370"));
        add(
                "geometry.camera-residual",
                f -> filmed(
                        f,
                        "{\"xDia\": 4, \"yDia\": 0, \"xPx\": 720, \"yPx\": 700}, "
                                + "{\"xDia\": 4, \"yDia\": 4, \"xPx\": 765, \"yPx\": 65},"));
        contact("path-speed", START, "rail,near,3.18,0.09,0.03", LANDING);
        add(
                "geometry.rails-unlike-contacts",
                f -> kind(f, "bank", "mine", "landing_offset_dia,rails", "0.0~,2")
                        .replace(JSON, "\"shots\": []", "\"shots\": [{\"id\": \"mine\", \"kind\": \"bank\"}]")
                        .put(CONTACTS, contacts(START, NEAR, LANDING.replace("rail,far", "rest,"))));
        add(
                "geometry.path-speeds-up",
                f -> kind(f, "kick", "kick-3-rail", "landing_offset_dia", "0.0~")
                        .put(
                                CONTACTS,
                                contacts(
                                        "start,,2.5,3,0",
                                        "rail,near,5.622,0.09,0.5",
                                        "rail,foot,7.91,2.223,1.0",
                                        "rail,far,6.1,3.91,1.1",
                                        "rail,near,2,0.09,2.1")));
        add(
                "geometry.table-size-unstated",
                f -> marked(f, START, NEAR, LANDING)
                        .replace(JSON, "\"playingLengthMm\": 2540, \"playingWidthMm\": 1270,", ""));
    }

    private static void sessions() {
        add("protocol.not-blinded", f -> first(f, "\"blinded\": false"));
        add("protocol.no-warm-up", f -> first(f, "\"warmUpTrials\": 0"));
        add(
                "protocol.times-disordered",
                f -> f.replace(TRIALS, "s1,3,2026-01-12T18:11:00", "s1,3,2026-01-12T18:06:00"));
        add(
                "protocol.long-session",
                f -> f.replace(TRIALS, "s1,15,2026-01-12T18:35:00+01:00", "s1,15,2026-01-13T07:35:00+01:00")
                        .replace(
                                CLIMATE,
                                "h1,2026-01-13T18:00:00",
                                "h1,2026-01-13T07:35:00+01:00,20.6,41\nh1,2026-01-13T18:00:00"));
        add("protocol.delivery-differs", f -> f.put(JSON, f.get(JSON).replaceFirst("\"ramp\"", "\"cue\"")));
        add("statistics.run-of-equals", f -> f.put(TRIALS, equalRows(f.get(TRIALS))));
        add(
                "statistics.no-scatter",
                f -> f.put(
                        TRIALS,
                        kind(f, "kick", "kick-3-rail", "landing_offset_dia", "0.5")
                                .get(TRIALS)
                                .replaceAll("(?m)^(s2.*),0\\.5$", "$1,0.6")));
        add(
                "statistics.coarse-reading",
                f -> f.put(
                        TRIALS,
                        kind(f, "kick", "kick-3-rail", "final_rebound_angle_deg", "3~")
                                .get(TRIALS)
                                .replaceAll("(?m)3[048]$", "35")
                                .replaceAll("(?m)3[26]$", "40")));
        add("statistics.trend", f -> f.put(TRIALS, rising(f.get(TRIALS))));
        add("statistics.repeated-session", f -> f.put(TRIALS, copied(f.get(TRIALS))));
        add(
                "protocol.sessions-at-once",
                f -> f.put(
                                JSON,
                                f.get(JSON)
                                        .replace("\"2026-01-13T18:05:00+01:00\"", "\"2026-01-12T17:05:00Z\"")
                                        .replace("\"2026-01-13T14:00:00+01:00\"", "\"2026-01-12T14:00:00+01:00\""))
                        .put(TRIALS, f.get(TRIALS).replace("2026-01-13", "2026-01-12")));
    }

    /** Trials 3 to 7 of the first session as if copied. */
    private static String equalRows(String csv) {
        return csv.replaceAll("(?m)^(s1,.*)rebound-30-ramp,30.1,28", "$1rebound-45-ramp,45,43")
                .replaceAll("(?m)^(s1,[3-7],.*rebound,).*$", "$1rebound-45-ramp,45,42.7,0.02,");
    }

    /** The rebound angles of the first session rise from trial to trial. */
    private static String rising(String csv) {
        String[] lines = csv.split("\n");
        for (int i = 1; i <= 15; i++) {
            lines[i] = lines[i].replaceAll(
                    "rebound-.*", "rebound-45-ramp,45," + (42 + i / 10.0 + i % 2 / 20.0) + ",0." + (i * 7 % 10) + "1,");
        }
        return String.join("\n", lines) + "\n";
    }

    /** The second session has the outcomes of the first. */
    private static String copied(String csv) {
        String[] lines = csv.split("\n");
        for (int i = 1; i <= 15; i++) {
            lines[i + 15] =
                    lines[i + 15].replaceAll("rebound,.*", "") + lines[i].substring(lines[i].indexOf("rebound,"));
        }
        return String.join("\n", lines) + "\n";
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
