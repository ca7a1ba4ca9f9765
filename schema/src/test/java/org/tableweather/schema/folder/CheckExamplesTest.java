package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.Checks;

/** Every check has one example that passes, as near to its bound as can be, and one that fails. */
class CheckExamplesTest {
    /** Bounds of size, whose examples {@link LargeFilesTest} writes. */
    private static final Set<String> LARGE =
            Set.of("structure.session-size", "structure.readings-size", "structure.contacts-size");

    /** What only a server can judge. */
    private static final Set<String> SERVER =
            Set.of("catalogue.room-of-another-account", "catalogue.unstorable-value", "statistics.duplicate-session");

    @TempDir
    Path directory;

    static Stream<PassingFolders.Passing> passing() {
        return PassingFolders.all().stream();
    }

    @ParameterizedTest
    @MethodSource("passing")
    void passWithoutAnyFinding(PassingFolders.Passing passing) throws IOException {
        CheckReport report = TestReading.of(passing.writeTo(directory)).report();

        assertThat(report.counts()).as(report.toString()).isEmpty();
    }

    @Test
    void coverEveryCheck() {
        Set<String> failing = Stream.concat(
                        BrokenFolders.all().stream().map(BrokenFolders.Broken::check),
                        DoubtfulFolders.all().stream().map(DoubtfulFolders.Doubtful::check))
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> known = Checks.all().stream().map(Check::id).collect(Collectors.toSet());
        Set<String> uncovered = new TreeSet<>(known);
        uncovered.removeAll(failing);
        uncovered.removeAll(SERVER);

        assertThat(known).containsAll(failing);
        assertThat(uncovered).isEqualTo(new TreeSet<>(LARGE));
        List<String> passing =
                PassingFolders.all().stream().map(PassingFolders.Passing::check).toList();
        assertThat(known).containsAll(passing);
    }
}
