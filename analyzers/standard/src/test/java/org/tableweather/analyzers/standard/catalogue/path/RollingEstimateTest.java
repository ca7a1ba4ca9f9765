package org.tableweather.analyzers.standard.catalogue.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/**
 * Means and standard deviations as R 4 prints them: {@code m <- c(.009, .010, .012); mean(m); sd(m) * sqrt(1 + 1/3)} and
 * {@code m <- c(.009, .011); sqrt(var(m) + 4e-7 / (6 - 2) / 6)}.
 */
class RollingEstimateTest {
    private static SessionSummary<PathSummary> session(String room, String key, Rolling rolling) {
        PathSummary summary = new PathSummary(null, null, rolling, List.of(), 2.54, 1.27, 0.05715);
        return new SessionSummary<>(room, room + "/" + key, key, true, rolling.count(), summary);
    }

    private static List<SessionSummary<PathSummary>> rooms(double... means) {
        List<SessionSummary<PathSummary>> sessions = new ArrayList<>();
        for (double mean : means) {
            sessions.add(session("hall-" + sessions.size(), "s", new Rolling(3, mean, 2e-7)));
        }
        return sessions;
    }

    @Test
    void aNewRoomIsLikeTheRoomsThatWereMeasured() {
        RollingEstimate estimate =
                RollingEstimate.of(rooms(0.009, 0.010, 0.012), Optional.empty()).orElseThrow();

        assertThat(estimate.mean()).isEqualTo(0.01033333, within(1e-8));
        assertThat(estimate.deviation()).isEqualTo(0.001763834, within(1e-9));
        assertThat(estimate.ofRoom()).isFalse();
        assertThat(RollingEstimate.of(rooms(0.009, 0.010), Optional.empty())).isEmpty();
    }

    @Test
    void aRoomWithRollOutsHasItsOwn() {
        List<SessionSummary<PathSummary>> sessions = rooms(0.02, 0.02, 0.02);
        sessions.add(session("mine", "s1", new Rolling(4, 0.009, 3e-7)));
        sessions.add(session("mine", "s2", new Rolling(2, 0.011, 1e-7)));
        sessions.add(session("few", "s1", new Rolling(2, 0.011, 1e-7)));
        RollingEstimate estimate =
                RollingEstimate.of(sessions, Optional.of("mine")).orElseThrow();

        assertThat(estimate.mean()).isEqualTo(0.010, within(1e-12));
        assertThat(estimate.deviation()).isEqualTo(0.001420094, within(1e-9));
        assertThat(estimate.ofRoom()).isTrue();
        assertThat(RollingEstimate.of(sessions, Optional.of("few"))
                        .orElseThrow()
                        .ofRoom())
                .isFalse();
    }
}
