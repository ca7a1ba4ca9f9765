package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The reference is the encoding as the documentation of {@link SessionDigest} has it, written out by hand. */
class SessionDigestTest {
    private static final String CONTRIBUTION = """
            {"schemaVersion": "1.0", "licence": "CC0-1.0", "contributor": {"name": "A. Example"},
             "rooms": [{"id": "r"}], "tables": [{"id": "t", "room": "r"}], "sessions": [{"table": "t", "id": "s"}]}
            """;
    private static final String JSON =
            "{\"invented\":false,\"room\":{\"id\":\"r\"},\"session\":{\"id\":\"s\",\"table\":\"t\"},"
                    + "\"table\":{\"id\":\"t\",\"room\":\"r\"}}";

    private static String sha256(byte[] bytes) throws NoSuchAlgorithmException {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }

    private static void text(DataOutputStream out, String text) throws IOException {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(utf8.length);
        out.write(utf8);
    }

    private static long bits(int... positions) {
        long mask = 0;
        for (int position : positions) {
            mask |= 1L << position;
        }
        return mask;
    }

    @Test
    void followsTheDocumentedEncoding(@TempDir Path folder) throws IOException, NoSuchAlgorithmException {
        String longNote = "n".repeat(1500);
        ExampleFolder example = ExampleFolder.sound()
                .put("contribution.json", CONTRIBUTION)
                .remove("climate.csv")
                .put(
                        "trials.csv",
                        "session,trial,started_at,kind,shot,rebound_angle_deg,landing_offset_dia,made,rails,note\n"
                                + "s,10,,kick,kick-2-rail,,-0,no,2," + longNote + "\n"
                                + "s,9,2026-01-12T18:00:00.5+01:00,rebound,rebound-45-ramp,43.5,,,,æ\n");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(JSON.getBytes(StandardCharsets.UTF_8));
        // trial 9: id, time, kind, shot, rebound angle, made (not stated), note, climate source (none)
        out.writeLong(bits(1, 2, 3, 4, 13, 17, 27, 30));
        text(out, "9");
        out.writeLong(1_768_237_200L); // 2026-01-12T17:00:00Z
        out.writeInt(500_000_000);
        out.writeInt(0);
        text(out, "rebound-45-ramp");
        out.writeDouble(43.5);
        out.writeInt(2);
        text(out, "æ");
        out.writeInt(3);
        // trial 10: id, kind, shot, landing offset, made, rails, note, climate source
        out.writeLong(bits(1, 3, 4, 16, 17, 18, 27, 30));
        text(out, "10");
        out.writeInt(2);
        text(out, "kick-2-rail");
        out.writeDouble(0.0);
        out.writeInt(1);
        out.writeInt(2);
        out.writeInt(1500);
        out.write(HexFormat.of().parseHex(sha256(longNote.getBytes(StandardCharsets.UTF_8))));
        out.writeInt(3);

        TestReading reading = TestReading.of(example.writeTo(folder));

        assertThat(reading.records.get("s").digest()).isEqualTo(sha256(bytes.toByteArray()));
        assertThat(reading.records.get("s").roomKey()).isEqualTo("a-example/r");
    }
}
