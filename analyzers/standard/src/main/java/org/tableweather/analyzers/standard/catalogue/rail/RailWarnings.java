package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.rail.RailPool.Used;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary.Column;

/** What a reader must know before trusting the answer, in words. */
final class RailWarnings {

    private static final int FEW_ROOMS = 5;
    private static final double RIGID_MPS = 2.5;
    private static final double TOO_LARGE = 2;

    private RailWarnings() {}

    /** What is to be said of the data whether or not there is a fit. */
    static List<String> ofPool(RailPool pool) {
        List<String> warnings = new ArrayList<>();
        if (pool.inventedSessions > 0) {
            warnings.add("Invented data: " + pool.inventedSessions + " of "
                    + Figures.counted(pool.sessions.size(), "session")
                    + " are made up for demonstration; no figure here says anything about real tables.");
        }
        leftOut(warnings, pool.withoutPair, "trial", "no approach and rebound angle");
        leftOut(warnings, pool.withoutClimate, "pair", "humidity or temperature at the trial is not known");
        leftOut(warnings, pool.withoutMeasure, "pair", "the measure of humidity is not known there");
        leftOut(warnings, pool.withSideSpin, "pair", "it states side spin, whose direction along the rail is not told");
        if (pool.noseAssumed > 0) {
            warnings.add(Figures.counted(pool.noseAssumed, "session")
                    + " without a usable noseHeightMm: a nose at 63.5 % of the ball was taken.");
        }
        return warnings;
    }

    private static void leftOut(List<String> warnings, long count, String noun, String why) {
        if (count > 0) {
            warnings.add(Figures.counted(count, noun) + " left out: " + why + ".");
        }
    }

    static List<String> of(FittedRail rail) {
        RailPool pool = rail.pool;
        List<String> warnings = new ArrayList<>(ofPool(pool));
        if (pool.rooms.size() < FEW_ROOMS) {
            warnings.add(pool.rooms.size() + " rooms, fewer than 5: how much rooms differ is hardly known.");
        }
        if (!pool.withRatio()) {
            warnings.add("Angles alone were measured: restitution and friction rest on how the rebound changes with the"
                    + " approach angle, and on the impact model.");
        }
        if (!rail.has(RailTerm.RESTITUTION_TEMPERATURE)) {
            warnings.add("Temperature is not in the model: it hardly varies, or sessions are too few.");
        }
        if (!rail.has(RailTerm.RESTITUTION_SPEED)) {
            warnings.add("Restitution is taken the same at every speed: speeds are not all known, or hardly vary.");
        }
        if (pool.used.stream().anyMatch(each -> fast(rail, each))) {
            warnings.add("Some balls came faster than 2.5 m/s across the rail, where a rigid rail no longer holds.");
        }
        warnOfMisfit(rail, warnings);
        return warnings;
    }

    private static boolean fast(FittedRail rail, Used each) {
        return each.withSpeed()
                && each.cell().mean(Column.SPEED_MPS) > RIGID_MPS
                && rail.design.response(each).acrossMps() > RIGID_MPS;
    }

    /** Conditions whose means miss the model by more than scatter and sessions allow. */
    private static void warnOfMisfit(FittedRail rail, List<String> warnings) {
        long responses = rail.pool.used.stream()
                .mapToLong(each -> each.withRatio() ? 2 : 1)
                .sum();
        long free = responses - rail.design.terms.size();
        if (free > 0 && rail.fit.chiSquared() > TOO_LARGE * free) {
            warnings.add("The means of the conditions miss this impact by "
                    + Figures.fixed(Math.sqrt(rail.fit.chiSquared() / free), 1)
                    + " times what scatter would: the rail does something that the model does not know.");
        }
    }
}
