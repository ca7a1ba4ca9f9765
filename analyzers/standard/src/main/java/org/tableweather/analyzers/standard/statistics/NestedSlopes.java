package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;

/**
 * First derivatives of what {@link NestedReduction} forms, by the session ratio w and by the room ratios Ω:
 *
 * <pre>
 * F = Σ f² a a',   B = I − e[r] K S[r,:],   H = B'FB,   R = P[:,r]
 * dP/dw = −H,            d log|·|/dw = Σ f − tr(K F[r,r])
 * dP/dΩ along E = −R E R',   d log|·| along E = tr(P[r,r] E)
 * </pre>
 *
 * <p>The rooms' parts are added up over all rooms, so that neither sessions nor rooms are gone through again for a gradient.
 * Matrices are whole, by rows.
 *
 * @source Laird1982
 * @source Lindstrom1988
 */
final class NestedSlopes {

    final NestedReduction reduction;
    /** Σ H. */
    final double[] byW;
    /** For each u ≥ v, by rows of the lower triangle, the symmetric part of Σ R[:,u] R[:,v]'. */
    final double[][] byOmega;
    /** d log|·|/dw. */
    double logByW;

    /** Per room H, lower triangle by rows. */
    final double[] conjugates;
    /** Per room K S[r,:], the rows r of F, and those of F B; q × m. */
    final double[] leans;

    final double[] rows;
    final double[] crossed;

    private final boolean sessionEffect;
    private final int width;
    private final int depth;
    private final int packed;
    private final double[] f;
    private final double[] bent;
    private final double[] sum;

    NestedSlopes(NestedReduction reduction, boolean sessionEffect) {
        this.reduction = reduction;
        this.sessionEffect = sessionEffect;
        width = reduction.data.width;
        depth = reduction.random.length;
        packed = Moments.packedLength(width);
        int rooms = sessionEffect ? reduction.data.rooms : 0;
        byW = new double[width * width];
        byOmega = new double[depth * (depth + 1) / 2][width * width];
        conjugates = new double[rooms * packed];
        leans = new double[rooms * depth * width];
        rows = new double[rooms * depth * width];
        crossed = new double[rooms * depth * width];
        f = new double[packed];
        bent = new double[depth * width];
        sum = new double[packed];
    }

    /** Fills the sums at the point that was reduced last. */
    void gather() {
        for (int u = 0, at = 0; u < depth; u++) {
            for (int v = 0; v <= u; v++) {
                Arrays.fill(sum, 0);
                for (int room = 0; room < reduction.data.rooms; room++) {
                    addRests(row(room, u), row(room, v));
                }
                unpack(sum, byOmega[at++]);
            }
        }
        logByW = sessionEffect ? reduction.groups.sum(1) : 0;
        Arrays.fill(sum, 0);
        for (int room = 0; sessionEffect && room < reduction.data.rooms; room++) {
            gatherSessions(room);
        }
        unpack(sum, byW);
    }

    /** Where the row of a room's P that belongs to a random column begins. */
    int row(int room, int u) {
        return (room * width + reduction.random[u]) * width;
    }

    private void addRests(int first, int second) {
        double[] rests = reduction.rests;
        double[] to = sum;
        if (first == second) {
            for (int i = 0, at = 0; i < width; i++) {
                double a = rests[first + i];
                for (int j = 0; j <= i; j++, at++) {
                    to[at] += a * rests[first + j];
                }
            }
            return;
        }
        for (int i = 0, at = 0; i < width; i++) {
            double a = rests[first + i] / 2;
            double b = rests[second + i] / 2;
            for (int j = 0; j <= i; j++, at++) {
                to[at] += a * rests[second + j] + b * rests[first + j];
            }
        }
    }

    private void gatherSessions(int room) {
        reduction.groups.outer(room, 2, f);
        lean(room);
        int base = room * depth * width;
        for (int u = 0; u < depth; u++) {
            for (int i = 0; i < width; i++) {
                rows[base + u * width + i] = f[at(reduction.random[u], i)];
            }
        }
        for (int u = 0; u < depth; u++) {
            int row = base + u * width;
            for (int v = 0; v < depth; v++) {
                logByW -= reduction.shrinks[(room * depth + u) * depth + v] * rows[row + reduction.random[v]];
            }
        }
        cross(base);
        conjugateSessions(room * packed, base);
    }

    /** Writes K S[r,:]. */
    private void lean(int room) {
        for (int u = 0; u < depth; u++) {
            int to = (room * depth + u) * width;
            for (int i = 0; i < width; i++) {
                leans[to + i] = 0;
            }
            for (int v = 0; v < depth; v++) {
                double times = reduction.shrinks[(room * depth + u) * depth + v];
                int from = (room * width + reduction.random[v]) * width;
                for (int i = 0; i < width; i++) {
                    leans[to + i] += times * reduction.sums[from + i];
                }
            }
        }
    }

    /** Writes the rows r of F B, {@code F[r,:] − F[r,r] K S[r,:]}. */
    private void cross(int base) {
        for (int u = 0; u < depth; u++) {
            int to = base + u * width;
            System.arraycopy(rows, to, crossed, to, width);
            for (int v = 0; v < depth; v++) {
                double times = rows[to + reduction.random[v]];
                int from = base + v * width;
                for (int i = 0; i < width; i++) {
                    crossed[to + i] -= times * leans[from + i];
                }
            }
        }
    }

    /**
     * Writes and adds the lower triangle of {@code B'AB = A − Y'G − G'Y}, {@code Y = K S[r,:]}, {@code G = A[r,:] − ½ A[r,r] Y}; here of F,
     * whose G is the mean of its rows r and those of F B.
     */
    private void conjugateSessions(int place, int base) {
        for (int i = 0; i < bent.length; i++) {
            bent[i] = (rows[base + i] + crossed[base + i]) / 2;
        }
        System.arraycopy(f, 0, conjugates, place, packed);
        subtractBent(conjugates, place, base);
        for (int i = 0; i < packed; i++) {
            sum[i] += conjugates[place + i];
        }
    }

    private void subtractBent(double[] from, int place, int base) {
        for (int u = 0; u < depth; u++) {
            int row = u * width;
            for (int i = 0, at = place; i < width; i++) {
                double y = leans[base + row + i];
                double g = bent[row + i];
                for (int j = 0; j <= i; j++, at++) {
                    from[at] -= y * bent[row + j] + g * leans[base + row + j];
                }
            }
        }
    }

    /** Replaces the lower triangle of a symmetric A by that of B'AB in a room. */
    void conjugate(int room, double[] a) {
        int base = room * depth * width;
        for (int u = 0; u < depth; u++) {
            for (int i = 0; i < width; i++) {
                double rest = a[at(reduction.random[u], i)];
                for (int v = 0; v < depth; v++) {
                    rest -= a[at(reduction.random[u], reduction.random[v])] * leans[base + v * width + i] / 2;
                }
                bent[u * width + i] = rest;
            }
        }
        subtractBent(a, 0, base);
    }

    /** Place in a lower triangle by rows. */
    static int at(int i, int j) {
        return i >= j ? Moments.packed(i, j) : Moments.packed(j, i);
    }

    private void unpack(double[] lower, double[] whole) {
        for (int i = 0, at = 0; i < width; i++) {
            for (int j = 0; j <= i; j++, at++) {
                whole[i * width + j] = lower[at];
                whole[j * width + i] = lower[at];
            }
        }
    }
}
