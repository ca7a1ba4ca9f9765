package org.tableweather.analyzers.standard.statistics;

/**
 * The parts of the second derivatives that are sums over rooms, as {@link NestedCurvature} writes them, and the first
 * derivatives: {@code N} is symmetric, so that each is a form of few numbers,
 *
 * <pre>
 * E, G   Σ tr((2 A − P[r,r]) E P[r,r] G),   A = R'N R
 * w, E   Σ tr((R'N H[:,r] + H[r,:]N R − H[r,r]) E)
 * </pre>
 */
final class RoomCurvature {

    /** dD/dΩ, q × q. */
    final double[] slope;
    /** q × q, symmetric. */
    final double[] byBoth;
    /** By w twice. */
    double byWs;
    /** dD/dw. */
    final double slopeByW;

    /** Σ X[a,b] P[r,r][c,d], X = 2 A − P[r,r]; at ((a q + b) q + c) q + d. */
    private final double[] byOmegas;

    private final NestedSlopes slopes;
    private final NestedReduction reduction;
    private final boolean sessionEffect;
    private final int width;
    private final int depth;
    /** N, m × m. */
    private final double[] weights;
    /** N R of a room, m × q. */
    private final double[] weighted;

    /** Σ f³ a a' of a room, then B'·B of it; lower triangle by rows. */
    private final double[] cubes;

    RoomCurvature(NestedCriterion criterion) {
        slopes = criterion.slopes;
        reduction = criterion.reduction;
        sessionEffect = criterion.parameters.first() > 0;
        width = criterion.data.width;
        depth = reduction.random.length;
        slope = criterion.roomSlopes;
        slopeByW = criterion.sessionSlope;
        weights = criterion.weights;
        byOmegas = new double[depth * depth * depth * depth];
        byBoth = new double[depth * depth];
        weighted = new double[width * depth];
        cubes = new double[Moments.packedLength(width)];
        byWs = sessionEffect ? -reduction.groups.sum(2) : 0;
        for (int room = 0; room < criterion.data.rooms; room++) {
            weigh(room);
            addOmegas(room);
            if (sessionEffect) {
                addSessions(room);
            }
        }
    }

    /** Along two moves of Ω, each q × q and symmetric. */
    double byOmegas(double[] first, double[] second) {
        double sum = 0;
        for (int a = 0, at = 0; a < depth; a++) {
            for (int b = 0; b < depth; b++) {
                for (int c = 0; c < depth; c++) {
                    for (int d = 0; d < depth; d++) {
                        sum += byOmegas[at++] * first[b * depth + c] * second[d * depth + a];
                    }
                }
            }
        }
        return sum;
    }

    /** Writes N R. */
    private void weigh(int room) {
        for (int i = 0; i < width; i++) {
            for (int u = 0; u < depth; u++) {
                double sum = 0;
                for (int k = 0, at = slopes.row(room, u); k < width; k++) {
                    sum += weights[i * width + k] * reduction.rests[at + k];
                }
                weighted[i * depth + u] = sum;
            }
        }
    }

    private void addOmegas(int room) {
        for (int a = 0, to = 0; a < depth; a++) {
            for (int b = 0; b < depth; b++) {
                int row = slopes.row(room, a);
                double x = -reduction.rests[row + reduction.random[b]];
                for (int k = 0; k < width; k++) {
                    x += 2 * reduction.rests[row + k] * weighted[k * depth + b];
                }
                for (int c = 0; c < depth; c++) {
                    for (int d = 0; d < depth; d++) {
                        byOmegas[to++] += x * reduction.rests[slopes.row(room, c) + reduction.random[d]];
                    }
                }
            }
        }
    }

    private void addSessions(int room) {
        addBoth(room);
        reduction.groups.outer(room, 3, cubes);
        int base = room * depth * width;
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < depth; v++) {
                double shrink = reduction.shrinks[(room * depth + u) * depth + v];
                byWs += 2 * shrink * cubes[NestedSlopes.at(reduction.random[u], reduction.random[v])];
                byWs -= shrunken(room, base, u, v) * shrunken(room, base, v, u);
                byWs -= 2 * shrink * form(base + u * width, base + v * width);
            }
        }
        slopes.conjugate(room, cubes);
        byWs += 2 * product();
    }

    private void addBoth(int room) {
        int place = room * cubes.length;
        for (int u = 0; u < depth; u++) {
            for (int v = 0; v < depth; v++) {
                double sum = -slopes.conjugates[place + NestedSlopes.at(reduction.random[u], reduction.random[v])];
                for (int k = 0; k < width; k++) {
                    sum += weighted[k * depth + u] * slopes.conjugates[place + NestedSlopes.at(k, reduction.random[v])]
                            + weighted[k * depth + v]
                                    * slopes.conjugates[place + NestedSlopes.at(k, reduction.random[u])];
                }
                byBoth[u * depth + v] += sum;
            }
        }
    }

    /** (K F[r,r])[u,v]. */
    private double shrunken(int room, int base, int u, int v) {
        double sum = 0;
        for (int k = 0; k < depth; k++) {
            sum += reduction.shrinks[(room * depth + u) * depth + k]
                    * slopes.rows[base + k * width + reduction.random[v]];
        }
        return sum;
    }

    /** {@code x'N z} of two rows of F B. */
    private double form(int first, int second) {
        double sum = 0;
        for (int i = 0; i < width; i++) {
            double along = 0;
            for (int j = 0; j < width; j++) {
                along += weights[i * width + j] * slopes.crossed[second + j];
            }
            sum += slopes.crossed[first + i] * along;
        }
        return sum;
    }

    /** tr(N A) of the cubes' triangle. */
    private double product() {
        double sum = 0;
        for (int i = 0, at = 0; i < width; i++) {
            for (int j = 0; j < i; j++, at++) {
                sum += 2 * weights[i * width + j] * cubes[at];
            }
            sum += weights[i * width + i] * cubes[at++];
        }
        return sum;
    }
}
