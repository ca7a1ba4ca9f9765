package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Block;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/** The trials that a question can use, and the count of those that it cannot. */
final class HumidityPool {

    /** Trials by shot. */
    final ShotCounts shots = new ShotCounts();
    /** The shot that is answered for; empty when there is none. */
    final String shot;
    /** Rooms in the order of their keys; columns: covariates, then the response. */
    final List<RoomSessions> rooms = new ArrayList<>();
    /** What the sessions of each room state, in the same order. */
    final List<List<SessionTraits>> traits = new ArrayList<>();
    /** How the used sessions were shot. */
    final List<GuardedSession> guarded = new ArrayList<>();
    /** A cloth of the mean composition. */
    final SessionTraits typical;

    final long usedSessions;
    final long usedTrials;
    final long inventedSessions;
    /** Trials of the shot without the response. */
    long withoutResponse;
    /** Trials of the shot with the response, but without humidity or temperature. */
    long withoutClimate;
    /** Trials of the shot with response and climate, but without a covariate that was asked for. */
    long withoutCovariate;
    /** Trials of the shot of sessions that do not state what a measure or covariate needs. */
    long withoutTrait;

    private final HumidityQuestion question;
    private final HumidityColumns columns;
    private final int[] needed;
    private final int neededBits;

    HumidityPool(List<SessionSummary<SessionMoments>> sessions, HumidityQuestion question) {
        this.question = question;
        columns = question.columns();
        needed = columns.base(question.response());
        neededBits = columns.bits() | question.response().measure.bit();
        List<SessionSummary<SessionMoments>> ordered = SessionOrder.of(sessions);
        ordered.forEach(session -> session.summary()
                .parts()
                .forEach(part -> count(part, session.summary().traits())));
        shot = question.shot().orElseGet(shots::mostUsable);
        Map<String, List<Moments>> byRoom = new LinkedHashMap<>();
        Map<String, List<SessionTraits>> traitsByRoom = new LinkedHashMap<>();
        long invented = 0;
        for (SessionSummary<SessionMoments> session : ordered) {
            Optional<Moments> used = used(session.summary());
            if (used.isPresent()) {
                byRoom.computeIfAbsent(session.roomKey(), room -> new ArrayList<>())
                        .add(used.get());
                traitsByRoom
                        .computeIfAbsent(session.roomKey(), room -> new ArrayList<>())
                        .add(session.summary().traits());
                guarded.add(new GuardedSession(
                        session.roomKey(),
                        session.sessionKey(),
                        session.summary().protocol()));
                invented += session.invented() ? 1 : 0;
            }
        }
        byRoom.forEach((room, moments) -> rooms.add(new RoomSessions(room, moments)));
        traits.addAll(traitsByRoom.values());
        usedSessions = byRoom.values().stream().mapToLong(List::size).sum();
        usedTrials = rooms.stream().mapToLong(RoomSessions::trials).sum();
        inventedSessions = invented;
        typical = typicalCloth();
    }

    private SessionTraits typicalCloth() {
        double wool = meanOf(SessionTraits::woolPct);
        return SessionTraits.UNKNOWN.withCloth(wool, 100 - wool);
    }

    private double meanOf(ToDoubleFunction<SessionTraits> trait) {
        return traits.stream()
                .flatMap(List::stream)
                .mapToDouble(trait)
                .filter(number -> !Double.isNaN(number))
                .average()
                .orElse(100);
    }

    private void count(Part part, SessionTraits stated) {
        for (Block block : part.blocks()) {
            long n = block.moments().n();
            boolean usable = block.measures(neededBits) && columns.areKnown(stated);
            shots.add(part.shot(), n, usable ? n : 0);
        }
    }

    private Optional<Moments> used(SessionMoments summary) {
        List<Moments> usable = new ArrayList<>();
        for (Part part : summary.parts()) {
            if (part.shot().equals(shot) || shot.isEmpty()) {
                part.blocks().forEach(block -> gather(block, usable));
            }
        }
        if (usable.isEmpty()) {
            return Optional.empty();
        }
        Moments base = Moments.merged(usable);
        Optional<Moments> derived = columns.areKnown(summary.traits()) && !shot.isEmpty()
                ? columns.of(base, summary.traits())
                : Optional.empty();
        if (derived.isEmpty()) {
            withoutTrait += base.n();
        }
        return derived;
    }

    private void gather(Block block, List<Moments> usable) {
        if (!block.measures(neededBits)) {
            countUnusable(block);
        } else if (block.moments().n() > 0) {
            usable.add(block.select(needed));
        }
    }

    private void countUnusable(Block block) {
        long n = block.moments().n();
        int climate = Measure.HUMIDITY.bit() | Measure.HUMIDITY_SQUARED.bit() | Measure.TEMPERATURE.bit();
        if (!block.measures(question.response().measure.bit())) {
            withoutResponse += n;
        } else if (!block.measures(climate)) {
            withoutClimate += n;
        } else {
            withoutCovariate += n;
        }
    }

    /** All used trials as one. */
    Moments total() {
        List<Moments> all = new ArrayList<>();
        rooms.forEach(room -> all.addAll(room.sessions()));
        return Moments.merged(all);
    }

    /** Lowest session mean of a column, the constant not counted. */
    double lowest(int column) {
        return rooms.stream()
                .flatMap(room -> room.sessions().stream())
                .mapToDouble(session -> session.mean(column))
                .min()
                .orElse(Double.NaN);
    }

    /** Highest session mean of a column, the constant not counted. */
    double highest(int column) {
        return rooms.stream()
                .flatMap(room -> room.sessions().stream())
                .mapToDouble(session -> session.mean(column))
                .max()
                .orElse(Double.NaN);
    }

    /** Relative humidity at 21 °C of the driest session; at the bed of the driest there. */
    double lowestPct() {
        return question.measure().rhPct(lowest(0), typical);
    }

    /** Relative humidity at 21 °C of the dampest session; at the bed of the dampest there. */
    double highestPct() {
        return question.measure().rhPct(highest(0), typical);
    }
}
