package org.tableweather.analyzers.standard.plan;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;

/**
 * The order in which one room runs a plan, drawn by lot from a seed: same seed, same order.
 *
 * <p>On every visit the climates come in an order of their own, so that neither the season nor the shooter's form goes with the humidity.
 * In a session the attempts go in rounds; each round has every shot once, in an order of its own, so that warming up and tiring fall on
 * all shots alike.
 *
 * @source Kirk2013
 */
public final class RunOrder {
    private final RandomGenerator lot;

    private RunOrder(RandomGenerator lot) {
        this.lot = lot;
    }

    /**
     * Draws it.
     *
     * @param plan what is to be done
     * @param room which of the plan's rooms, from 1; each has its own order
     * @param seed any number; stated beside the result
     * @throws IllegalArgumentException for a room that the plan does not have
     */
    public static List<PlannedSession> of(StudyPlan plan, int room, long seed) {
        if (room < 1 || room > plan.rooms()) {
            throw new IllegalArgumentException(
                    "room " + room + " is outside 1.." + plan.rooms() + ": the plan has so many rooms");
        }
        int[] seeds = {(int) seed, (int) (seed >>> 32), room};
        return new RunOrder(new Well19937c(seeds)).drawn(plan);
    }

    private List<PlannedSession> drawn(StudyPlan plan) {
        List<PlannedSession> sessions = new ArrayList<>();
        for (int visit = 1; visit <= plan.visits(); visit++) {
            for (double rhPct : shuffled(plan.rhPct())) {
                sessions.add(new PlannedSession(visit, sessions.size() + 1, rhPct, attempts(plan)));
            }
        }
        return List.copyOf(sessions);
    }

    private List<String> attempts(StudyPlan plan) {
        List<String> attempts = new ArrayList<>();
        for (int round = 0; round < plan.attempts(); round++) {
            attempts.addAll(shuffled(plan.shots()));
        }
        return attempts;
    }

    private <T> List<T> shuffled(List<T> items) {
        List<T> order = new ArrayList<>(items);
        for (int i = order.size() - 1; i > 0; i--) {
            int other = lot.nextInt(i + 1);
            order.set(i, order.set(other, order.get(i)));
        }
        return order;
    }
}
