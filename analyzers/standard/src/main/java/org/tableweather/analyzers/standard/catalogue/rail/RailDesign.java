package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.tableweather.analyzers.standard.catalogue.rail.RailPool.Used;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary.Column;
import org.tableweather.analyzers.standard.statistics.nonlinear.NonlinearMixedModel;

/** Which coefficients the conditions of a pool can bear, and which of them vary between rooms and sessions. */
final class RailDesign {

    private static final double SPEED_RANGE_MPS = 0.3;
    private static final double TEMPERATURE_RANGE = 0.2;
    private static final double HUMIDITY_RANGE = 0.2;
    /** Taken where no speed is known; the closed form does not feel it. */
    private static final double SPEED_MPS = 1.5;

    final List<RailTerm> terms = new ArrayList<>();
    private final RailPool pool;
    private final boolean sessionsRepeat;

    RailDesign(RailPool pool) {
        this.pool = pool;
        List<Used> used = pool.used;
        boolean withSpeed = used.stream().allMatch(Used::withSpeed)
                && RailPool.varies(used, each -> response(each).acrossMps(), SPEED_RANGE_MPS);
        boolean withTemperature = pool.sessions.size() > 4 && RailPool.varies(used, Used::t, TEMPERATURE_RANGE);
        for (RailTerm term : RailTerm.values()) {
            boolean borne =
                    switch (term) {
                        case RESTITUTION_SPEED -> withSpeed && pool.withRatio();
                        case RESTITUTION_TEMPERATURE, FRICTION_TEMPERATURE -> withTemperature;
                        default -> true;
                    };
            if (borne) {
                terms.add(term);
            }
        }
        sessionsRepeat = pool.sessions.size() > pool.rooms.size();
    }

    boolean humidityVaries() {
        return RailPool.varies(pool.used, Used::x, HUMIDITY_RANGE);
    }

    /** Whether some room was measured at two humidities. */
    boolean slopesVary() {
        Map<String, Set<Double>> byRoom = new HashMap<>();
        pool.used.forEach(each ->
                byRoom.computeIfAbsent(each.room(), room -> new TreeSet<>()).add(each.x()));
        return byRoom.values().stream()
                .anyMatch(all -> all.stream().mapToDouble(x -> x).max().orElse(0)
                                - all.stream().mapToDouble(x -> x).min().orElse(0)
                        > HUMIDITY_RANGE);
    }

    RailResponse response(Used used) {
        double speed = used.withSpeed() ? used.cell().mean(Column.SPEED_MPS) : SPEED_MPS;
        return new RailResponse(
                used.cell().mean(Column.APPROACH_DEG),
                speed,
                used.cell().mean(Column.ROLL),
                used.noseSine(),
                pool.question.stepped(),
                used.withRatio());
    }

    double[][] rows(Used used) {
        return rows(used.x(), used.t(), response(used).acrossMps());
    }

    /** From coefficients to (e, log μ). */
    double[][] rows(double x, double t, double acrossMps) {
        double[][] rows = new double[2][terms.size()];
        for (int i = 0; i < terms.size(); i++) {
            RailTerm term = terms.get(i);
            rows[term.ofRestitution() ? 0 : 1][i] = switch (term) {
                case RESTITUTION, FRICTION -> 1;
                case RESTITUTION_SPEED -> acrossMps - 1;
                case RESTITUTION_HUMIDITY, FRICTION_HUMIDITY -> x;
                case RESTITUTION_TEMPERATURE, FRICTION_TEMPERATURE -> t;
            };
        }
        return rows;
    }

    int place(RailTerm term) {
        return terms.indexOf(term);
    }

    int[] roomColumns() {
        int level = place(RailTerm.RESTITUTION);
        int grip = place(RailTerm.FRICTION);
        return slopesVary()
                ? new int[] {level, grip, place(RailTerm.RESTITUTION_HUMIDITY), place(RailTerm.FRICTION_HUMIDITY)}
                : new int[] {level, grip};
    }

    int[] sessionColumns() {
        return sessionsRepeat ? new int[] {place(RailTerm.RESTITUTION), place(RailTerm.FRICTION)} : new int[0];
    }

    NonlinearMixedModel model() {
        return new NonlinearMixedModel(
                roomColumns(),
                sessionColumns(),
                terms.stream().mapToDouble(term -> term.typical / 2).toArray());
    }

    double[] start(double restitution, double friction) {
        double[] start = new double[terms.size()];
        start[place(RailTerm.RESTITUTION)] = restitution;
        start[place(RailTerm.FRICTION)] = StrictMath.log(friction);
        return start;
    }
}
