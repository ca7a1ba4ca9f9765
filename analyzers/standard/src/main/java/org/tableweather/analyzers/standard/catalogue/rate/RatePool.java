package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.SessionOrder;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.catalogue.rate.RateSummary.Cell;
import org.tableweather.analyzers.standard.catalogue.rate.RateSummary.Part;

/** The attempts that a question can use, and the count of those that it cannot. */
final class RatePool {

    /**
     * The used attempts of a session.
     *
     * @param room key of its room
     * @param cells at least one
     */
    record Counted(String room, List<Cell> cells) {

        long made() {
            return cells.stream().mapToLong(Cell::made).sum();
        }

        long tried() {
            return cells.stream().mapToLong(Cell::tried).sum();
        }

        double mean(ToDoubleFunction<Cell> column) {
            return cells.stream()
                            .mapToDouble(cell -> cell.tried() * column.applyAsDouble(cell))
                            .sum()
                    / tried();
        }

        double rhPct() {
            return 50 + 10 * mean(Cell::h);
        }

        double tempC() {
            return 21 + 5 * mean(Cell::t);
        }
    }

    /** Attempts by shot. */
    final ShotCounts shots = new ShotCounts();
    /** The shot that is answered for; empty when there is none. */
    final String shot;
    /** In the order of rooms and keys. */
    final List<Counted> sessions = new ArrayList<>();
    /** How the used sessions were shot. */
    final List<GuardedSession> guarded = new ArrayList<>();

    long inventedSessions;
    long withoutClimate;
    long notStated;

    RatePool(List<SessionSummary<RateSummary>> summaries, RateQuestion question) {
        List<SessionSummary<RateSummary>> ordered = SessionOrder.of(summaries);
        ordered.forEach(session -> session.summary().parts().forEach(this::count));
        shot = question.shot().orElseGet(shots::mostUsable);
        ordered.forEach(this::take);
    }

    private void count(Part part) {
        shots.add(part.shot(), part.tried() + part.withoutClimate() + part.notStated(), part.tried());
    }

    private void take(SessionSummary<RateSummary> session) {
        List<Cell> cells = new ArrayList<>();
        for (Part part : session.summary().parts()) {
            if (part.shot().equals(shot) || shot.isEmpty()) {
                cells.addAll(part.cells());
                withoutClimate += part.withoutClimate();
                notStated += part.notStated();
            }
        }
        if (!cells.isEmpty()) {
            sessions.add(new Counted(session.roomKey(), cells));
            guarded.add(new GuardedSession(
                    session.roomKey(), session.sessionKey(), session.summary().protocol()));
            inventedSessions += session.invented() ? 1 : 0;
        }
    }

    /** The cells of each room, equal climates of its sessions as one, in the order of rooms, humidity and temperature. */
    SortedMap<String, List<Cell>> cellsByRoom() {
        SortedMap<String, SortedMap<Climate, Cell>> merged = new TreeMap<>();
        for (Counted session : sessions) {
            SortedMap<Climate, Cell> room = merged.computeIfAbsent(session.room(), key -> new TreeMap<>());
            session.cells().forEach(cell -> room.merge(Climate.of(cell), cell, RatePool::sum));
        }
        SortedMap<String, List<Cell>> cells = new TreeMap<>();
        merged.forEach((room, map) -> cells.put(room, List.copyOf(map.values())));
        return cells;
    }

    private static Cell sum(Cell a, Cell b) {
        return new Cell(a.rhTenths(), a.tempTenths(), a.made() + b.made(), a.tried() + b.tried());
    }

    private record Climate(int rhTenths, int tempTenths) implements Comparable<Climate> {

        static Climate of(Cell cell) {
            return new Climate(cell.rhTenths(), cell.tempTenths());
        }

        @Override
        public int compareTo(Climate other) {
            int byHumidity = Integer.compare(rhTenths, other.rhTenths);
            return byHumidity != 0 ? byHumidity : Integer.compare(tempTenths, other.tempTenths);
        }
    }

    long rooms() {
        return sessions.stream().map(Counted::room).distinct().count();
    }

    long made() {
        return sessions.stream().mapToLong(Counted::made).sum();
    }

    long tried() {
        return sessions.stream().mapToLong(Counted::tried).sum();
    }

    /** Session means of relative humidity, %. */
    DoubleStream humidities() {
        return sessions.stream().mapToDouble(Counted::rhPct);
    }

    /** Session means of temperature, °C. */
    DoubleStream temperatures() {
        return sessions.stream().mapToDouble(Counted::tempC);
    }
}
