package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Looks over a pool for what bends a result while every single trial is right: attempts left out, drift, order, climate mixed
 * up with something else. A finding is a warning with its remedy; nothing is left out of the analysis because of it.
 *
 * <p>Any analyzer can use it: keep a {@link SessionProtocol} in the summary, hand over the sessions that were used.
 */
public final class BiasGuards {

    private BiasGuards() {}

    /**
     * What is found.
     *
     * @param sessions those that were used
     * @param shot id of the shot
     * @param outcome name of the outcome in the protocols
     * @return in the order of {@link Guard}
     */
    public static List<GuardFinding> of(List<GuardedSession> sessions, String shot, String outcome) {
        GuardedPool pool = new GuardedPool(sessions, shot, outcome);
        List<GuardFinding> found = new ArrayList<>();
        found.addAll(new AttemptGuards(pool).findings());
        found.addAll(new DriftGuards(pool).findings());
        found.addAll(new ClimateGuards(pool).findings());
        return List.copyOf(found);
    }

    /** References with the sources of the guards that struck at their end. */
    public static List<String> withSources(List<String> references, List<GuardFinding> found) {
        Set<String> all = new LinkedHashSet<>(references);
        found.forEach(finding -> all.add(finding.guard().source()));
        return List.copyOf(all);
    }
}
