package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.record.Trial;

class ContributionReaderTest {
    @TempDir
    Path folder;

    @Test
    void findsNothingInASoundFolder() throws IOException {
        ExampleFolder.sound().writeTo(folder);
        List<Trial> trials = new ArrayList<>();
        List<String> sessions = new ArrayList<>();
        try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
            ContributionReader.Result result = ContributionReader.create()
                    .read(
                            source,
                            ContributionReader.ContributionListener.NONE,
                            (index, run) -> trials.addAll(run),
                            (session, all) -> sessions.add(session.sessionKey() + " " + all.size()));
            assertThat(result.report().findings()).isEmpty();
            assertThat(result.contribution()).isPresent();
        }
        assertThat(trials).hasSize(30);
        assertThat(sessions).containsExactly("0000-0002-1825-0097/cellar/s1 15", "0000-0002-1825-0097/cellar/s2 15");
    }
}
