package org.tableweather.analyzers.standard.statistics;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.standard.statistics.NestedFit.RoomEffect;
import org.tableweather.analyzers.standard.statistics.NestedFit.SessionEffect;

/**
 * Reads shrunken effects off an evaluated criterion: {@code u = Ω P[r,:] c}, {@code Var(u|y,b) = s² K};
 * {@code w_s = w h c}, {@code Var(w_s|y,b) = s² (w f + (w f)² n a[r]' K a[r] n)}.
 *
 * @source Henderson1975
 */
final class RoomReader {

    private final NestedCriterion criterion;
    private final NestedReduction reduction;
    private final double[][] omega;
    private final boolean sessionEffect;
    private final double ratio;
    private final int depth;
    private final int width;

    RoomReader(NestedCriterion criterion, double[][] omega, boolean sessionEffect, double ratio) {
        this.criterion = criterion;
        this.omega = omega;
        this.sessionEffect = sessionEffect;
        this.ratio = ratio;
        reduction = criterion.reduction;
        depth = omega.length;
        width = criterion.data.width;
    }

    RoomEffect read(String key, int room) {
        double[] loss = new double[depth];
        for (int v = 0; v < depth; v++) {
            loss[v] = criterion.top.leave(reduction.rests, (room * width + reduction.random[v]) * width);
        }
        double[] effects = new double[depth];
        double[][] variance = new double[depth][depth];
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < depth; v++) {
                effects[u] += omega[u][v] * loss[v];
                variance[u][v] = criterion.sigma2 * reduction.shrinks[(room * depth + u) * depth + v];
            }
        }
        return new RoomEffect(key, effects, variance, sessions(room));
    }

    /** P[r,x] of a room. */
    double[][] crossRest(int room) {
        double[][] cross = new double[depth][width - 1];
        for (int v = 0; v < depth; v++) {
            System.arraycopy(reduction.rests, (room * width + reduction.random[v]) * width, cross[v], 0, width - 1);
        }
        return cross;
    }

    private List<SessionEffect> sessions(int room) {
        List<SessionEffect> effects = new ArrayList<>();
        if (sessionEffect) {
            for (int s = criterion.data.firstSession[room]; s < criterion.data.firstSession[room + 1]; s++) {
                effects.add(new SessionEffect(ratio * criterion.sessionLoss(s, room), sessionVariance(s, room)));
            }
        }
        return effects;
    }

    private double sessionVariance(int session, int room) {
        double form = 0;
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < depth; v++) {
                form += criterion.data.mean[session * width + reduction.random[u]]
                        * reduction.shrinks[(room * depth + u) * depth + v]
                        * criterion.data.mean[session * width + reduction.random[v]];
            }
        }
        double shrink = ratio * reduction.groups.weight(session);
        double alone = shrink / criterion.data.count[session];
        return criterion.sigma2 * (alone + shrink * shrink * form);
    }
}
