package org.tableweather.server.contribution;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** How many archives may be taken and checked at a time without being kept: of all callers together, and of each. */
@ApplicationScoped
class CheckPlaces {
    private static final String RETRY_AFTER_SECONDS = "10";

    private final int together;
    private final int perCaller;
    private final Map<String, Integer> taken = new HashMap<>();
    private int all;

    CheckPlaces(
            @ConfigProperty(name = "tableweather.checks.concurrent") int together,
            @ConfigProperty(name = "tableweather.checks.per-caller") int perCaller) {
        this.together = together;
        this.perCaller = perCaller;
    }

    /** What needs a place. */
    @FunctionalInterface
    interface Work<T> {
        T run() throws IOException;
    }

    /**
     * Does it in a place of this caller.
     *
     * @param caller what the bound for each caller counts by
     * @throws Refusal when there is no place
     */
    <T> T within(String caller, Work<T> work) throws IOException {
        take(caller);
        try {
            return work.run();
        } finally {
            giveBack(caller);
        }
    }

    private synchronized void take(String caller) {
        int own = taken.getOrDefault(caller, 0);
        if (own >= perCaller) {
            throw refusal(own + " of " + perCaller
                    + " archives that one caller may have checked at a time are being checked");
        }
        if (all >= together) {
            throw refusal(all + " of " + together + " archives that may be checked at a time are being checked");
        }
        taken.merge(caller, 1, Integer::sum);
        all++;
    }

    private synchronized void giveBack(String caller) {
        taken.computeIfPresent(caller, (any, own) -> own == 1 ? null : own - 1);
        all--;
    }

    private static Refusal refusal(String words) {
        return new Refusal(ErrorCode.TOO_MANY_CHECKS, words + ": try again in " + RETRY_AFTER_SECONDS + " s")
                .withHeader("Retry-After", RETRY_AFTER_SECONDS);
    }
}
