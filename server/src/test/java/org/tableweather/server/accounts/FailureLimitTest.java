package org.tableweather.server.accounts;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class FailureLimitTest {
    private static final Instant NOON = Instant.parse("2026-01-12T12:00:00Z");

    /** A clock that is set by hand. */
    private static final class HandSet extends Clock {
        private Instant now = NOON;

        @Override
        public ZoneOffset getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(java.time.ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    @Test
    void oneAddressIsHeldBackUntilTheNextMinute() {
        HandSet clock = new HandSet();
        FailureLimit limit = new FailureLimit(clock);
        for (int i = 0; i < FailureLimit.PER_MINUTE; i++) {
            assertThat(limit.isExceeded("192.0.2.1")).isFalse();
            limit.count("192.0.2.1");
        }
        assertThat(limit.isExceeded("192.0.2.1")).isTrue();
        assertThat(limit.isExceeded("192.0.2.2")).isFalse();
        assertThat(limit.refusal("192.0.2.1").code().status()).isEqualTo(429);
        clock.now = NOON.plus(Duration.ofMinutes(1));
        assertThat(limit.isExceeded("192.0.2.1")).isFalse();
    }
}
