package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.catalogue.rate.RateSummary.Cell;
import org.tableweather.analyzers.standard.catalogue.rate.RateSummary.Part;

/** The attempts that a question can use, and the count of those that it cannot. */
final class RatePool {

    private static final Comparator<SessionSummary<RateSummary>> ORDER = Comparator.comparing(
                    (SessionSummary<RateSummary> session) -> session.roomKey())
            .thenComparing(SessionSummary::sessionKey)
            .thenComparing(SessionSummary::digest);

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

    /** Shots with usable attempts, by the number of these. */
    final SortedMap<String, Long> usableByShot = new TreeMap<>();
    /** All attempts of all shots. */
    final SortedMap<String, Long> triedByShot = new TreeMap<>();
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
        List<SessionSummary<RateSummary>> ordered =
                summaries.stream().sorted(ORDER).toList();
        ordered.forEach(session -> session.summary().parts().forEach(this::count));
        shot = question.shot().orElseGet(this::mostUsable);
        ordered.forEach(this::take);
    }

    private void count(Part part) {
        triedByShot.merge(part.shot(), part.tried() + part.withoutClimate() + part.notStated(), Long::sum);
        if (part.tried() > 0) {
            usableByShot.merge(part.shot(), part.tried(), Long::sum);
        }
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
