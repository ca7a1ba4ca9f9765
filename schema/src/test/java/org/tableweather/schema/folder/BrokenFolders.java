package org.tableweather.schema.folder;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;

/** Contributions with one fault each, as folders and archives: every reader of contributions must refuse them all. */
public final class BrokenFolders {
    private static final String JSON = "contribution.json";
    private static final String TRIALS = "trials.csv";
    private static final String CLIMATE = "climate.csv";
    private static final String CONTACTS = "contacts.csv";

    private static final List<Broken> ALL = new ArrayList<>();

    /**
     * One contribution with a fault.
     *
     * @param name what is wrong, as the name of a folder or archive
     * @param check id of the check that must find it
     * @param isArchive whether it is an archive
     * @param writer writes it
     */
    public record Broken(String name, String check, boolean isArchive, Writing writer) {

        /**
         * Writes it into a directory.
         *
         * @return the folder or archive
         */
        public Path writeTo(Path directory) throws IOException {
            Path path = directory.resolve(isArchive ? name + ".zip" : name);
            writer.write(path);
            return path;
        }

        @Override
        public String toString() {
            return name;
        }
    }

    /** Writes a folder or archive. */
    @FunctionalInterface
    public interface Writing {
        /** Writes to this path. */
        void write(Path path) throws IOException;
    }

    private BrokenFolders() {}

    static {
        filesAndJson();
        entries();
        columnsAndRows();
        cells();
        contacts();
        archives();
    }

    /** All of them. */
    public static List<Broken> all() {
        return List.copyOf(ALL);
    }

    private static void folder(String name, String check, UnaryOperator<ExampleFolder> fault) {
        ALL.add(new Broken(
                name, check, false, path -> fault.apply(ExampleFolder.sound()).writeTo(path)));
    }

    private static void archive(String name, String check, Writing writer) {
        ALL.add(new Broken(name, check, true, writer));
    }

    private static void filesAndJson() {
        folder("no-contribution-json", "structure.missing-file", f -> f.remove(JSON));
        folder("no-trials", "structure.missing-file", f -> f.remove(TRIALS));
        folder("empty-trials", "structure.empty-file", f -> f.put(TRIALS, ""));
        folder("empty-json", "structure.empty-file", f -> f.put(JSON, "  \n"));
        folder(
                "trials-without-rows",
                "structure.empty-file",
                f -> f.put(TRIALS, f.get(TRIALS).split("\n")[0] + "\n"));
        folder(
                "json-without-end",
                "structure.json",
                f -> f.put(JSON, f.get(JSON).replaceAll("}\\s*$", "")));
        folder("json-name-twice", "structure.json", f -> f.replace(JSON, "\"title\":", "\"licence\":"));
        folder("json-number-in-quotes", "structure.json-type", f -> f.replace(JSON, "2540", "\"2540\""));
        folder("json-list-for-object", "structure.json-type", f -> f.put(JSON, "[" + f.get(JSON) + "]"));
        folder("json-impossible-date", "structure.json-type", f -> f.replace(JSON, "2026-01-10", "2025-02-30"));
        folder("json-latitude-of-599", "structure.json-value", f -> f.replace(JSON, "59.9", "599"));
        folder("json-unknown-delivery", "structure.json-value", f -> f.replace(JSON, "\"ramp\"", "\"catapult\""));
        ALL.add(latin1("json-in-latin-1", JSON, "Cellar club", "Kj\u00F8ller"));
        folder("newer-format", "structure.schema-version", f -> f.replace(JSON, "\"1.0\"", "\"2.0\""));
        ALL.add(new Broken("link-outside", "structure.link-outside", false, path -> {
            ExampleFolder.sound().remove(TRIALS).writeTo(path);
            Path outside = path.resolveSibling("elsewhere.csv");
            Files.writeString(outside, ExampleFolder.sound().get(TRIALS));
            Files.createSymbolicLink(path.resolve(TRIALS), outside);
        }));
    }

    private static void entries() {
        folder("no-licence", "structure.required-field", f -> f.replace(JSON, "\"licence\": \"CC-BY-4.0\",", ""));
        folder(
                "no-sessions",
                "structure.required-field",
                f -> f.put(JSON, f.get(JSON).replaceAll("(?s),\\s*\"sessions\".*", "}")));
        folder("closed-licence", "identity.licence", f -> f.replace(JSON, "CC-BY-4.0", "CC-BY-NC-4.0"));
        folder("mistyped-orcid", "identity.orcid", f -> f.replace(JSON, "1825-0097", "1825-0098"));
        folder("no-such-country", "identity.country", f -> f.replace(JSON, "\"NO\"", "\"XQ\""));
        folder(
                "session-of-unknown-table",
                "structure.unknown-reference",
                f -> f.replace(JSON, "\"id\": \"s2\", \"table\": \"t1\"", "\"id\": \"s2\", \"table\": \"t9\""));
        folder(
                "ball-set-twice",
                "structure.duplicate-id",
                f -> f.replace(JSON, "\"ballSets\": [", "\"ballSets\": [{\"id\": \"b1\"}, "));
        folder("slash-in-id", "structure.id-form", f -> f.put(JSON, f.get(JSON).replace("\"cellar\"", "\"a/b\"")));
        folder(
                "session-time-without-zone",
                "structure.time-zone",
                f -> f.replace(JSON, "T18:05:00+01:00", "T18:05:00"));
        folder(
                "settled-after-start",
                "protocol.settled-after-start",
                f -> f.replace(JSON, "2026-01-13T14:00:00+01:00", "2026-01-14T14:00:00+01:00"));
        folder(
                "stated-units-disagree",
                "units.disagree",
                f -> f.replace(
                        JSON, "\"visit\": \"2026-01-12\"", "\"tempC\": 21, \"tempF\": 80, \"visit\": \"2026-01-12\""));
        folder(
                "cloth-of-120-percent",
                "equipment.cloth-fibres",
                f -> f.replace(JSON, "\"nylonPct\": 15", "\"nylonPct\": 35"));
    }

    private static void columnsAndRows() {
        folder("missing-column", "structure.missing-column", f -> f.replace(TRIALS, ",shot,", ",ball,"));
        folder("missing-outcome", "structure.outcome-column", f -> f.replace(TRIALS, "rebound_angle_deg", "note"));
        folder(
                "column-twice",
                "structure.duplicate-column",
                f -> f.replace(TRIALS, ",made\n", ",landing_offset_dia\n"));
        folder("wrong-unit", "units.unknown-unit", f -> f.replace(TRIALS, "approach_angle_deg", "approach_angle_rad"));
        folder("no-unit", "units.unknown-unit", f -> f.replace(TRIALS, "approach_angle_deg", "approach_angle"));
        folder("mixed-separators", "structure.mixed-separators", f -> f.put(TRIALS, semicolonsFrom(f.get(TRIALS), 31)));
        folder(
                "long-row",
                "structure.row-long",
                f -> f.put(TRIALS, f.get(TRIALS).replaceFirst(",\n", ",yes,spare\n")));
        folder(
                "cut-off",
                "structure.cut-off",
                f -> f.put(TRIALS, f.get(TRIALS).replaceAll("(?s),[^,\n]*,[^,\n]*\n$", "")));
        folder("open-quote", "structure.csv", f -> f.replace(TRIALS, "s2,15,", "\"s2,15,"));
        folder("mixed-decimal-marks", "structure.mixed-decimal-marks", f -> f.replace(TRIALS, "42.7", "\"42,7\""));
        ALL.add(latin1(
                "bad-utf8",
                TRIALS,
                "s2,7,2026-01-13T18:19:00+01:00,rebound,rebound-45-ramp",
                "s2,7,,rebound,r\u00E9bound"));
    }

    private static void cells() {
        folder("humidity-140", "units.humidity-range", f -> f.replace(CLIMATE, "39.0", "140"));
        folder("temperature-of-an-oven", "units.temperature-range", f -> f.replace(CLIMATE, "20.2,", "68.5,"));
        folder("angle-over-90", "units.angle-range", f -> f.replace(TRIALS, ",30.1,", ",130.1,"));
        folder(
                "negative-speed",
                "units.speed-range",
                f -> f.replace(TRIALS, "approach_angle_deg", "approach_speed_mps")
                        .replace(TRIALS, ",30.1,", ",-3.1,")
                        .replace(TRIALS, "rebound-45-ramp,45,", "rebound-45-ramp,2,"));
        folder("landing-off-the-rail", "units.landing-offset-range", f -> f.replace(TRIALS, ",0.08,", ",9.5,"));
        folder(
                "half-a-rail",
                "units.count-range",
                f -> f.replace(TRIALS, "approach_angle_deg", "rails")
                        .replace(TRIALS, ",30.1,", ",1.5,")
                        .replace(TRIALS, "rebound-45-ramp,45,", "rebound-45-ramp,1,"));
        folder(
                "units-disagree",
                "units.disagree",
                f -> f.replace(TRIALS, "approach_angle_deg,rebound_angle_deg", "approach_speed_mps,approach_speed_mph")
                        .replace(TRIALS, ",landing_offset_dia", ",rebound_angle_deg")
                        .replace(TRIALS, ",30.1,", ",2,")
                        .replace(TRIALS, "rebound-45-ramp,45,", "rebound-45-ramp,2,"));
        folder(
                "spin-of-a-drill",
                "units.spin-range",
                f -> f.replace(TRIALS, "approach_angle_deg", "side_spin_rps").replace(TRIALS, ",30.1,", ",300.1,"));
        folder(
                "run-out-of-a-mile",
                "units.length-range",
                f -> f.replace(TRIALS, "approach_angle_deg", "run_out_m").replace(TRIALS, ",30.1,", ",1609,"));
        folder(
                "pressure-in-another-unit",
                "units.pressure-range",
                f -> f.replace(CLIMATE, "rh_pct\n", "rh_pct,pressure_hpa\n")
                        .put(CLIMATE, f.get(CLIMATE).replaceAll("(?m)(\\d)$", "$1,"))
                        .put(CLIMATE, f.get(CLIMATE).replaceAll("(?m)(01-12T19:00.*),$", "$1,29.92")));
        folder("number-with-unit", "structure.number", f -> f.replace(TRIALS, ",30.1,", ",30.1 deg,"));
        folder("duplicate-trial", "structure.duplicate-trial", f -> f.replace(TRIALS, "s1,15,", "s1,14,"));
        folder(
                "duplicate-trial-far-apart",
                "structure.duplicate-trial",
                f -> f.put(TRIALS, f.get(TRIALS) + f.get(TRIALS).split("\n")[3] + "\n"));
        folder("unknown-shot", "structure.unknown-shot", f -> f.replace(TRIALS, "rebound-30-ramp", "rebound-31-ramp"));
        folder("unknown-kind", "structure.choice", f -> f.replace(TRIALS, ",rebound,", ",ricochet,"));
        folder(
                "unknown-made",
                "structure.choice",
                f -> f.put(TRIALS, f.get(TRIALS).replaceAll(",\n", ",perhaps\n")));
        folder("unknown-session", "structure.unknown-session", f -> f.replace(TRIALS, "s2,15,", "s3,15,"));
        folder("empty-trial-id", "structure.required-cell", f -> f.replace(TRIALS, "s2,4,", "s2,,"));
        folder("time-without-zone", "structure.time-zone", f -> f.replace(TRIALS, "T18:15:00+01:00", "T18:15:00"));
        folder(
                "time-of-a-spreadsheet",
                "structure.time",
                f -> f.replace(TRIALS, "2026-01-12T18:15:00+01:00", "12.01.2026 18:15"));
        folder(
                "reading-of-unknown-instrument",
                "structure.unknown-reference",
                f -> f.replace(CLIMATE, "h1,2026-01-13T18:20", "h7,2026-01-13T18:20"));
        folder(
                "reading-without-instrument",
                "structure.required-cell",
                f -> f.replace(CLIMATE, "h1,2026-01-13T18:20", ",2026-01-13T18:20"));
    }

    private static void contacts() {
        String header = "session,trial,seq,point,rail,x_dia,y_dia,t_s\n";
        folder(
                "contact-off-the-table",
                "geometry.contact-outside",
                f -> f.put(CONTACTS, header + "s1,1,1,start,,1,2.09,0\ns1,1,2,rail,near,8.5,0.09,0.4\n"));
        folder(
                "contact-of-unknown-trial",
                "geometry.contact-trial",
                f -> f.put(CONTACTS, header + "s1,99,1,start,,1,2.09,0\n"));
        folder(
                "contacts-out-of-order",
                "geometry.contact-order",
                f -> f.put(CONTACTS, header + "s1,1,2,start,,1,2.09,0\ns1,1,1,rail,near,3,0.09,0.4\n"));
        folder(
                "contact-without-rail",
                "geometry.contact-rail",
                f -> f.put(CONTACTS, header + "s1,1,1,rail,,3,0.09,0\n"));
        folder(
                "contact-at-unknown-rail",
                "structure.choice",
                f -> f.put(CONTACTS, header + "s1,1,1,rail,left,3,0.09,0\n"));
    }

    private static void archives() {
        archive("truncated", "structure.archive", path -> {
            sound().writeTo(path);
            byte[] bytes = Files.readAllBytes(path);
            Files.write(path, Arrays.copyOf(bytes, bytes.length / 2));
        });
        archive("no-archive", "structure.archive", path -> Files.writeString(path, "session,trial\ns1,1\n"));
        archive("empty-archive-file", "structure.archive", path -> Files.write(path, new byte[0]));
        archive("corrupt", "structure.archive", path -> {
            sound().writeTo(path);
            byte[] bytes = Files.readAllBytes(path);
            for (int i = 300; i < 340; i++) {
                bytes[i] ^= 0x55;
            }
            Files.write(path, bytes);
        });
        archive("wrong-checksum", "structure.archive", path -> {
            sound().writeTo(path);
            byte[] bytes = Files.readAllBytes(path);
            int central = new String(bytes, StandardCharsets.ISO_8859_1).indexOf("PK\u0001\u0002");
            bytes[central + 16] ^= 1;
            Files.write(path, bytes);
        });
        archive("encrypted", "structure.archive", path -> {
            ExampleFolder f = ExampleFolder.sound();
            new RawZip().add(JSON, 1, f.get(JSON)).add(TRIALS, 1, f.get(TRIALS)).writeTo(path);
        });
        archive("bomb-2-gb", "structure.archive-size", path -> {
            ExampleFolder f = ExampleFolder.sound();
            new RawZip()
                    .add(JSON, f.get(JSON))
                    .addZeros(TRIALS, 2048, 2048L << 20)
                    .writeTo(path);
        });
        archive("bomb-with-a-small-label", "structure.archive-size", path -> {
            ExampleFolder f = ExampleFolder.sound();
            new RawZip().add(JSON, f.get(JSON)).addZeros(TRIALS, 2048, 5000).writeTo(path);
        });
        archive("too-many-files", "structure.archive-size", path -> {
            RawZip zip = sound();
            for (int i = 0; i < 100; i++) {
                zip.add("picture" + i + ".jpg", "x");
            }
            zip.writeTo(path);
        });
        archive(
                "path-traversal",
                "structure.archive-path",
                path -> sound().add("../../outside.csv", "x").writeTo(path));
        archive(
                "absolute-name",
                "structure.archive-path",
                path -> sound().add("/outside.csv", "x").writeTo(path));
        archive(
                "backslash-name",
                "structure.archive-path",
                path -> sound().add("..\\outside.csv", "x").writeTo(path));
        archive(
                "drive-name",
                "structure.archive-path",
                path -> sound().add("C:outside.csv", "x").writeTo(path));
        archive(
                "file-twice",
                "structure.archive-path",
                path -> sound().add(TRIALS, ExampleFolder.sound().get(TRIALS)).writeTo(path));
        archive(
                "archive-without-trials",
                "structure.missing-file",
                path -> new RawZip().add(JSON, ExampleFolder.sound().get(JSON)).writeTo(path));
    }

    /** A sound archive. */
    static RawZip sound() {
        ExampleFolder f = ExampleFolder.sound();
        return new RawZip().add(JSON, f.get(JSON)).add(CLIMATE, f.get(CLIMATE)).add(TRIALS, f.get(TRIALS));
    }

    private static Broken latin1(String name, String file, String text, String by) {
        return new Broken(name, "structure.encoding", false, path -> {
            ExampleFolder f = ExampleFolder.sound().replace(file, text, by);
            f.writeTo(path);
            Files.write(path.resolve(file), f.get(file).getBytes(StandardCharsets.ISO_8859_1));
        });
    }

    private static String semicolonsFrom(String csv, int row) {
        String[] lines = csv.split("\n");
        for (int i = row - 1; i < lines.length; i++) {
            lines[i] = lines[i].replace(',', ';');
        }
        return String.join("\n", lines) + "\n";
    }
}
