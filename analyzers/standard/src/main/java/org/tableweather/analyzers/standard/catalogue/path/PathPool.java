package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.path.PathSummary.Landings;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.schema.geometry.TableSize;

/** The sessions of a pool: their rooms and tables, and where attempts landed. */
final class PathPool {

    private static final int FEWEST_DF = 10;

    final List<SessionSummary<PathSummary>> sessions;

    PathPool(List<SessionSummary<PathSummary>> summaries) {
        sessions = summaries.stream()
                .sorted(Comparator.comparing((SessionSummary<PathSummary> each) -> each.roomKey())
                        .thenComparing(SessionSummary::sessionKey)
                        .thenComparing(SessionSummary::digest))
                .toList();
    }

    /** What the rail is fitted to. */
    List<SessionSummary<RailSummary>> pairs() {
        List<SessionSummary<RailSummary>> pairs = new ArrayList<>();
        for (SessionSummary<PathSummary> each : sessions) {
            pairs.add(new SessionSummary<>(
                    each.roomKey(),
                    each.sessionKey(),
                    each.digest(),
                    each.invented(),
                    each.trials(),
                    each.summary().rail()));
        }
        return pairs;
    }

    /** Without one room. */
    PathPool without(String room) {
        return new PathPool(
                sessions.stream().filter(each -> !each.roomKey().equals(room)).toList());
    }

    Set<String> rooms() {
        Set<String> rooms = new LinkedHashSet<>();
        sessions.forEach(each -> rooms.add(each.roomKey()));
        return rooms;
    }

    /** Landings by shot: how many. */
    SortedMap<String, Long> landed() {
        SortedMap<String, Long> landed = new TreeMap<>();
        for (SessionSummary<PathSummary> each : sessions) {
            for (Landings landings : each.summary().landings()) {
                landed.merge(landings.shot(), (long) landings.offsetsDia().size(), Long::sum);
            }
        }
        return landed;
    }

    /** Scatter of attempts at a shot within sessions, diamonds; empty when too few were repeated. */
    Optional<Double> scatterDia(String shot) {
        double squares = 0;
        int df = 0;
        for (SessionSummary<PathSummary> each : sessions) {
            Optional<Landings> own = landings(each, shot);
            squares += own.map(Landings::squares).orElse(0.0);
            df += own.map(landings -> landings.offsetsDia().size() - 1).orElse(0);
        }
        return df >= FEWEST_DF && squares > 0 ? Optional.of(Math.sqrt(squares / df)) : Optional.empty();
    }

    static Optional<Landings> landings(SessionSummary<PathSummary> session, String shot) {
        return session.summary().landings().stream()
                .filter(landings -> landings.shot().equals(shot))
                .findFirst();
    }

    /** The table that a session states, else the reference. */
    static TableSize table(PathSummary session) {
        return TableSize.of(session.lengthM(), session.widthM(), session.ballM())
                .orElse(TableSize.REFERENCE);
    }

    /** The latest session's table of a room; the reference for none. */
    TableSize table(Optional<String> room) {
        return room.flatMap(this::latest).map(PathPool::table).orElse(TableSize.REFERENCE);
    }

    /** How the nose meets the ball there. */
    double noseSine(Optional<String> room) {
        return room.flatMap(this::latest)
                .map(session -> session.rail().noseSine())
                .orElse(RailProperties.POOL_NOSE_SINE);
    }

    private Optional<PathSummary> latest(String room) {
        return sessions.stream()
                .filter(each -> each.roomKey().equals(room))
                .reduce((before, after) -> after)
                .map(SessionSummary::summary);
    }
}
