package org.tableweather.analyzers.standard.catalogue.agreement;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.AskedRange;
import org.tableweather.analyzers.standard.catalogue.rooms.PooledRoom;
import org.tableweather.analyzers.standard.catalogue.rooms.PooledRoom.PooledSession;

/**
 * The humidities at which rooms are compared, ends included.
 *
 * @param fromPct %RH
 * @param toPct %RH
 */
record HumidityBand(double fromPct, double toPct) {

    /** Width of a band that is chosen from the data, %RH. */
    static final double WIDTH = 10;

    private static final double STEP = 2.5;

    /** The band asked for; where an end is not, {@link #WIDTH} from the other; where none is, the one with the most rooms. */
    static HumidityBand of(AskedRange asked, List<PooledRoom> rooms) {
        if (asked.fromPct().isPresent()) {
            double from = asked.fromPct().get();
            return new HumidityBand(from, asked.toPct().orElse(Math.min(100, from + WIDTH)));
        }
        return asked.toPct()
                .map(to -> new HumidityBand(Math.max(0, to - WIDTH), to))
                .orElseGet(() -> fullest(rooms));
    }

    /** Most rooms, then most sessions, then nearest to 50 %RH, then drier. */
    private static HumidityBand fullest(List<PooledRoom> rooms) {
        HumidityBand best = new HumidityBand(45, 55);
        for (double from = 0; from <= 100 - WIDTH; from += STEP) {
            HumidityBand band = new HumidityBand(from, from + WIDTH);
            if (band.isFuller(best, rooms)) {
                best = band;
            }
        }
        return best;
    }

    private boolean isFuller(HumidityBand other, List<PooledRoom> rooms) {
        long more = roomsInside(rooms) - other.roomsInside(rooms);
        if (more == 0) {
            more = sessionsInside(rooms) - other.sessionsInside(rooms);
        }
        return more > 0 || more == 0 && Math.abs(middlePct() - 50) < Math.abs(other.middlePct() - 50);
    }

    private long roomsInside(List<PooledRoom> rooms) {
        return rooms.stream()
                .filter(room -> room.sessions().stream().anyMatch(this::holds))
                .count();
    }

    private long sessionsInside(List<PooledRoom> rooms) {
        return rooms.stream()
                .flatMap(room -> room.sessions().stream())
                .filter(this::holds)
                .count();
    }

    double middlePct() {
        return (fromPct + toPct) / 2;
    }

    /** Whether the session's mean humidity lies inside. */
    boolean holds(PooledSession session) {
        double rhPct = rhPct(session);
        return fromPct <= rhPct && rhPct <= toPct;
    }

    /** Mean humidity of a session, %RH. */
    static double rhPct(PooledSession session) {
        return 50 + 10 * session.moments().mean(0);
    }
}
