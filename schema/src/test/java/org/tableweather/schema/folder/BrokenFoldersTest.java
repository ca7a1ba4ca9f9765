package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.Finding;
import org.tableweather.schema.check.Severity;

class BrokenFoldersTest {
    @TempDir
    Path directory;

    static Stream<BrokenFolders.Broken> all() {
        return BrokenFolders.all().stream();
    }

    @ParameterizedTest
    @MethodSource("all")
    void refusesEachWithItsOwnFinding(BrokenFolders.Broken broken) throws IOException {
        CheckReport report = TestReading.of(broken.writeTo(directory)).report();

        assertThat(report.isRefused()).isTrue();
        List<Finding> refusals = report.findings().stream()
                .filter(finding -> finding.severity() == Severity.REFUSE)
                .toList();
        assertThat(report.findings()).extracting(Finding::check).containsOnly(broken.check());
        assertThat(refusals).allSatisfy(finding -> {
            assertThat(finding.message()).isNotBlank();
            assertThat(finding.bound()).isNotBlank();
            assertThat(finding.remedy()).isNotBlank();
        });
    }

    @Test
    void areMoreThanTwenty() {
        assertThat(BrokenFolders.all()).hasSizeGreaterThan(60);
        assertThat(BrokenFolders.all()).extracting(BrokenFolders.Broken::name).doesNotHaveDuplicates();
    }
}
