package org.tableweather.analyzers.standard.catalogue.settling;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.PoolWords;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.Guard;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.statistics.decay.DecayFit;

/** What a reader must know before trusting a time constant. */
final class SettlingWarnings {

    /** Drift within a session is what is measured here; these say whether attempts were left out. */
    private static final Set<Guard> APPLICABLE =
            EnumSet.of(Guard.LEFT_OUT, Guard.MISSING_NUMBERS, Guard.MADE_TOO_OFTEN);

    private static final double LATE = 0.5;

    private SettlingWarnings() {}

    static List<String> ofPool(SettlingPool pool) {
        List<String> warnings = new ArrayList<>(
                new PoolWords("trial").invented(pool.invented, pool.sessions).list());
        if (pool.timed > 0 && pool.timed < pool.trials) {
            warnings.add(Figures.counted(pool.trials - pool.timed, "trial")
                    + " left out: no started_at, or no settledFrom of the session before it.");
        }
        if (pool.shortSteps > 0 && !pool.steps.isEmpty()) {
            warnings.add(Figures.counted(pool.shortSteps, "step")
                    + " of the climate left out: followed at fewer than 3 times.");
        }
        return warnings;
    }

    static List<GuardFinding> guards(SettlingPool pool) {
        return BiasGuards.of(pool.guarded, pool.shot, pool.outcome.parameter).stream()
                .filter(finding -> APPLICABLE.contains(finding.guard()))
                .toList();
    }

    static List<String> ofFit(SettlingPool pool, DecayFit fit) {
        List<String> warnings = new ArrayList<>();
        if (pool.steps.size() == 1) {
            warnings.add(
                    "One step of the climate: whether other tables, or steps the other way, take as long is unknown.");
        }
        double first = pool.steps.stream()
                .mapToDouble(step -> step.points().get(0).hours())
                .min()
                .orElse(0);
        if (first > LATE * fit.timeConstantHours()) {
            warnings.add("The first attempt came " + Figures.fixed(first, 1)
                    + " h after the step, late beside the time constant: what happened before is inferred.");
        }
        return warnings;
    }
}
