package org.tableweather.analyzers.standard.catalogue.path;

import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.path.UnknownDirection.Group;

/** All figures of a prediction. */
final class PathResult {

    final PathCase asked;
    final PathModel model;
    final ModelClimate from;
    final ModelClimate to;
    final Trace first;
    final Trace second;
    final Optional<Double> seenScatter;
    final double attemptSd;
    final LandingSpread spread;
    final Map<Group, Double> driftSpread;
    final LandingDraws.Two draws;
    final double[] byRail;
    final double byFriction;
    final double byRestitution;
    final Optional<PathSolutions.Change> aim;
    final Optional<PathSolutions.Change> speed;
    final Optional<PathSolutions.Change> spin;

    PathResult(PathCase asked, PathModel model) {
        this.asked = asked;
        this.model = model;
        from = asked.climate(asked.question.from());
        to = asked.climate(asked.question.to());
        first = model.trace(from);
        second = model.trace(to);
        spread = new LandingSpread(model);
        seenScatter = asked.question.typed() ? Optional.empty() : asked.pool.scatterDia(model.pattern.name());
        attemptSd = seenScatter.orElseGet(() -> spread.scattered(from));
        driftSpread = spread.drift(from, to, attemptSd);
        draws = new LandingDraws(model, asked.question.seed())
                .two(from, to, spread.session(from), spread.session(to), attemptSd, asked.question.draws());
        RailShares shares = new RailShares(model, from, to);
        byRail = shares.byRail();
        byFriction = shares.byFriction();
        byRestitution = shares.byRestitution();
        PathSolutions solutions = new PathSolutions(model, from, to);
        aim = solutions.aim();
        speed = solutions.speed();
        spin = solutions.spin();
    }

    /** Diamonds, positive long. */
    double drift() {
        return second.landingDia() - first.landingDia();
    }

    /** Standard error of the drift to first order. */
    double driftSd() {
        return LandingSpread.expected(driftSpread);
    }

    /** Draws that left the way, as a part of all. */
    double lostShare() {
        return draws.drift().lost() / (double) asked.question.draws();
    }
}
