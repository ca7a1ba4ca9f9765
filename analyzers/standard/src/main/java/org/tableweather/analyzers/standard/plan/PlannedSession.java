package org.tableweather.analyzers.standard.plan;

import java.util.List;

/**
 * One session of a run order.
 *
 * @param visit from 1
 * @param number of the session in the room, from 1, in the order they are held
 * @param rhPct climate to hold, %
 * @param shots the attempts in the order they are shot, as ids of shots
 */
public record PlannedSession(int visit, int number, double rhPct, List<String> shots) {

    public PlannedSession {
        shots = List.copyOf(shots);
    }
}
