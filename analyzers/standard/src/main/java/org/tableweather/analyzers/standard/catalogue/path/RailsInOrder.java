package org.tableweather.analyzers.standard.catalogue.path;

import java.util.List;
import org.tableweather.analyzers.standard.physics.RailImpact;
import org.tableweather.analyzers.standard.physics.RailMotion;

/** Rails that differ from contact to contact, for one path: the first impact is that of the first contact, the last stays. */
final class RailsInOrder implements RailImpact {

    private final List<RailImpact> impacts;
    private int contact;

    RailsInOrder(List<RailImpact> impacts) {
        this.impacts = List.copyOf(impacts);
    }

    @Override
    public RailMotion after(RailMotion before) {
        return impacts.get(Math.min(contact++, impacts.size() - 1)).after(before);
    }

    /** An impact whose ball leaves turned by an angle, and faster by a factor. */
    static RailImpact scattered(RailImpact impact, double turnDeg, double factor) {
        double cosine = factor * StrictMath.cos(Math.toRadians(turnDeg));
        double sine = factor * StrictMath.sin(Math.toRadians(turnDeg));
        return before -> {
            RailMotion off = impact.after(before);
            return new RailMotion(
                    cosine * off.alongMps() - sine * off.intoMps(),
                    sine * off.alongMps() + cosine * off.intoMps(),
                    off.upMps(),
                    off.spinAlongMps(),
                    off.spinIntoMps(),
                    off.spinUpMps());
        };
    }
}
