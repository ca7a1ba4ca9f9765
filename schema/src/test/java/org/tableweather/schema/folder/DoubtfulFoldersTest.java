package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.check.CheckReport;

class DoubtfulFoldersTest {
    @TempDir
    Path directory;

    static Stream<DoubtfulFolders.Doubtful> all() {
        return DoubtfulFolders.all().stream();
    }

    @ParameterizedTest
    @MethodSource("all")
    void areAcceptedWithTheirOwnFindingAlone(DoubtfulFolders.Doubtful doubtful) throws IOException {
        CheckReport report = TestReading.of(doubtful.writeTo(directory)).report();

        assertThat(report.isRefused()).as(report.toString()).isFalse();
        Set<String> expected = new TreeSet<>(List.of(doubtful.check(), doubtful.companion()));
        assertThat(report.counts().keySet()).isEqualTo(expected);
    }
}
