package org.example.cushion;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerContract;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.TrialSink;

/** Keeps the contract, on a folder as any contributor writes it. */
class SpeedKeptTest extends AnalyzerContract<SpeedKept.Kept> {
    private static final int SESSIONS = 9;

    @TempDir
    Path folder;

    @BeforeEach
    void writeAFolder() throws IOException {
        StringBuilder sessions = new StringBuilder();
        StringBuilder trials = new StringBuilder("session,trial,kind,shot,temp_c,rh_pct,approach_angle_deg,"
                + "rebound_angle_deg,approach_speed_mps,rebound_speed_mps\n");
        for (int session = 1; session <= SESSIONS; session++) {
            sessions.append(session == 1 ? "" : ", ")
                    .append("{\"id\": \"s%d\", \"table\": \"t1\", \"delivery\": \"ramp\"}".formatted(session));
            for (int trial = 1; trial <= 3; trial++) {
                trials.append("s%d,%d,rebound,rebound-45-ramp,21,50,45,43,2.0,1.%d%d\n"
                        .formatted(session, trial, session, trial));
            }
        }
        Files.writeString(folder.resolve("contribution.json"), """
                {"schemaVersion": "1.0", "title": "Speeds", "licence": "CC0-1.0", "invented": true,
                 "contributor": {"name": "A. Example"}, "rooms": [{"id": "cellar"}],
                 "tables": [{"id": "t1", "room": "cellar", "playingLengthMm": 2540, "playingWidthMm": 1270}],
                 "sessions": [%s]}
                """.formatted(sessions));
        Files.writeString(folder.resolve("trials.csv"), trials);
    }

    @Override
    protected Analyzer<SpeedKept.Kept> analyzer() {
        return new SpeedKept();
    }

    @Override
    protected List<Example> examples() {
        List<Example> examples = new ArrayList<>();
        try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
            ContributionReader.create()
                    .read(
                            source,
                            ContributionReader.ContributionListener.NONE,
                            TrialSink.NONE,
                            (session, trials) -> examples.add(new Example(session, List.copyOf(trials))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return examples;
    }

    /** Session s has the medians 1.s2 / 2: 0.56, 0.61, ... 0.96. */
    @Test
    void takesTheMiddleAttemptOfEachSession() {
        assertThat(examples()).hasSize(SESSIONS);
        for (Example example : examples()) {
            int session = Integer.parseInt(example.session().session().id().substring(1));
            assertThat(analyzer().summarise(example.session(), example.trials()))
                    .isEqualTo(new SpeedKept.Kept(3, (1 + session / 10.0 + 0.02) / 2));
        }
    }

    /**
     * By counting the 2ⁿ equally likely rows of coins: 2·1/32 > 5 % for n = 5; 2·1/64 ≤ 5 % < 2·7/64 for n = 6;
     * 2·10/512 ≤ 5 % < 2·46/512 for n = 9.
     */
    @Test
    void takesTheRanksThatCoinsAllow() {
        assertThat(SpeedKept.rank(0)).isZero();
        assertThat(SpeedKept.rank(5)).isZero();
        assertThat(SpeedKept.rank(6)).isEqualTo(1);
        assertThat(SpeedKept.rank(9)).isEqualTo(2);
    }
}
