package org.tableweather.server.accounts;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Refused tokens of one address in one minute. A token cannot be guessed; this keeps the trying cheap. */
@ApplicationScoped
class FailureLimit {
    static final int PER_MINUTE = 60;
    private static final long MINUTE_MILLIS = 60_000;

    private final Clock clock;
    private final Map<String, Integer> failures = new ConcurrentHashMap<>();
    private volatile long minute;

    FailureLimit(Clock clock) {
        this.clock = clock;
    }

    void count(String address) {
        startMinute();
        failures.merge(address, 1, Integer::sum);
    }

    boolean isExceeded(String address) {
        startMinute();
        return failures.getOrDefault(address, 0) >= PER_MINUTE;
    }

    Refusal refusal(String address) {
        return new Refusal(
                        ErrorCode.TOO_MANY_FAILURES,
                        PER_MINUTE + " tokens from " + address
                                + " were refused within a minute: wait a minute, then send a valid one")
                .withHeader("Retry-After", "60");
    }

    private void startMinute() {
        long now = clock.millis() / MINUTE_MILLIS;
        if (now != minute) {
            minute = now;
            failures.clear();
        }
    }
}
