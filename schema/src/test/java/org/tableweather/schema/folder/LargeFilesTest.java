package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.check.CheckReport;

/** Files far too large for a test's disk are made line by line while they are read. */
class LargeFilesTest {

    /** A source of which one file is made up. */
    private record MadeUp(String made, String header, long lines, LongFunction<String> line)
            implements ContributionSource {
        private static final Map<String, String> REST = Map.of(
                "contribution.json", ExampleFolder.sound().get("contribution.json"),
                "trials.csv", ExampleFolder.sound().get("trials.csv"));

        @Override
        public String name() {
            return "made-up";
        }

        @Override
        public SortedMap<String, Long> files() {
            SortedMap<String, Long> files = new TreeMap<>();
            REST.keySet().forEach(file -> files.put(file, -1L));
            files.put(made, -1L);
            return files;
        }

        @Override
        public Optional<InputStream> open(String file) {
            if (file.equals(made)) {
                return Optional.of(new Lines());
            }
            return Optional.ofNullable(REST.get(file))
                    .map(text -> new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        }

        @Override
        public void close() {
            // nothing is held open
        }

        final class Lines extends InputStream {
            private byte[] current = (header + "\n").getBytes(StandardCharsets.US_ASCII);
            private int at;
            private long next;

            @Override
            public int read() {
                byte[] one = new byte[1];
                return read(one, 0, 1) < 0 ? -1 : one[0];
            }

            @Override
            public int read(byte[] buffer, int offset, int length) {
                if (at == current.length) {
                    if (next == lines) {
                        return -1;
                    }
                    StringBuilder block = new StringBuilder();
                    for (int i = 0; i < 1000 && next < lines; i++) {
                        block.append(line.apply(next++)).append('\n');
                    }
                    current = block.toString().getBytes(StandardCharsets.US_ASCII);
                    at = 0;
                }
                int count = Math.min(length, current.length - at);
                System.arraycopy(current, at, buffer, offset, count);
                at += count;
                return count;
            }
        }
    }

    private static CheckReport report(ContributionSource source) throws IOException {
        return ContributionReader.create()
                .read(source, ContributionReader.ContributionListener.NONE, TrialSink.NONE, SessionSink.NONE)
                .report();
    }

    @Test
    void refuseASessionOfMoreThan250000Trials() throws IOException {
        String header = "session,trial,kind,shot,rebound_angle_deg";
        LongFunction<String> line = i -> "s1," + i + ",rebound,rebound-45-ramp,43." + i % 10;

        assertThat(report(new MadeUp("trials.csv", header, 250_001, line)).counts())
                .containsKey("structure.session-size");
        assertThat(report(new MadeUp("trials.csv", header, 250_000, line)).counts())
                .doesNotContainKey("structure.session-size");
    }

    @Test
    void refuseAScatteredSessionOfMoreThan250000Trials() throws IOException {
        String header = "session,trial,kind,shot,rebound_angle_deg";
        LongFunction<String> line =
                i -> (i % 1000 == 999 ? "s2," : "s1,") + i + ",rebound,rebound-45-ramp,43." + i % 10;

        assertThat(report(new MadeUp("trials.csv", header, 251_000, line)).counts())
                .containsEntry("structure.session-size", 1L);
    }

    @Test
    void refuseALogOfMoreThanFourMillionReadings() throws IOException {
        LongFunction<String> line = i -> {
            long minute = i % 1440;
            long day = i / 1440;
            long second = minute * 60;
            return "h1," + LocalDate.ofEpochDay(day) + "T"
                    + LocalTime.ofSecondOfDay(second).toString() + (second % 60 == 0 ? ":00Z" : "Z") + ",20,40";
        };

        CheckReport report = report(new MadeUp("climate.csv", "instrument,time,temp_c,rh_pct", 4_000_001, line));

        assertThat(report.counts()).containsKey("structure.readings-size");
        assertThat(report.isRefused()).isTrue();
    }

    @Test
    void refuseMoreThanAMillionMarkedPoints() throws IOException {
        String header = "session,trial,seq,point,rail,x_dia,y_dia";
        LongFunction<String> line =
                i -> "s1," + (1 + i / 100_000) + "," + (1 + i % 100_000) + ",ball,," + (1 + i % 6) + "," + (1 + i % 2);

        CheckReport report = report(new MadeUp("contacts.csv", header, 1_000_001, line));

        assertThat(report.counts()).containsKey("structure.contacts-size");
        assertThat(report.isRefused()).isTrue();
    }
}
