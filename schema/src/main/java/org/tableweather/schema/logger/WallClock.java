package org.tableweather.schema.logger;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/** Turns stamps of a clock on the wall into instants, through the changes to and from summer time. */
final class WallClock {
    private final Optional<ZoneId> zone;
    private final Duration ahead;
    private Instant previous = Instant.MIN;
    private long ambiguous;

    WallClock(Optional<ZoneId> zone, Duration ahead) {
        this.zone = zone;
        this.ahead = ahead;
    }

    /** Stamps so far that exist twice. */
    long ambiguous() {
        return ambiguous;
    }

    /**
     * The instant of a stamp. Where summer time ends and an hour comes twice, the earlier one is taken as long as time
     * goes on with it.
     *
     * @return empty for a stamp that summer time skips
     * @throws LogNotUnderstood when the stamp has no offset, and no zone is known
     */
    Optional<Instant> instant(LogTimes.Stamp stamp) throws LogNotUnderstood {
        if (stamp.instant() != null) {
            return Optional.of(stamp.instant().minus(ahead));
        }
        if (zone.isEmpty()) {
            throw new LogNotUnderstood(
                    "the times have no offset from UTC: give the zone in which the logger's clock ran");
        }
        LocalDateTime local = stamp.local().minus(ahead);
        List<ZoneOffset> offsets = zone.get().getRules().getValidOffsets(local);
        if (offsets.isEmpty()) {
            return Optional.empty();
        }
        Instant instant = local.toInstant(offsets.get(0));
        if (offsets.size() > 1) {
            ambiguous++;
            instant = instant.isAfter(previous) ? instant : local.toInstant(offsets.get(1));
        }
        previous = instant;
        return Optional.of(instant);
    }
}
