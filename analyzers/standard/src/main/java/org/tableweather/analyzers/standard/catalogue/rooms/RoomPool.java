package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.Measure;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Block;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.catalogue.rooms.PooledRoom.PooledSession;
import org.tableweather.analyzers.standard.statistics.Moments;

/** The trials of one shot that a question about rooms can use, room by room, and the count of those that it cannot. */
public final class RoomPool {

    private static final Comparator<SessionSummary<SessionMoments>> ORDER = Comparator.comparing(
                    (SessionSummary<SessionMoments> session) -> session.roomKey())
            .thenComparing(SessionSummary::sessionKey)
            .thenComparing(SessionSummary::digest);

    private final Optional<String> asked;
    private final List<Measure> climate;
    private final Response response;
    private final int neededBits;
    private final SortedMap<String, Long> trialsByShot = new TreeMap<>();
    private final SortedMap<String, Long> usableByShot = new TreeMap<>();
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
        this.climate = List.copyOf(climate);
        this.response = response;
        neededBits = climate.stream().mapToInt(Measure::bit).sum() | response.measure.bit();
        sessions.forEach(session -> session.summary().parts().forEach(this::count));
        shot = asked.orElseGet(this::mostUsable);
        Map<String, List<PooledSession>> byRoom = new LinkedHashMap<>();
        for (SessionSummary<SessionMoments> session :
                sessions.stream().sorted(ORDER).toList()) {
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
            trialsByShot.merge(part.shot(), block.moments().n(), Long::sum);
            if (isUsable(block)) {
                usableByShot.merge(part.shot(), block.moments().n(), Long::sum);
            }
        }
    }

    private boolean isUsable(Block block) {
        return (block.measured() & neededBits) == neededBits;
    }

    private String mostUsable() {
        String best = "";
        long most = 0;
        for (Map.Entry<String, Long> entry : usableByShot.entrySet()) {
            if (entry.getValue() > most) {
                best = entry.getKey();
                most = entry.getValue();
            }
        }
        return best;
    }

    private Moments used(SessionMoments summary) {
        List<Moments> usable = new ArrayList<>();
        usable.add(Moments.none(climate.size() + 1));
        for (Part part : summary.parts()) {
            if (!part.shot().equals(shot) && !shot.isEmpty()) {
                continue;
            }
            for (Block block : part.blocks()) {
                if (isUsable(block)) {
                    usable.add(block.moments().select(positions(block.measured())));
                } else if ((block.measured() & response.measure.bit()) == 0) {
                    withoutResponse += block.moments().n();
                } else {
                    withoutClimate += block.moments().n();
                }
            }
        }
        return Moments.merged(usable);
    }

    /** Where the needed columns stand among the measured ones. */
    private int[] positions(int measured) {
        int[] positions = new int[climate.size() + 1];
        for (int i = 0; i < climate.size(); i++) {
            positions[i] = Integer.bitCount(measured & (climate.get(i).bit() - 1));
        }
        positions[climate.size()] = Integer.bitCount(measured & (response.measure.bit() - 1));
        return positions;
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
        String which = shot.isEmpty() ? "" : " of shot " + shot;
        Reason reason = Reason.NOT_APPLICABLE;
        String detail;
        if (trialsByShot.isEmpty()) {
            reason = Reason.TOO_FEW_RECORDS;
            detail = "There are no trials: give sessions with trials.";
        } else if (!shot.isEmpty() && !trialsByShot.containsKey(shot)) {
            detail = "No trial cites shot " + shot + ": the shots here are "
                    + Figures.listed(new ArrayList<>(trialsByShot.keySet())) + ".";
        } else if (withoutClimate > 0) {
            detail = Figures.counted(withoutClimate, "trial") + which + " with " + response.parameter
                    + ", none with the climate: log humidity and temperature, or state them on the session.";
        } else {
            detail = "None of " + Figures.counted(withoutResponse, "trial") + which + " has " + response.parameter
                    + ": choose another response or shot.";
        }
        return Optional.of(new Declined(reason, detail, parameters.values(), List.of(), references));
    }

    /** What is to be said of the data whether or not there is an answer. */
    public List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        long invented = count(PooledSession::invented);
        if (invented > 0) {
            warnings.add("Invented data: " + invented + " of " + Figures.counted(sessions(), "session")
                    + " are made up for demonstration; no figure here says anything about real tables.");
        }
        long corrected = count(PooledSession::corrected);
        if (corrected > 0) {
            warnings.add("The climate of " + corrected + " of " + Figures.counted(sessions(), "session")
                    + " was corrected by the calibration of its instrument.");
        }
        List<String> others =
                usableByShot.keySet().stream().filter(one -> !one.equals(shot)).toList();
        if (asked.isEmpty() && !others.isEmpty()) {
            warnings.add("Shot " + shot + " was taken because it has the most usable trials; others can be set by the"
                    + " parameter shot: " + Figures.listed(others) + ".");
        }
        if (withoutResponse > 0) {
            warnings.add(Figures.counted(withoutResponse, "trial") + " left out: no " + response.parameter
                    + "; log it, or ask for another response.");
        }
        if (withoutClimate > 0) {
            warnings.add(Figures.counted(withoutClimate, "trial")
                    + " left out: the climate at the trial is not known; log it, or state it on the session.");
        }
        return warnings;
    }

    private long count(Predicate<PooledSession> which) {
        return rooms.stream()
                .flatMap(room -> room.sessions().stream())
                .filter(which)
                .count();
    }
}
