package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.Measure;
import org.tableweather.analyzers.standard.catalogue.PoolWords;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Block;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.catalogue.SessionOrder;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;
import org.tableweather.analyzers.standard.catalogue.WhyNot;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.catalogue.rooms.PooledRoom.PooledSession;
import org.tableweather.analyzers.standard.statistics.Moments;

/** The trials of one shot that a question about rooms can use, room by room, and the count of those that it cannot. */
public final class RoomPool {

    private final Optional<String> asked;
    private final Response response;
    private final int[] needed;
    private final int neededBits;
    private final ShotCounts shots = new ShotCounts();
    private final String shot;
    private final List<PooledRoom> rooms = new ArrayList<>();
    private long withoutResponse;
    private long withoutClimate;

    /**
     * Gathers.
     *
     * @param asked id of the shot; empty: the one with the most usable trials
     * @param climate columns before the response, in the order of {@link Measure}
     */
    public RoomPool(
            List<SessionSummary<SessionMoments>> sessions,
            Optional<String> asked,
            List<Measure> climate,
            Response response) {
        this.asked = asked;
        this.response = response;
        needed = IntStream.concat(climate.stream().mapToInt(Measure::bit), IntStream.of(response.measure.bit()))
                .toArray();
        neededBits = IntStream.of(needed).sum();
        sessions.forEach(session -> session.summary().parts().forEach(this::count));
        shot = asked.orElseGet(shots::mostUsable);
        Map<String, List<PooledSession>> byRoom = new LinkedHashMap<>();
        for (SessionSummary<SessionMoments> session : SessionOrder.of(sessions)) {
            Moments used = used(session.summary());
            if (used.n() > 0) {
                byRoom.computeIfAbsent(session.roomKey(), room -> new ArrayList<>())
                        .add(new PooledSession(
                                session.sessionKey(),
                                session.invented(),
                                session.summary().traits().corrected(),
                                session.summary().protocol(),
                                used));
            }
        }
        byRoom.forEach((room, own) -> rooms.add(new PooledRoom(room, own)));
    }

    private void count(Part part) {
        for (Block block : part.blocks()) {
            long n = block.moments().n();
            shots.add(part.shot(), n, block.measures(neededBits) ? n : 0);
        }
    }

    private Moments used(SessionMoments summary) {
        List<Moments> usable = new ArrayList<>();
        usable.add(Moments.none(needed.length));
        for (Part part : summary.parts()) {
            if (!part.shot().equals(shot) && !shot.isEmpty()) {
                continue;
            }
            for (Block block : part.blocks()) {
                if (block.measures(neededBits)) {
                    usable.add(block.select(needed));
                } else if (!block.measures(response.measure.bit())) {
                    withoutResponse += block.moments().n();
                } else {
                    withoutClimate += block.moments().n();
                }
            }
        }
        return Moments.merged(usable);
    }

    /** The shot that is answered for; empty when no trial is usable. */
    public String shot() {
        return shot;
    }

    /** What is explained. */
    public Response response() {
        return response;
    }

    /** In the order of their keys. */
    public List<PooledRoom> rooms() {
        return List.copyOf(rooms);
    }

    /** What may have bent the usable sessions. */
    List<GuardFinding> guards() {
        return guards(rooms.stream()
                .flatMap(room -> room.sessions().stream().map(room::guarded))
                .toList());
    }

    /** What may have bent these of its sessions. */
    public List<GuardFinding> guards(List<GuardedSession> sessions) {
        return BiasGuards.of(sessions, shot, response.parameter);
    }

    /** Number of usable sessions. */
    public long sessions() {
        return rooms.stream().mapToLong(room -> room.sessions().size()).sum();
    }

    /** Number of usable trials. */
    public long trials() {
        return rooms.stream().mapToLong(PooledRoom::trials).sum();
    }

    /** Why no trial is usable; empty when one is. */
    public Optional<Declined> declined(Parameters parameters, List<String> references) {
        if (!rooms.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(whyNot().declined(parameters, List.of(), references));
    }

    private WhyNot whyNot() {
        if (shots.isEmpty()) {
            return new WhyNot(Reason.TOO_FEW_RECORDS, "There are no trials: give sessions with trials.");
        }
        if (!shot.isEmpty() && !shots.has(shot)) {
            return WhyNot.unknownShot("No trial", shot, shots);
        }
        String which = shot.isEmpty() ? "" : " of shot " + shot;
        return new WhyNot(
                Reason.NOT_APPLICABLE,
                withoutClimate > 0
                        ? Figures.counted(withoutClimate, "trial") + which + " with " + response.parameter
                                + ", none with the climate: log humidity and temperature, or state them on the session."
                        : "None of " + Figures.counted(withoutResponse, "trial") + which + " has " + response.parameter
                                + ": choose another response or shot.");
    }

    /** What is to be said of the data whether or not there is an answer. */
    public List<String> warnings() {
        return new PoolWords("trial")
                .invented(count(PooledSession::invented), sessions())
                .corrected(count(PooledSession::corrected), sessions())
                .chosen(asked, shot, shots)
                .leftOut(withoutResponse, "no " + response.parameter + "; log it, or ask for another response.")
                .leftOut(withoutClimate, "the climate at the trial is not known; log it, or state it on the session.")
                .list();
    }

    private long count(Predicate<PooledSession> which) {
        return rooms.stream()
                .flatMap(room -> room.sessions().stream())
                .filter(which)
                .count();
    }
}
