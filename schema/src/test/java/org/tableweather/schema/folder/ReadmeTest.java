package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.folder.ContributionReader.ContributionListener;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.table.TrialColumn;

class ReadmeTest {
    private static final Path README = Path.of("README.md");

    @Test
    void showsCodeThatRuns(@TempDir Path folder) throws IOException {
        Path path = ExampleFolder.sound().writeTo(folder);
        TrialSink trialSink = TrialSink.NONE;
        SessionSink sessionSink = SessionSink.NONE;
        // the README's example
        try (ContributionSource source = ContributionSource.of(path, ArchiveLimits.defaults())) {
            ContributionReader.Result result =
                    ContributionReader.create().read(source, ContributionListener.NONE, trialSink, sessionSink);
            result.report().findings().forEach(System.out::println);
        }
        // its end
        String self = Files.readString(Path.of("src/test/java/org/tableweather/schema/folder/ReadmeTest.java"));
        String readme = Files.readString(README);
        String example = readme.substring(
                readme.indexOf("```java\n") + 8, readme.indexOf("```", readme.indexOf("```java\n") + 8));

        assertThat(squeezed(self)).contains(squeezed(example));
    }

    private static String squeezed(String code) {
        return code.replaceAll("\\s+", "");
    }

    @Test
    void namesTheOutcomesOfEveryKind() throws IOException {
        String readme = Files.readString(README);

        for (Kind kind : Kind.values()) {
            List<TrialColumn> outcomes = TrialColumn.outcomes(kind);
            assertThat(readme).contains("`" + kind.schemaName() + "`");
            assertThat(outcomes)
                    .filteredOn(column -> column.standard() == column)
                    .allSatisfy(column -> assertThat(readme).contains("`" + column.header() + "`"));
        }
    }
}
