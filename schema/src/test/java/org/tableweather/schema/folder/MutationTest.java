package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.Checks;
import org.tableweather.schema.check.Severity;

/**
 * Whatever is read: no exception, no hang, and what is not refused is handed over whole. {@code -Dtableweather.mutations=100000}
 * tries more than a build does; the number counts all cases of this class.
 */
class MutationTest {
    private static final int CASES = Integer.getInteger("tableweather.mutations", 2000) / 5;
    private static final Duration LONGEST = Duration.ofSeconds(30);

    @TempDir
    Path directory;

    private static Map<String, byte[]> sound() {
        ExampleFolder folder = DoubtfulFolders.filmed(ExampleFolder.sound(), "");
        folder.put("contacts.csv", """
                session,trial,seq,point,rail,x_dia,y_dia,x_px,y_px,camera,t_s
                s1,2,1,start,,,,301.6,382.5,cam1,
                s1,2,2,rail,near,,,604.8,685.7,cam1,
                s1,2,3,rail,far,,,1200.1,79.3,cam1,
                s2,4,1,start,,1.27,2,,,,0
                s2,4,2,rail,near,3.18,0.09,,,,0.6
                s2,4,3,rail,far,6.93,3.91,,,,2.0
                """);
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (String file : List.of("contribution.json", "trials.csv", "climate.csv", "contacts.csv")) {
            files.put(file, folder.get(file).getBytes(StandardCharsets.UTF_8));
        }
        return files;
    }

    private static void assertSound(ContributionSource source) throws IOException {
        TestReading reading = TestReading.of(source);
        CheckReport report = reading.report();
        if (report.isRefused()) {
            assertThat(report.findings()).anyMatch(finding -> finding.severity() == Severity.REFUSE);
        } else {
            assertThat(reading.trials).hasSize((int) report.trials());
            assertThat(reading.sessions.values().stream().mapToInt(List::size).sum())
                    .isEqualTo((int) report.trials());
        }
        assertThat(report.notListed()).isNotNegative();
        assertThat(report.counts().keySet())
                .allMatch(check -> Checks.byId(check).isPresent());
    }

    private static void assertSound(Map<String, byte[]> files, String what) {
        assertTimeoutPreemptively(LONGEST, () -> assertSound(new MemorySource(files)), what);
    }

    private static String text(Map<String, byte[]> files, String file) {
        return new String(files.get(file), StandardCharsets.UTF_8);
    }

    @Test
    void areSound() throws IOException {
        assertThat(TestReading.of(new MemorySource(sound())).report().counts()).isEmpty();
    }

    @Test
    void bytesOfFoldersMayBeAnything() {
        Mutations mutations = new Mutations(20260112);
        List<String> names = List.copyOf(sound().keySet());
        for (int i = 0; i < CASES; i++) {
            Map<String, byte[]> files = sound();
            files.computeIfPresent(names.get(mutations.choice(names.size())), (name, bytes) -> mutations.bytes(bytes));
            assertSound(files, "bytes " + i);
        }
    }

    @Test
    void bytesOfArchivesMayBeAnything() throws IOException {
        Path archive = directory.resolve("archive.zip");
        BrokenFolders.sound().writeTo(archive);
        byte[] original = Files.readAllBytes(archive);
        Mutations mutations = new Mutations(20260113);
        for (int i = 0; i < CASES; i++) {
            Files.write(archive, mutations.bytes(original));
            assertTimeoutPreemptively(
                    LONGEST,
                    () -> {
                        try (ContributionSource source = ContributionSource.of(archive, ArchiveLimits.defaults())) {
                            assertSound(source);
                        }
                    },
                    "archive " + i);
        }
    }

    @Test
    void cellsMayBeAnything() {
        Mutations mutations = new Mutations(20260114);
        List<String> names = List.of("trials.csv", "climate.csv", "contacts.csv");
        for (int i = 0; i < CASES; i++) {
            Map<String, byte[]> files = sound();
            String name = names.get(mutations.choice(names.size()));
            files.put(name, mutations.cells(text(files, name)).getBytes(StandardCharsets.UTF_8));
            assertSound(files, "cells " + i);
        }
    }

    @Test
    void valuesOfTheDocumentMayBeAnything() throws IOException {
        Mutations mutations = new Mutations(20260115);
        for (int i = 0; i < CASES; i++) {
            Map<String, byte[]> files = sound();
            String document = mutations.json(text(files, "contribution.json"));
            files.put("contribution.json", document.getBytes(StandardCharsets.UTF_8));
            assertSound(files, "document " + i);
        }
    }

    @Test
    void anyValuesThatTheColumnsAllowAreJudged() {
        Mutations mutations = new Mutations(20260116);
        for (int i = 0; i < CASES; i++) {
            Map<String, byte[]> files = sound();
            files.put("trials.csv", mutations.trials().getBytes(StandardCharsets.UTF_8));
            files.put("contacts.csv", mutations.contacts().getBytes(StandardCharsets.UTF_8));
            assertSound(files, "values " + i);
        }
    }
}
