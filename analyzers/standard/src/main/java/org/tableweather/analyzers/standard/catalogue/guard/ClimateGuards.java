package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.tableweather.analyzers.standard.catalogue.Figures;

/**
 * Is humidity mixed up with something else within rooms? Measured as variance inflation {@code 1/(1 − R²)} of humidity within
 * rooms: R² the share of its variation that the other thing reproduces.
 */
final class ClimateGuards {

    private static final double BOUND = 5;
    /** Inflations beyond this are all the same: nothing of humidity is left. */
    private static final double LARGEST = 1e6;

    private final GuardedPool pool;
    private final List<GuardFinding> found = new ArrayList<>();

    ClimateGuards(GuardedPool pool) {
        this.pool = pool;
    }

    List<GuardFinding> findings() {
        Collection<List<GuardedSession>> rooms = pool.humidByRoom().values();
        judge(Guard.CLIMATE_WITH_TIME, "the order of the sessions", withTime(rooms));
        judge(
                Guard.CLIMATE_WITH_SHOOTER,
                "who shoots",
                withGroups(rooms, session -> session.protocol().shooter()));
        judge(
                Guard.CLIMATE_WITH_DELIVERY,
                "ramp or cue",
                withGroups(rooms, session -> session.protocol().delivery()));
        return found;
    }

    private void judge(Guard guard, String what, double share) {
        double inflation = Math.min(LARGEST, 1 / Math.max(1 / LARGEST, 1 - share));
        if (inflation > BOUND) {
            found.add(new GuardFinding(
                    guard,
                    inflation,
                    BOUND,
                    "Within rooms " + Figures.fixed(100 * share, 0) + " % of the variation of humidity goes with "
                            + what + ": a change with the one cannot be told from a change with the other."));
        }
    }

    /** r² of humidity and the session's place in its room, each from its mean in the room; 0 where there is nothing to tell. */
    private double withTime(Collection<List<GuardedSession>> rooms) {
        double humidity = 0;
        double order = 0;
        double product = 0;
        for (List<GuardedSession> room : rooms) {
            List<GuardedSession> ordered = DriftGuards.ordered(room);
            double mean = mean(ordered);
            double middle = (ordered.size() - 1) / 2.0;
            // two sessions are always in order: nothing to tell
            for (int place = 0; ordered.size() > 2 && place < ordered.size(); place++) {
                double apart = pool.rhPct(ordered.get(place)) - mean;
                humidity += apart * apart;
                order += (place - middle) * (place - middle);
                product += apart * (place - middle);
            }
        }
        return humidity > 0 && order > 0 ? product * product / (humidity * order) : 0;
    }

    /** Share of the variation of humidity within rooms that lies between groups, over rooms that have several groups. */
    private double withGroups(Collection<List<GuardedSession>> rooms, Function<GuardedSession, String> group) {
        double all = 0;
        double within = 0;
        for (List<GuardedSession> room : rooms) {
            List<GuardedSession> stated = room.stream()
                    .filter(session -> !group.apply(session).isEmpty())
                    .toList();
            Map<String, List<GuardedSession>> groups = new LinkedHashMap<>();
            stated.forEach(session -> groups.computeIfAbsent(group.apply(session), name -> new ArrayList<>())
                    .add(session));
            if (groups.size() > 1) {
                all += squares(stated);
                within += groups.values().stream().mapToDouble(this::squares).sum();
            }
        }
        return all > 0 ? 1 - within / all : 0;
    }

    private double mean(List<GuardedSession> sessions) {
        return sessions.stream().mapToDouble(pool::rhPct).average().orElse(0);
    }

    private double squares(List<GuardedSession> sessions) {
        double mean = mean(sessions);
        return sessions.stream()
                .mapToDouble(session -> (pool.rhPct(session) - mean) * (pool.rhPct(session) - mean))
                .sum();
    }
}
