package org.tableweather.analyzers.standard.catalogue.agreement;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.catalogue.rooms.PooledRoom;
import org.tableweather.analyzers.standard.catalogue.rooms.PooledRoom.PooledSession;
import org.tableweather.analyzers.standard.catalogue.rooms.RoomPool;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.RoomSessions;
import org.tableweather.analyzers.standard.statistics.interlab.Laboratory;

/** What each room found in the band. */
final class RoomResults {

    /** One for each room with a session in the band, in the order of the pool. */
    final List<Laboratory> laboratories = new ArrayList<>();
    /** All sessions in the band, the response alone. */
    final List<RoomSessions> sessions = new ArrayList<>();
    /** Rooms with no session in the band. */
    final List<String> outside = new ArrayList<>();
    /** The sessions that are compared. */
    final List<GuardedSession> guarded = new ArrayList<>();
    /** Of the sessions that are compared, %RH. */
    double driestPct = Double.POSITIVE_INFINITY;

    double dampestPct = Double.NEGATIVE_INFINITY;
    private final HumidityBand band;
    private final boolean all;

    RoomResults(RoomPool pool, HumidityBand band, boolean all) {
        this.band = band;
        this.all = all;
        pool.rooms().forEach(this::add);
    }

    private void add(PooledRoom room) {
        List<PooledSession> inside =
                room.sessions().stream().filter(band::holds).toList();
        if (inside.isEmpty()) {
            outside.add(room.key());
            return;
        }
        sessions.add(new RoomSessions(
                room.key(), inside.stream().map(RoomResults::response).toList()));
        List<PooledSession> taken = all ? inside : List.of(nearest(inside));
        taken.forEach(session -> note(room, session));
        Moments results =
                Moments.merged(taken.stream().map(RoomResults::response).toList());
        laboratories.add(new Laboratory(room.key(), results.n(), results.mean(0), results.cross(0, 0)));
    }

    private static Moments response(PooledSession session) {
        return session.moments().select(session.moments().columns() - 1);
    }

    /** Nearest the middle among those with two trials, if any has; the first by its key when several are as near. */
    private PooledSession nearest(List<PooledSession> inside) {
        return inside.stream()
                .min(Comparator.comparing(
                                (PooledSession session) -> session.moments().n() < 2)
                        .thenComparingDouble(session -> Math.abs(HumidityBand.rhPct(session) - band.middlePct()))
                        .thenComparing(PooledSession::key))
                .orElseThrow();
    }

    private void note(PooledRoom room, PooledSession session) {
        guarded.add(room.guarded(session));
        driestPct = Math.min(driestPct, HumidityBand.rhPct(session));
        dampestPct = Math.max(dampestPct, HumidityBand.rhPct(session));
    }

    /** Whether some room has two sessions in the band. */
    boolean sessionsRepeat() {
        return sessions.stream().anyMatch(room -> room.sessions().size() > 1);
    }
}
