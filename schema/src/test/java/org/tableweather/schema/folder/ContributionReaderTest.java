package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.Finding;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

class ContributionReaderTest {
    private static final String JSON = "contribution.json";
    private static final String TRIALS = "trials.csv";
    private static final String CLIMATE = "climate.csv";

    @TempDir
    Path folder;

    private TestReading read(ExampleFolder example) throws IOException {
        return TestReading.of(example.writeTo(folder));
    }

    @Test
    void findsNothingInASoundFolder() throws IOException {
        TestReading reading = read(ExampleFolder.sound());

        assertThat(reading.report().findings()).isEmpty();
        assertThat(reading.report().trials()).isEqualTo(30);
        assertThat(reading.report().sessions()).isEqualTo(2);
        assertThat(reading.told).isEqualTo(reading.contribution());
        assertThat(reading.trials).hasSize(30);
        assertThat(reading.handOvers).containsExactly("s1", "s2");
        assertThat(reading.records.get("s1").roomKey()).isEqualTo("0000-0002-1825-0097/cellar");
        assertThat(reading.records.get("s1").sessionKey()).isEqualTo("0000-0002-1825-0097/cellar/s1");
        assertThat(reading.records.get("s1").invented()).isTrue();
    }

    @Test
    void hasNoSourceWhereThereIsNothing() {
        assertThatThrownBy(() -> ContributionSource.of(folder.resolve("nothing"), ArchiveLimits.defaults()))
                .isInstanceOf(NoSuchFileException.class);
    }

    @Nested
    class Cells {
        private Trial only(String header, String row) throws IOException {
            TestReading reading = read(ExampleFolder.sound().put(TRIALS, header + "\n" + row + "\n"));
            assertThat(reading.report().isRefused())
                    .as(reading.report().toString())
                    .isFalse();
            return reading.trials.get(0);
        }

        @Test
        void areReadInEveryUnit() throws IOException {
            Trial trial = only(
                    "session,trial,kind,shot,temp_f,rh_pct,approach_speed_mph,rebound_speed_mph,tip_offset_in,hop_height_in,"
                            + "rebound_angle_deg",
                    "s1,1,rebound,rebound-45-ramp,68,40,10,5,0.5,2,44.5");

            // 68 °F = 20 °C, 1 mi/h = 0.44704 m/s and 1 in = 25.4 mm exactly: NIST SP 811 appendix B
            assertThat(trial.tempC()).isEqualTo(20);
            assertThat(trial.approachSpeedMps()).isEqualTo(4.4704);
            assertThat(trial.reboundSpeedMps()).isEqualTo(2.2352);
            assertThat(trial.tipOffsetMm()).isEqualTo(12.7);
            assertThat(trial.hopHeightMm()).isEqualTo(50.8);
        }

        @Test
        void agreeInBothUnits() throws IOException {
            Trial trial = only(
                    "session,trial,kind,shot,temp_f,temp_c,rebound_angle_deg",
                    "s1,1,rebound,rebound-45-ramp,68,20.05,44.5");

            assertThat(trial.tempC()).isEqualTo(20.05);
        }

        @Test
        void sayMadeInManyWays() throws IOException {
            List<String> words = List.of("yes", "TRUE", "1", "Made", "y", "no", "False", "0", "MISSED", "n", "");
            StringBuilder csv = new StringBuilder("session,trial,kind,shot,made\n");
            IntStream.range(0, words.size())
                    .forEach(i -> csv.append("s1," + i + ",kick,kick-2-rail," + words.get(i) + "\n"));
            TestReading reading = read(ExampleFolder.sound().put(TRIALS, csv.toString()));

            assertThat(reading.trials)
                    .extracting(Trial::made)
                    .containsExactly(
                            Made.YES,
                            Made.YES,
                            Made.YES,
                            Made.YES,
                            Made.YES,
                            Made.NO,
                            Made.NO,
                            Made.NO,
                            Made.NO,
                            Made.NO,
                            Made.NOT_STATED);
        }

        @Test
        void thatSayNotAvailableAreEmpty() throws IOException {
            Trial trial = only(
                    "session,trial,kind,shot,rebound_angle_deg,temp_c,rh_pct",
                    "s1,1,rebound,rebound-45-ramp,44.5,NA,NaN");

            assertThat(trial.tempC()).isNaN();
            assertThat(trial.rhPct()).isNaN();
        }

        @Test
        void areTrimmedAndHeadersInAnyCase() throws IOException {
            Trial trial = only(
                    " Session , TRIAL,Kind,Shot ,Rebound_Angle_Deg", " s1 , 1 ,Rebound, rebound-45-ramp ,\u00A044.5 ");

            assertThat(trial.reboundAngleDeg()).isEqualTo(44.5);
            assertThat(trial.trial()).isEqualTo("1");
        }

        @Test
        void mayHoldSeparatorsQuotesAndLineEnds() throws IOException {
            Trial trial = only(
                    "session,trial,kind,shot,rebound_angle_deg,note",
                    "s1,1,rebound,rebound-45-ramp,44.5,\"chalk, \"\"blue\"\"\non the ball\"");

            assertThat(trial.note()).isEqualTo("chalk, \"blue\"\non the ball");
        }
    }

    @Nested
    class Findings {
        @Test
        void nameFileRowColumnValueBoundAndRemedy() throws IOException {
            Finding finding = read(ExampleFolder.sound()
                            .replace(TRIALS, "s1,4,", "\n\ns1,4,")
                            .replace(TRIALS, "rebound-45-ramp,45,43.3", "rebound-45-ramp,145,43.3"))
                    .report()
                    .findings()
                    .get(0);

            assertThat(finding.file()).isEqualTo("trials.csv");
            assertThat(finding.row()).isPresent();
            assertThat(finding.column()).contains("approach_angle_deg");
            assertThat(finding.value()).contains("145");
            assertThat(finding.bound()).isEqualTo("0 to 90 deg");
            assertThat(finding.remedy()).isNotBlank();
            assertThat(finding.reference()).isEqualTo("CommonPractice");
        }

        @Test
        void countRowsAsASpreadsheetDoes() throws IOException {
            String csv = "session,trial,kind,shot,rebound_angle_deg,note\n"
                    + "s1,1,rebound,rebound-45-ramp,44,\"two\nlines\"\n"
                    + "\n"
                    + ",,,,,\n"
                    + "s1,2,rebound,rebound-45-ramp,wide,\n";

            Finding finding = read(ExampleFolder.sound().put(TRIALS, csv)).finding("structure.number");

            assertThat(finding.row()).hasValue(5);
            assertThat(finding.column()).contains("rebound_angle_deg");
            assertThat(finding.value()).contains("wide");
        }

        @Test
        void areAllToldNotOnlyTheFirst() throws IOException {
            TestReading reading = read(ExampleFolder.sound()
                    .replace(JSON, "\"licence\": \"CC-BY-4.0\",", "")
                    .replace(JSON, "1825-0097", "1825-0098")
                    .replace(JSON, "2540", "\"long\"")
                    .replace(CLIMATE, "39.0", "140")
                    .replace(TRIALS, "s2,4,", "s2,,")
                    .replace(TRIALS, ",30.1,", ",thirty,"));

            assertThat(reading.report().counts())
                    .containsKeys(
                            "structure.required-field",
                            "identity.orcid",
                            "structure.json-type",
                            "units.humidity-range",
                            "structure.required-cell",
                            "structure.number");
            assertThat(reading.told).isEmpty();
            assertThat(reading.trials).isEmpty();
            assertThat(reading.handOvers).isEmpty();
        }

        @Test
        void areCappedAndCounted() throws IOException {
            StringBuilder csv = new StringBuilder("session,trial,kind,shot,rebound_angle_deg\n");
            IntStream.range(0, 500).forEach(i -> csv.append("s1," + i + ",rebound,rebound-45-ramp,x\n"));

            CheckReport report =
                    read(ExampleFolder.sound().put(TRIALS, csv.toString())).report();

            assertThat(report.counts()).containsEntry("structure.number", 500L);
            assertThat(report.findings())
                    .filteredOn(finding -> finding.check().equals("structure.number"))
                    .hasSize(CheckReport.KEPT_PER_CHECK);
            assertThat(report.notListed()).isEqualTo(480);
        }

        @Test
        void comeWithTheMostSevereFirst() throws IOException {
            CheckReport report = read(ExampleFolder.sound()
                            .replace(TRIALS, ",made\n", ",luck\n")
                            .replace(TRIALS, "s2,4,", "s9,4,"))
                    .report();

            assertThat(report.findings()).extracting(Finding::severity).isSorted();
            assertThat(report.findings().get(0).check()).isEqualTo("structure.unknown-session");
        }

        @Test
        void pointIntoTheJson() throws IOException {
            Finding finding = read(ExampleFolder.sound()
                            .replace(JSON, "\"weightGsm\": 500", "\"weightGsm\": \"heavy\""))
                    .finding("structure.json-type");

            assertThat(finding.file()).isEqualTo("contribution.json");
            assertThat(finding.column()).contains("/tables/0/cloth/weightGsm");
            assertThat(finding.value()).contains("\"heavy\"");
        }

        @Test
        void noteUnknownFieldsFilesAndColumns() throws IOException {
            CheckReport report = read(ExampleFolder.sound()
                            .replace(JSON, "\"title\":", "\"headline\":")
                            .put("photo.jpg", "x")
                            .replace(TRIALS, ",made\n", ",luck\n"))
                    .report();

            assertThat(report.isRefused()).isFalse();
            assertThat(report.counts())
                    .containsOnlyKeys("structure.unknown-field", "structure.unknown-file", "structure.unknown-column");
        }

        @Test
        void nameAFileThatMayBeMeant() throws IOException {
            ExampleFolder example = ExampleFolder.sound();
            Finding finding = read(example.put("Trials.CSV", example.get(TRIALS))
                            .remove(TRIALS))
                    .finding("structure.missing-file");

            assertThat(finding.message()).isEqualTo("trials.csv is missing, but there is Trials.CSV");
        }

        @Test
        void areToldOfTrialsEvenWhenTheJsonIsBroken() throws IOException {
            CheckReport report = read(ExampleFolder.sound().put(JSON, "{").replace(TRIALS, ",30.1,", ",thirty,"))
                    .report();

            assertThat(report.counts()).containsOnlyKeys("structure.json", "structure.number");
            assertThat(report.trials()).isEqualTo(30);
        }
    }

    @Nested
    class ClimateOfATrial {
        private List<Trial> trials(ExampleFolder example) throws IOException {
            TestReading reading = read(example);
            assertThat(reading.report().isRefused())
                    .as(reading.report().toString())
                    .isFalse();
            return reading.trials;
        }

        @Test
        void isInterpolatedInTheLog() throws IOException {
            Trial trial = trials(ExampleFolder.sound()).get(0);

            // 18:07 lies seven tenths of the way from the reading at 18:00 (20 °C, 38 %) to that at 18:10 (20.1, 38.5)
            assertThat(trial.climate().source()).isEqualTo(ClimateSource.LOG);
            assertThat(trial.climate().tempC()).isEqualTo(20 + 0.7 * (20.1 - 20));
            assertThat(trial.climate().rhPct()).isEqualTo(38 + 0.7 * 0.5);
        }

        @Test
        void isItsOwnReadingBeforeTheLog() throws IOException {
            Trial trial = trials(ExampleFolder.sound()
                            .put(
                                    TRIALS,
                                    "session,trial,started_at,kind,shot,rebound_angle_deg,temp_c,rh_pct\n"
                                            + "s1,1,2026-01-12T18:07:00+01:00,rebound,rebound-45-ramp,44,21.5,40\n"))
                    .get(0);

            assertThat(trial.climate().source()).isEqualTo(ClimateSource.SPOT);
            assertThat(trial.climate().tempC()).isEqualTo(21.5);
            assertThat(trial.climate().rhPct()).isEqualTo(40);
        }

        @Test
        void isTheLogAtTheSessionsStartWithoutATime() throws IOException {
            TestReading reading = read(ExampleFolder.sound()
                    .put(TRIALS, "session,trial,kind,shot,rebound_angle_deg\ns1,1,rebound,rebound-45-ramp,44\n"));

            assertThat(reading.trials.get(0).climate().source()).isEqualTo(ClimateSource.LOG);
            assertThat(reading.trials.get(0).climate().rhPct()).isEqualTo(38.25);
            assertThat(reading.report().counts()).containsKey("climate.log-without-times");
        }

        @Test
        void isStatedByHandAtLast() throws IOException {
            TestReading reading = read(ExampleFolder.sound()
                    .remove(CLIMATE)
                    .replace(
                            JSON,
                            "\"visit\": \"2026-01-12\"",
                            "\"tempF\": 68, \"rhPct\": 41, \"visit\": \"2026-01-12\""));

            assertThat(reading.trials.get(0).climate().source()).isEqualTo(ClimateSource.STATED);
            assertThat(reading.trials.get(0).climate().tempC()).isEqualTo(20);
            assertThat(reading.trials.get(0).climate().rhPct()).isEqualTo(41);
            assertThat(reading.finding("climate.stated-by-hand").message()).contains("15 of 15 trials of session s1");
            assertThat(reading.finding("climate.unknown").message()).contains("15 of 15 trials of session s2");
            assertThat(reading.trials.get(29).climate().source()).isEqualTo(ClimateSource.NONE);
        }

        @Test
        void isNotTakenAcrossALongGapOfTheLog() throws IOException {
            String log = "instrument,time,temp_c,rh_pct\n"
                    + "h1,2026-01-12T18:06:00+01:00,20,38\n"
                    + "h1,2026-01-12T18:36:00+01:00,20,41\n"
                    + "h1,2026-01-13T18:06:00+01:00,20,55\n"
                    + "h1,2026-01-13T18:37:00+01:00,20,55\n";
            TestReading reading = read(ExampleFolder.sound().put(CLIMATE, log));

            // 30 minutes are interpolated over, 31 are not
            assertThat(reading.trials.get(0).climate().rhPct()).isEqualTo(38 + 3.0 / 30);
            assertThat(reading.trials.get(15).climate().source()).isEqualTo(ClimateSource.NONE);
            assertThat(reading.finding("climate.log-gap").row()).hasValue(17);
        }

        @Test
        void isNotTakenFromTheBed() throws IOException {
            String log = "instrument,time,temp_c,rh_pct,placement\n"
                    + "h1,2026-01-12T18:06:00+01:00,20,38,room\n"
                    + "h1,2026-01-12T18:06:00+01:00,25,28,bed\n"
                    + "h1,2026-01-12T18:36:00+01:00,20,38,room\n"
                    + "h1,2026-01-12T18:36:00+01:00,25,28,bed\n";

            assertThat(trials(ExampleFolder.sound().put(CLIMATE, log))
                            .get(0)
                            .climate()
                            .rhPct())
                    .isEqualTo(38);
        }

        @Test
        void findsALogOutOfOrderAndRepeated() throws IOException {
            ExampleFolder example = ExampleFolder.sound();
            List<String> lines = new ArrayList<>(List.of(example.get(CLIMATE).split("\n")));
            lines.add(lines.get(3).replaceFirst(",[^,]*$", ",90"));
            lines.add(lines.remove(2));
            TestReading reading = read(example.put(CLIMATE, String.join("\n", lines) + "\n"));

            assertThat(reading.trials.get(0).climate().rhPct()).isEqualTo(38 + 0.7 * 0.5);
            assertThat(reading.report().counts())
                    .containsKeys("climate.readings-disordered", "climate.reading-repeated");
        }
    }

    @Nested
    class Sessions {
        private String interleaved() {
            String[] lines = ExampleFolder.sound().get(TRIALS).split("\n");
            StringBuilder csv = new StringBuilder(lines[0]).append('\n');
            for (int i = 15; i >= 1; i--) {
                csv.append(lines[i]).append('\n').append(lines[i + 15]).append('\n');
            }
            return csv.toString();
        }

        @Test
        void areHandedOverWholeWhateverTheOrderOfRows() throws IOException {
            TestReading straight = TestReading.of(ExampleFolder.sound().writeTo(folder.resolve("straight")));
            TestReading mixed = TestReading.of(
                    ExampleFolder.sound().put(TRIALS, interleaved()).writeTo(folder.resolve("mixed")));

            assertThat(mixed.report().findings()).isEmpty();
            assertThat(mixed.trials).hasSize(30).containsExactlyInAnyOrderElementsOf(straight.trials);
            assertThat(mixed.runs).hasSize(30);
            assertThat(mixed.sessions).isEqualTo(straight.sessions);
            assertThat(mixed.sessions.get("s1")).isSortedAccordingTo(Trial.CANONICAL_ORDER);
            assertThat(mixed.handOvers).endsWith("s1", "s2");
            assertThat(mixed.records).isEqualTo(straight.records);
        }

        @Test
        void handTrialsOnInBoundedRuns() throws IOException {
            StringBuilder csv = new StringBuilder("session,trial,kind,shot,rebound_angle_deg\n");
            IntStream.rangeClosed(1, 20_000)
                    .forEach(i -> csv.append("s1," + i + ",rebound,rebound-45-ramp," + (44 + i % 10 / 10.0) + "\n"));
            TestReading reading = read(ExampleFolder.sound().put(TRIALS, csv.toString()));

            assertThat(reading.runs).extracting(List::size).containsExactly(8192, 8192, 3616);
            assertThat(reading.sessions.get("s1")).hasSize(20_000);
            assertThat(reading.report().counts()).containsKey("structure.session-without-trials");
        }

        @Test
        void areJudgedOnceThoughScattered() throws IOException {
            CheckReport report = read(ExampleFolder.sound()
                            .put(TRIALS, interleaved().replace("s1,7,", "s1,77,")))
                    .report();

            assertThat(report.counts())
                    .containsEntry("protocol.trial-gap", 2L)
                    .containsOnlyKeys("protocol.times-disordered", "protocol.trial-gap");
        }

        @Test
        void keepTheirDigestThroughDialectUnitsAndPacking() throws IOException {
            ExampleFolder example = ExampleFolder.sound();
            Path plain = example.writeTo(folder.resolve("plain"));
            Path archive = folder.resolve("packed.zip");
            ContributionWriter.pack(plain, archive);
            example.put(
                    TRIALS,
                    example.get(TRIALS).replace(',', ';').replace('.', ',').replace("\n", "\r\n"));
            TestReading spreadsheet = TestReading.of(example.writeTo(folder.resolve("spreadsheet")));
            TestReading direct = TestReading.of(plain);
            TestReading packed = TestReading.of(archive);

            String digest = direct.records.get("s1").digest();
            assertThat(digest).matches("[0-9a-f]{64}");
            assertThat(packed.records.get("s1").digest()).isEqualTo(digest);
            assertThat(spreadsheet.records.get("s1").digest()).isEqualTo(digest);
            assertThat(direct.records.get("s2").digest()).isNotEqualTo(digest);
        }

        @Test
        void changeTheirDigestWithAnyContent() throws IOException {
            String digest = digestOf("a", ExampleFolder.sound());

            assertThat(digestOf("b", ExampleFolder.sound().replace(TRIALS, "s1,4,", "s1,04,")))
                    .isNotEqualTo(digest);
            assertThat(digestOf("c", ExampleFolder.sound().replace(CLIMATE, "38.5", "38.6")))
                    .isNotEqualTo(digest);
            assertThat(digestOf("d", ExampleFolder.sound().replace(JSON, "2025-03-01", "2025-03-02")))
                    .isNotEqualTo(digest);
            assertThat(digestOf("e", ExampleFolder.sound().replace(JSON, "Winter", "Summer")))
                    .isEqualTo(digest);
        }

        private String digestOf(String name, ExampleFolder example) throws IOException {
            SessionRecord record = TestReading.of(example.writeTo(folder.resolve(name)))
                    .records
                    .get("s1");
            return record.digest();
        }
    }

    @Test
    void toleratesAFolderInTheArchiveAndWhatSystemsLeaveThere() throws IOException {
        Path archive = folder.resolve("nested.zip");
        ExampleFolder f = ExampleFolder.sound();
        new RawZip()
                .add("winter/contribution.json", f.get(JSON))
                .add("winter/climate.csv", f.get(CLIMATE))
                .add("winter/trials.csv", f.get(TRIALS))
                .add("winter/.DS_Store", "x")
                .add("__MACOSX/winter/._trials.csv", "x")
                .writeTo(archive);

        TestReading reading = TestReading.of(archive);

        assertThat(reading.report().findings()).isEmpty();
        assertThat(reading.trials).hasSize(30);
    }

    @Test
    void tellsTheProgress() throws IOException {
        ExampleFolder.sound().writeTo(folder);
        List<Long> told = new ArrayList<>();
        try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
            ContributionReader.create()
                    .withProgress(told::add)
                    .read(source, ContributionReader.ContributionListener.NONE, TrialSink.NONE, SessionSink.NONE);
        }

        assertThat(told).isSorted().last().isEqualTo(Files.size(folder.resolve(TRIALS)));
    }

    @Test
    void endsWhenASinkFails() throws IOException {
        ExampleFolder.sound().writeTo(folder);
        try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
            assertThatThrownBy(() -> ContributionReader.create()
                            .read(
                                    source,
                                    ContributionReader.ContributionListener.NONE,
                                    (session, run) -> {
                                        throw new IOException("disk full");
                                    },
                                    SessionSink.NONE))
                    .isInstanceOf(IOException.class)
                    .hasMessage("disk full");
        }
    }
}
