package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.standard.catalogue.path.LandingDraws.Sorted;
import org.tableweather.analyzers.standard.catalogue.path.UnknownDirection.Group;
import org.tableweather.analyzers.standard.numeric.StudentT;

/** The figures of a prediction as estimates: values of the middle, bands of the draws; corrections to first order. */
final class PathFigures {

    private static final double COVERAGE = 0.95;
    private static final double TAIL = (1 - COVERAGE) / 2;

    private final PathResult result;

    PathFigures(PathResult result) {
        this.result = result;
    }

    List<Estimate> estimates() {
        String where = result.model.pattern.hasTarget()
                ? "landing, from the shot's target, positive long"
                : "place of the landing along the "
                        + result.model.pattern.targetRail().schemaName() + " rail";
        List<Estimate> all = new ArrayList<>();
        all.add(drift());
        all.add(drawn(
                "drift.attempt",
                result.drift(),
                result.draws.attempt(),
                "difference between one attempt in each climate: sessions and scatter included"));
        all.add(drawn(
                "landing.from", result.first.landingDia(), result.draws.from(), where + ", in the first climate"));
        all.add(drawn("landing.to", result.second.landingDia(), result.draws.to(), where + ", in the second climate"));
        all.add(correction("aim.change", result.aim, "dia", aimMeaning()));
        all.add(correction("speed.change", result.speed, "m/s", "change of speed that brings the landing back"));
        all.add(correction(
                "spin.change",
                result.spin,
                "1/s",
                "change of side spin, counter-clockwise from above, that brings the landing back"));
        for (int i = 0; i < result.byRail.length; i++) {
            all.add(plain(
                    "drift.rail." + (i + 1),
                    result.byRail[i],
                    "share of the drift from contact " + (i + 1) + ", the "
                            + result.model.pattern.rails().get(i).schemaName() + " rail"));
        }
        all.add(plain("drift.friction", result.byFriction, "drift if only the rails' friction changed"));
        all.add(plain("drift.restitution", result.byRestitution, "drift if only their restitution changed"));
        return all;
    }

    Estimate drift() {
        return drawn(
                "drift",
                result.drift(),
                result.draws.drift(),
                "how far the landing moves from the first climate to the second, positive long; rail, room and cloth"
                        + " unknown as they are");
    }

    private String aimMeaning() {
        boolean across = Pattern.isShort(result.model.pattern.rails().get(0));
        return "move of the aim along the first rail that brings the landing back, positive "
                + (across ? "away from the near rail" : "away from the head rail");
    }

    private Estimate drawn(String name, double value, Sorted draws, String meaning) {
        return new Estimate(
                name,
                value,
                draws.deviation(),
                result.model.df(),
                draws.quantile(TAIL),
                draws.quantile(1 - TAIL),
                "dia",
                meaning);
    }

    private Estimate correction(String name, Optional<PathSolutions.Change> change, String unit, String meaning) {
        if (change.isEmpty() || !(Math.abs(change.get().diaPer()) > 0)) {
            return new Estimate(name, null, null, null, null, null, unit, meaning);
        }
        double value = change.get().value();
        double error = result.driftSd() / Math.abs(change.get().diaPer());
        double reach = error * StudentT.halfWidth(COVERAGE, result.model.df());
        return new Estimate(name, value, error, result.model.df(), value - reach, value + reach, unit, meaning);
    }

    private static Estimate plain(String name, double value, String meaning) {
        return new Estimate(name, Double.isNaN(value) ? null : value, null, null, null, null, "dia", meaning);
    }

    List<VarianceComponent> variance() {
        List<VarianceComponent> all = new ArrayList<>();
        for (Map.Entry<Group, Double> entry : result.driftSpread.entrySet()) {
            all.add(new VarianceComponent(
                    "drift." + entry.getKey().key(),
                    OptionalDouble.of(entry.getValue()),
                    OptionalDouble.empty(),
                    Optional.empty()));
        }
        return all;
    }
}
