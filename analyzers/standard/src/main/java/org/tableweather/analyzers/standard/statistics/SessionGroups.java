package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * The sessions of a room that have equally many trials, together: a session effect weighs them alike, so that their Σ a a'
 * is formed once and not at every point of the search.
 *
 * <pre>
 * f = n/(1 + w n),   S = M + Σ f a a',   −dS/dw = Σ f² a a',   d²S/dw² = 2 Σ f³ a a'
 * </pre>
 */
final class SessionGroups {

    private static final double LARGEST_PRODUCT = 1e150;

    /** First group of each room, and the number of groups at the end. */
    private final int[] first;
    /** For each group, which count its sessions have. */
    private final int[] countOf;
    /** For each session the same. */
    private final int[] countOfSession;
    /** For each group Σ a a', lower triangle by rows. */
    private final double[] outer;

    private final double[] counts;
    private final int[] sessions;
    private final double[] weight;
    private final int packed;

    SessionGroups(NestedData data) {
        packed = Moments.packedLength(data.width);
        countOfSession = new int[data.sessions];
        counts = distinct(data.count, countOfSession);
        sessions = new int[counts.length];
        weight = counts.clone();
        first = new int[data.rooms + 1];
        int[] groupOf = new int[data.sessions];
        countOf = Arrays.copyOf(new int[data.sessions], group(data, groupOf));
        outer = new double[countOf.length * packed];
        for (int session = 0; session < data.sessions; session++) {
            countOf[groupOf[session]] = countOfSession[session];
            sessions[countOfSession[session]]++;
            addOuter(groupOf[session] * packed, data.mean, session * data.width, data.width);
        }
    }

    private static double[] distinct(double[] count, int[] places) {
        Map<Double, Integer> known = new HashMap<>();
        double[] distinct = new double[count.length];
        for (int session = 0; session < count.length; session++) {
            int place = known.computeIfAbsent(count[session], value -> known.size());
            distinct[place] = count[session];
            places[session] = place;
        }
        return Arrays.copyOf(distinct, known.size());
    }

    /** Writes each session's group; returns their number. */
    private int group(NestedData data, int[] groupOf) {
        int[] last = new int[counts.length];
        Arrays.fill(last, -1);
        int groups = 0;
        for (int room = 0; room < data.rooms; room++) {
            first[room] = groups;
            for (int session = data.firstSession[room]; session < data.firstSession[room + 1]; session++) {
                int count = countOfSession[session];
                if (last[count] < first[room]) {
                    last[count] = groups++;
                }
                groupOf[session] = last[count];
            }
        }
        first[data.rooms] = groups;
        return groups;
    }

    private void addOuter(int at, double[] mean, int row, int columns) {
        for (int i = 0, to = at; i < columns; i++) {
            for (int j = 0; j <= i; j++) {
                outer[to++] += mean[row + i] * mean[row + j];
            }
        }
    }

    /**
     * Sets f of all sessions. The logarithm of a product of many factors 1 + w n is taken at once, before it can overflow.
     *
     * @param w ratio of the session variance, at least 0
     * @return Σ log(1 + w n)
     */
    double weigh(double w) {
        double logarithms = 0;
        double product = 1;
        for (int count = 0; count < counts.length; count++) {
            double size = 1 + w * counts[count];
            weight[count] = counts[count] / size;
            if (sessions[count] > 1) {
                logarithms += sessions[count] * StrictMath.log(size);
            } else if (product * size > LARGEST_PRODUCT) {
                logarithms += StrictMath.log(product);
                product = size;
            } else {
                product *= size;
            }
        }
        return logarithms + StrictMath.log(product);
    }

    /** f of a session. */
    double weight(int session) {
        return weight[countOfSession[session]];
    }

    /** Σ f of all sessions to a power of 1 or 2. */
    double sum(int power) {
        double sum = 0;
        for (int count = 0; count < weight.length; count++) {
            sum += sessions[count] * (power == 1 ? weight[count] : weight[count] * weight[count]);
        }
        return sum;
    }

    /** Writes Σ f a a' of a room's sessions, f to a power of 1, 2 or 3; lower triangle by rows. */
    void outer(int room, int power, double[] to) {
        Arrays.fill(to, 0);
        for (int group = first[room]; group < first[room + 1]; group++) {
            double f = weight[countOf[group]];
            double share = power == 1 ? f : power == 2 ? f * f : f * f * f;
            int from = group * packed;
            for (int i = 0; i < packed; i++) {
                to[i] += share * outer[from + i];
            }
        }
    }
}
