package org.tableweather.schema.folder;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Checks;

/** For each check a contribution without any finding: near the check's bound where the sound folder is not. */
final class PassingFolders {
    private static final String JSON = "contribution.json";
    private static final String TRIALS = "trials.csv";
    private static final String CLIMATE = "climate.csv";
    private static final Map<String, UnaryOperator<ExampleFolder>> NEAR = new TreeMap<>();

    /**
     * A contribution that a check passes.
     *
     * @param check its id
     * @param change makes it of a sound one
     */
    record Passing(String check, UnaryOperator<ExampleFolder> change) {
        Path writeTo(Path directory) throws IOException {
            return change.apply(ExampleFolder.sound()).writeTo(directory.resolve(check));
        }

        @Override
        public String toString() {
            return check;
        }
    }

    private PassingFolders() {}

    static {
        structure();
        climate();
        instruments();
        outcomes();
        protocol();
        Checks.all().stream()
                .map(Check::id)
                .filter(id -> id.contains("contact") || id.contains("path") || id.contains("rails-"))
                .filter(id -> id.startsWith("geometry."))
                .forEach(id -> near(
                        id,
                        f -> DoubtfulFolders.marked(
                                f, DoubtfulFolders.START, DoubtfulFolders.NEAR, DoubtfulFolders.LANDING)));
        near("geometry.camera-unknown", f -> DoubtfulFolders.filmed(f, ""));
        near("geometry.camera-unfit", f -> DoubtfulFolders.filmed(f, ""));
        near(
                "geometry.camera-residual",
                f -> DoubtfulFolders.filmed(f, "{\"xDia\": 4, \"yDia\": 0, \"xPx\": 736, \"yPx\": 701}, "));
        // centres may be marked up to the tolerance of 25.7 mm beyond their line, 28.6 mm inside the nose
        near(
                "geometry.centre-too-near-nose",
                f -> DoubtfulFolders.marked(f, "start,,1.27,2,0", "rail,near,3.18,0.02,0.6", DoubtfulFolders.LANDING));
    }

    /** One of each check. */
    static List<Passing> all() {
        List<Passing> all = new ArrayList<>();
        for (Check check : Checks.all()) {
            all.add(new Passing(check.id(), NEAR.getOrDefault(check.id(), f -> f)));
        }
        return all;
    }

    private static void near(String check, UnaryOperator<ExampleFolder> change) {
        NEAR.put(check, change);
    }

    private static void structure() {
        near("structure.unknown-file", f -> f.put("README.txt", "how it was made"));
        near("structure.encoding", f -> f.replace(JSON, "Cellar club", "Kj\u00F8ller"));
        near("structure.csv", f -> f.replace(TRIALS, "s2,5,", "s2,\"5\","));
        near("structure.id-form", f -> f.put(JSON, f.get(JSON).replace("\"cellar\"", "\"" + "a".repeat(100) + "\"")));
        near("structure.number", f -> f.put(TRIALS, f.get(TRIALS).replaceFirst(",30\\.1,", ",3.01e1,")));
        near("structure.time", f -> f.put(TRIALS, f.get(TRIALS).replaceFirst("18:07:00", "18:07:00.25")));
        near("structure.time-zone", f -> f.put(TRIALS, f.get(TRIALS).replaceFirst("T18:07:00\\+01:00", "T17:07:00Z")));
        near("structure.choice", f -> f.put(TRIALS, f.get(TRIALS).replaceAll("(?m)^(s1.*),$", "$1,missed")));
        near("identity.licence", f -> f.replace(JSON, "CC-BY-4.0", "CC0-1.0"));
        near("identity.orcid", f -> f.replace(JSON, "0000-0002-1825-0097", "0000-0002-1694-233X"));
        near("identity.country", f -> f.replace(JSON, "\"NO\"", "\"US\""));
        near("units.disagree", f -> first(f, "\"tempC\": 20, \"tempF\": 68.1, \"rhPct\": 38"));
    }

    private static ExampleFolder first(ExampleFolder f, String field) {
        return f.replace(JSON, "\"visit\": \"2026-01-12\"", field + ", \"visit\": \"2026-01-12\"");
    }

    private static void climate() {
        // the dew point of 20.25 °C and 40.5 %RH is 6.3 °C, and 80 %RH is reached at 9.5 °C
        near("climate.bed-below-dew-point", f -> first(f, "\"bedC\": 10"));
        near("climate.bed-damp", f -> first(f, "\"bedC\": 10"));
        near(
                "climate.bed-unread",
                f -> f.replace(JSON, "\"playingWidthMm\"", "\"heated\": true, \"playingWidthMm\"")
                        .put(JSON, f.get(JSON).replace("\"delivery\"", "\"bedC\": 26, \"delivery\"")));
        near("climate.heat-danger", f -> DoubtfulFolders.temperature(f, 33));
        near("units.temperature-unusual", f -> DoubtfulFolders.temperature(f, 6));
        near(
                "climate.temperature-jump",
                f -> f.put(CLIMATE, f.get(CLIMATE) + "h1,2026-01-13T19:10:00+01:00,25.6,58\n"));
        near("climate.humidity-jump", f -> f.put(CLIMATE, f.get(CLIMATE) + "h1,2026-01-13T19:10:00+01:00,20.6,73\n"));
        near("climate.humidity-stuck", f -> DoubtfulFolders.night(f, 0.1));
        near("climate.pressure-altitude", f -> DoubtfulFolders.pressure(f, 960));
        near("climate.stated-differs-from-log", f -> first(f, "\"tempC\": 22, \"rhPct\": 48"));
        near(
                "climate.spot-differs-from-log",
                f -> f.put(
                        TRIALS, f.get(TRIALS).replace(",made\n", ",rh_pct\n").replaceAll("(?m)^(s1,.*),$", "$1,48")));
        near("equipment.cloth-fibres-short", f -> f.replace(JSON, "\"nylonPct\": 15", "\"nylonPct\": 10"));
        near("equipment.cloth-fibres", f -> f.replace(JSON, "\"nylonPct\": 15", "\"nylonPct\": 15.5"));
        near("equipment.cloth-weight", f -> f.replace(JSON, "\"weightGsm\": 500", "\"weightGsm\": 900"));
        near("equipment.fitted-later", f -> f.replace(JSON, "2025-03-01", "2026-01-12"));
        near("equipment.cleaned-later", f -> f.replace(JSON, "2026-01-10", "2026-01-12"));
        near("equipment.table-size", f -> f.replace(JSON, "2540", "2543").replace(JSON, "1270", "1271.5"));
        near("equipment.table-ratio", f -> f.replace(JSON, "1270", "1281"));
        near("equipment.ball-size", f -> f.replace(JSON, "57.15", "57.03"));
        near("equipment.ball-mass", f -> f.replace(JSON, "\"massG\": 168", "\"massG\": 170"));
        near("equipment.nose-height", f -> f.replace(JSON, "36.3", "36.8"));
    }

    private static void instruments() {
        near("instrument.accuracy-poor", f -> f.replace(JSON, "\"accuracyC\": 0.3", "\"accuracyC\": 1.5"));
        near(
                "instrument.resolution-coarse",
                f -> f.replace(JSON, "\"accuracyC\": 0.3", "\"accuracyC\": 0.5, \"resolutionC\": 1"));
        near("instrument.calibration-old", f -> f.replace(JSON, "2026-01-02", "2025-01-13"));
        near("instrument.beyond-accuracy", f -> f.replace(JSON, "\"reading\": 76.1", "\"reading\": 77.3"));
        String first = "\"referenceValue\": 75.3, \"reading\": 76.1}";
        near("instrument.drift", f -> f.replace(JSON, first, first + DoubtfulFolders.second("75.4", "73.5")));
        near("instrument.salt-value", f -> f.replace(JSON, "\"referenceValue\": 75.3", "\"referenceValue\": 76.3"));
    }

    private static void near(String check, String kind, String shot, String columns, String cells) {
        near("outcome." + check, f -> DoubtfulFolders.kind(f, kind, shot, columns, cells));
    }

    private static void outcomes() {
        String rebound = "approach_angle_deg,rebound_angle_deg,approach_speed_mps,rebound_speed_mps";
        near("approach-speed", "break", "break-15", "approach_speed_mps,balls_made", "15.#,2");
        near("faster-off-rail", "rebound", "rebound-45-ramp", rebound, "45,43.#,1.9,1.#");
        near("rebound-unlike-approach", "rebound", "rebound-45-ramp", rebound, "45,20.#,1.9,1.#");
        near("landing-far", "kick", "kick-3-rail", "landing_offset_dia", "2.#");
        near("run-outs-disagree", "speed", "roll-out-ramp", "run_out_m,run_out_lengths", "5.1~,2");
        near("rolling-resistance", "speed", "roll-out-ramp", "approach_speed_mps,run_out_m", "1,5.#");
        near("balls-made", "break", "break-15", "balls_made,spread_nearest_mm", "7,150.#");
        near("spread", "break", "break-15", "balls_made,spread_nearest_mm", "2,52.#");
        near("cue-ball-travel", "break", "break-15", "balls_made,cue_ball_travel_m", "2,24.#");
        near("throw-angle", "throw", "throw-half-ball", "object_angle_deg", "11.#");
        near("deflection-angle", "deflection", "deflection-long", "deflection_angle_deg", "9.#");
        near("hop-height", "hop", "hop-drop", "hop_height_mm", "399.#");
        near("rails-of-kind", "rebound", "rebound-45-ramp", "rebound_angle_deg,rails", "43.#,1");
        near("rails-unlike-shot", "kick", "kick-3-rail", "landing_offset_dia,rails", "0.#,3");
        near("approach-unlike-shot", "rebound", "rebound-30-ramp", "approach_angle_deg,rebound_angle_deg", "44,43.#");
        near("other-kind", "hop", "hop-drop", "hop_height_mm", "30.#");
    }

    private static void protocol() {
        near("protocol.not-blinded", f -> first(f, "\"blinded\": true"));
        near("protocol.no-warm-up", f -> first(f, "\"warmUpTrials\": 1"));
        near("protocol.settled-short", f -> f.replace(JSON, "2026-01-12T14:00:00", "2026-01-12T16:05:00"));
        near(
                "statistics.coarse-reading",
                f -> DoubtfulFolders.kind(f, "kick", "kick-3-rail", "final_rebound_angle_deg", "3~"));
    }
}
