package org.tableweather.server.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class SessionRunTest {

    @Test
    void splitsAtWideGapsAlone() {
        assertThat(SessionRun.of(List.of(1, 2, 3, 11, 20, 21)))
                .extracting(SessionRun::ids)
                .containsExactly(List.of(1, 2, 3, 11), List.of(20, 21));
        assertThat(SessionRun.of(List.of())).isEmpty();
        SessionRun run = new SessionRun(List.of(4, 7));
        assertThat(run.first()).isEqualTo(4);
        assertThat(run.last()).isEqualTo(7);
        assertThat(run.hasGaps()).isTrue();
        assertThat(new SessionRun(List.of(4, 5, 6)).hasGaps()).isFalse();
        assertThat(new SessionRun(List.of(4)).hasGaps()).isFalse();
    }
}
