package org.tableweather.analyzers.standard.catalogue.path;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.standard.catalogue.path.UnknownDirection.Group;
import org.tableweather.analyzers.standard.physics.RailImpact;

/**
 * Standard deviations to first order, by what causes them: half the difference between one standard deviation up and down along every
 * unknown direction, squared and summed.
 */
final class LandingSpread {

    private static final double REACH = 1;

    private final PathModel model;

    LandingSpread(PathModel model) {
        this.model = model;
    }

    /** Of where it lands in one climate. */
    Map<Group, Double> landing(ModelClimate at, double attemptSd) {
        Map<Group, Double> squares = new EnumMap<>(Group.class);
        for (UnknownDirection direction : model.shared()) {
            double change = change(at, direction);
            squares.merge(direction.group(), change * change, Double::sum);
        }
        double session = sessionSquares(at);
        squares.put(Group.SESSION, session);
        squares.put(Group.ATTEMPT, attemptSd * attemptSd);
        squares.replaceAll((group, square) -> Math.sqrt(square));
        return squares;
    }

    /** Of the difference between two climates: room, rail and cloth are the same in both. */
    Map<Group, Double> drift(ModelClimate from, ModelClimate to, double attemptSd) {
        Map<Group, Double> squares = new EnumMap<>(Group.class);
        for (UnknownDirection direction : model.shared()) {
            double change = change(to, direction) - change(from, direction);
            squares.merge(direction.group(), change * change, Double::sum);
        }
        squares.put(Group.SESSION, sessionSquares(from) + sessionSquares(to));
        squares.put(Group.ATTEMPT, 2 * attemptSd * attemptSd);
        squares.replaceAll((group, square) -> Math.sqrt(square));
        return squares;
    }

    /** Without sessions and attempts. */
    static double expected(Map<Group, Double> spread) {
        double sum = 0;
        for (Group group : List.of(Group.RAIL, Group.ROOM, Group.CLOTH)) {
            double sd = spread.getOrDefault(group, 0.0);
            sum += sd * sd;
        }
        return Math.sqrt(sum);
    }

    /** Of sessions' effects in one climate. */
    double session(ModelClimate at) {
        return Math.sqrt(sessionSquares(at));
    }

    private double sessionSquares(ModelClimate at) {
        double sum = 0;
        for (UnknownDirection direction : model.session()) {
            double change = change(at, direction);
            sum += change * change;
        }
        return sum;
    }

    // where a step leaves the path, the other side alone tells the slope
    private double change(ModelClimate at, UnknownDirection direction) {
        double up = moved(at, direction, REACH);
        double down = moved(at, direction, -REACH);
        if (Double.isNaN(up) || Double.isNaN(down)) {
            double middle = model.trace(at).landingDia();
            double one = Double.isNaN(up) ? middle - down : up - middle;
            return Double.isNaN(one) ? 0 : one / REACH;
        }
        return (up - down) / (2 * REACH);
    }

    private double moved(ModelClimate at, UnknownDirection direction, double by) {
        return model.landing(at, direction.movedRail(model.coefficients, by), direction.movedCloth(model.cloth, by));
    }

    /** Scatter of a landing that the scatter of single rebounds makes, where no landing of the shot was seen: aim and speed are left out. */
    double scattered(ModelClimate at) {
        RailImpact impact = model.rail.impact(model.rail(at));
        double sum = 0;
        for (int i = 0; i < model.pattern.rails().size(); i++) {
            double angle = half(impact, i, model.rail.angleSdDeg(), 0);
            double ratio = half(impact, i, 0, model.rail.ratioSd() / restitution(at));
            sum += angle * angle + ratio * ratio;
        }
        return Math.sqrt(sum);
    }

    private double restitution(ModelClimate at) {
        return Math.max(0.1, model.rail(at).restitution().at1Mps());
    }

    private double half(RailImpact impact, int contact, double turnDeg, double faster) {
        double up = scattered(impact, contact, turnDeg, 1 + faster);
        double down = scattered(impact, contact, -turnDeg, 1 - faster);
        return Double.isNaN(up - down) ? 0 : (up - down) / 2;
    }

    private double scattered(RailImpact impact, int contact, double turnDeg, double factor) {
        RailImpact[] rails = new RailImpact[model.pattern.rails().size()];
        java.util.Arrays.fill(rails, impact);
        rails[contact] = RailsInOrder.scattered(impact, turnDeg, factor);
        return model.trace(List.of(rails)).landingDia();
    }
}
