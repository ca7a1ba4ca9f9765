package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.standard.physics.RailImpact;
import org.tableweather.analyzers.standard.physics.RailProperties;

/**
 * Which rail contributes what to a drift: the landing when rails change to the second climate one after the other, from the first on and
 * from the last on, averaged; so the shares add up to the drift. Apart from that, the drift when only the friction of all rails
 * changes, and when only their restitution does.
 */
final class RailShares {

    private final PathModel model;
    private final RailProperties first;
    private final RailProperties second;

    RailShares(PathModel model, ModelClimate from, ModelClimate to) {
        this.model = model;
        first = model.rail(from);
        second = model.rail(to);
    }

    /** Diamonds by rail, in order; NaN where the ball would leave its way. */
    double[] byRail() {
        int count = model.pattern.rails().size();
        double[] shares = new double[count];
        for (int i = 0; i < count; i++) {
            double forward = landing(0, i + 1) - landing(0, i);
            double backward = landing(i, count) - landing(i + 1, count);
            shares[i] = (forward + backward) / 2;
        }
        return shares;
    }

    /** The landing with the rails of these contacts changed. */
    private double landing(int begin, int end) {
        RailImpact before = model.rail.impact(first);
        RailImpact after = model.rail.impact(second);
        List<RailImpact> rails = new ArrayList<>();
        for (int i = 0; i < model.pattern.rails().size(); i++) {
            rails.add(i >= begin && i < end ? after : before);
        }
        return model.trace(rails).landingDia();
    }

    /** Diamonds when only friction changes. */
    double byFriction() {
        return with(first, second) - landing(0, 0);
    }

    /** Diamonds when only restitution changes. */
    double byRestitution() {
        return with(second, first) - landing(0, 0);
    }

    private double with(RailProperties restitution, RailProperties friction) {
        RailProperties mixed = new RailProperties(
                restitution.restitution(), friction.friction(), model.noseSine, friction.bedFriction());
        return model.trace(List.of(model.rail.impact(mixed))).landingDia();
    }
}
