package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.tableweather.analyzers.standard.catalogue.rooms.PooledRoom.PooledSession;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/**
 * What more sessions in a room would tell of its slope, or of its level where slopes do not differ: the conditional variance K of
 * the room's effects after a session at h, {@code K − K z z'K / (v + s²/n + z'Kz)}, {@code z = (1, h)}.
 *
 * @source Henderson1975
 */
final class NextSessions {

    /** Number of sessions that are planned ahead. */
    static final int AHEAD = 3;

    private static final double STEP_PCT = 5;
    private static final double ROOM_ZERO = 1e-12;

    /** Trials in each: the median of the pool. */
    final long trials;
    /** Whether the slope is the aim, or the level. */
    final boolean forSlope;
    /** Humidities within reach of the pool, %RH. */
    final List<Double> reachable = new ArrayList<>();
    /** Standard error of the aim after one session at each of them. */
    final List<Double> afterOne = new ArrayList<>();
    /** Best humidities of the next sessions, one after the other, %RH. */
    final List<Double> best = new ArrayList<>();
    /** Standard error now. */
    final double now;
    /** Standard error after all of them. */
    final double after;

    private final NestedFit fit;
    private final int aim;

    /** For a room of a fit; {@link #best} is empty where rooms do not differ. */
    NextSessions(RoomPool pool, NestedFit fit, int room) {
        this.fit = fit;
        List<PooledSession> sessions =
                pool.rooms().stream().flatMap(each -> each.sessions().stream()).toList();
        List<Long> counts =
                sessions.stream().map(each -> each.moments().n()).sorted().toList();
        trials = counts.get(counts.size() / 2);
        List<Double> humidities =
                sessions.stream().map(each -> 50 + 10 * each.moments().mean(0)).toList();
        double first = STEP_PCT * Math.ceil(Collections.min(humidities) / STEP_PCT - 1e-9);
        for (double pct = first; pct <= Collections.max(humidities) + 1e-9; pct += STEP_PCT) {
            reachable.add(pct);
        }
        aim = aim();
        forSlope = aim >= 0 && fit.random().get(aim) == 1;
        double[][] variance = fit.rooms().get(room).variance();
        now = aim < 0 ? 0 : Math.sqrt(variance[aim][aim]);
        double last = now;
        for (int session = 0; aim >= 0 && !reachable.isEmpty() && session < AHEAD; session++) {
            variance = afterBest(variance);
            last = Math.sqrt(variance[aim][aim]);
        }
        after = last;
    }

    /** Position of the slope among the room effects, of the level where slopes do not differ; −1 where nothing does. */
    private int aim() {
        double[][] between = fit.roomCovariance();
        int slope = fit.random().indexOf(1);
        if (slope >= 0 && between[slope][slope] > ROOM_ZERO) {
            return slope;
        }
        int level = fit.random().indexOf(0);
        return level >= 0 && between[level][level] > ROOM_ZERO ? level : -1;
    }

    private double[][] afterBest(double[][] variance) {
        double[][] least = variance;
        double at = reachable.get(0);
        for (double pct : reachable) {
            double[][] then = after(variance, (pct - 50) / 10);
            if (best.isEmpty()) {
                afterOne.add(Math.sqrt(then[aim][aim]));
            }
            if (then[aim][aim] < least[aim][aim]) {
                least = then;
                at = pct;
            }
        }
        best.add(at);
        return least;
    }

    private double[][] after(double[][] variance, double h) {
        int depth = variance.length;
        double[] reach = new double[depth];
        double counted = fit.cautions().contains(Caution.MEANS_ONLY) ? 1 : trials;
        double form = fit.sessionVariance().orElse(0) + fit.sigma2() / counted;
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < depth; v++) {
                reach[u] += variance[u][v] * column(v, h);
            }
            form += reach[u] * column(u, h);
        }
        double[][] after = new double[depth][depth];
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < depth; v++) {
                after[u][v] = variance[u][v] - reach[u] * reach[v] / form;
            }
        }
        return after;
    }

    private double column(int effect, double h) {
        return fit.random().get(effect) == 0 ? 1 : h;
    }
}
