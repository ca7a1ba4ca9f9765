package org.tableweather.schema.check;

import java.util.Optional;

/**
 * What the rules of a trial need to know of its session.
 *
 * @param startSecond start of the session, s since 1970; {@link Long#MIN_VALUE} when not stated
 * @param playingLengthM of its table, m; NaN when not stated
 * @param delivery how it delivers the ball
 */
public record SessionFacts(long startSecond, double playingLengthM, Optional<String> delivery) {

    /** Nothing known. */
    public static final SessionFacts NONE = new SessionFacts(Long.MIN_VALUE, Double.NaN, Optional.empty());
}
