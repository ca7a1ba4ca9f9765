package org.tableweather.schema.record;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One table, one held climate, one visit. A change of climate is a new session.
 *
 * @param id unique in the contribution
 * @param table id of the table
 * @param ballSet id of the ball set
 * @param cue id of the cue
 * @param instrument id of the instrument that read the climate
 * @param visit name shared by the sessions of one visit
 * @param shooter a pseudonym of the person who shoots
 * @param startedAt first attempt
 * @param settledFrom since when the climate was held
 * @param delivery {@code ramp} or {@code cue}
 * @param orderRandomised whether the order of the shots was drawn by lot
 * @param everyAttemptLogged whether made and missed attempts are all there
 * @param blinded whether the person who marked the outcome did not know the climate
 * @param warmUpTrials attempts shot before the first logged one
 * @param tempC climate stated by hand, °C
 * @param tempF the same in °F
 * @param rhPct climate stated by hand, %
 * @param bedC temperature of the bed, °C
 * @param bedF the same in °F
 * @param note free text
 */
public record Session(
        String id,
        String table,
        Optional<String> ballSet,
        Optional<String> cue,
        Optional<String> instrument,
        Optional<String> visit,
        Optional<String> shooter,
        Optional<OffsetDateTime> startedAt,
        Optional<OffsetDateTime> settledFrom,
        Optional<String> delivery,
        Optional<Boolean> orderRandomised,
        Optional<Boolean> everyAttemptLogged,
        Optional<Boolean> blinded,
        OptionalInt warmUpTrials,
        OptionalDouble tempC,
        OptionalDouble tempF,
        OptionalDouble rhPct,
        OptionalDouble bedC,
        OptionalDouble bedF,
        Optional<String> note) {

    /** Stated temperature in °C, from whichever unit was written; empty when neither was. */
    public OptionalDouble statedTempC() {
        return celsius(tempC, tempF);
    }

    /** Stated temperature of the bed in °C, from whichever unit was written; empty when neither was. */
    public OptionalDouble statedBedC() {
        return celsius(bedC, bedF);
    }

    private static OptionalDouble celsius(OptionalDouble celsius, OptionalDouble fahrenheit) {
        return celsius.isPresent() || fahrenheit.isEmpty()
                ? celsius
                : OptionalDouble.of((fahrenheit.getAsDouble() - 32) / 1.8);
    }
}
