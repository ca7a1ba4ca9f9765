package org.tableweather.server.catalogue;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonRawValue;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * A session as the public sees it.
 *
 * @param id its number here
 * @param key its name over all contributions
 * @param room key of its room
 * @param contribution number of its contribution
 * @param digest of its content
 * @param invented whether it is made up for demonstration
 * @param trials attempts
 * @param startedAt first known time
 * @param endedAt last known time
 * @param tempMinC lowest climate of a trial, °C
 * @param tempMaxC highest, °C
 * @param rhMinPct lowest, %
 * @param rhMaxPct highest, %
 * @param shots trials of each shot and kind
 * @param entry the session and all it refers to, as contributed; only when one session is asked for
 */
record SessionView(
        int id,
        String key,
        String room,
        long contribution,
        String digest,
        boolean invented,
        long trials,
        Optional<Instant> startedAt,
        Optional<Instant> endedAt,
        Optional<Double> tempMinC,
        Optional<Double> tempMaxC,
        Optional<Double> rhMinPct,
        Optional<Double> rhMaxPct,
        @JsonRawValue @Schema(implementation = Object.class) String shots,

        @JsonRawValue @JsonInclude(JsonInclude.Include.NON_NULL) @Schema(implementation = Object.class)
        String entry) {

    static final List<String> CSV_HEADER = List.of(
            "id",
            "key",
            "room",
            "contribution",
            "digest",
            "invented",
            "trials",
            "started_at",
            "ended_at",
            "temp_min_c",
            "temp_max_c",
            "rh_min_pct",
            "rh_max_pct");

    List<String> csv() {
        return List.of(
                Integer.toString(id),
                key,
                room,
                Long.toString(contribution),
                digest,
                Boolean.toString(invented),
                Long.toString(trials),
                startedAt.map(Instant::toString).orElse(""),
                endedAt.map(Instant::toString).orElse(""),
                tempMinC.map(String::valueOf).orElse(""),
                tempMaxC.map(String::valueOf).orElse(""),
                rhMinPct.map(String::valueOf).orElse(""),
                rhMaxPct.map(String::valueOf).orElse(""));
    }
}
