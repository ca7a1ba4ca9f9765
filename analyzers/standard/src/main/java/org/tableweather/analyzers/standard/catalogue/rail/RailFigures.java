package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.HumidityMeasure;
import org.tableweather.analyzers.standard.catalogue.rail.RailPool.Used;

/** The figures of a fitted rail, and the sentence about them. */
final class RailFigures {

    /** The ball whose rebound is told: it rolls. */
    private static final double APPROACH_DEG = 45;

    private static final double SPEED_MPS = 1.5;

    private final FittedRail rail;
    private final HumidityMeasure measure;
    private final Used dry;
    private final Used damp;

    RailFigures(FittedRail rail) {
        this.rail = rail;
        this.measure = rail.pool.question.measure();
        this.dry = rail.pool.used.stream()
                .min(java.util.Comparator.comparingDouble(Used::x))
                .orElseThrow();
        this.damp = rail.pool.used.stream()
                .max(java.util.Comparator.comparingDouble(Used::x))
                .orElseThrow();
    }

    private String per() {
        return Figures.plain(measure.step) + " " + (measure == HumidityMeasure.DEW_POINT ? "K" : measure.unit);
    }

    private String at() {
        return "at " + Figures.plain(measure.origin) + " " + measure.unit + " and 21 °C";
    }

    List<Estimate> estimates() {
        List<Estimate> all = new ArrayList<>();
        all.add(plain(
                RailTerm.RESTITUTION,
                "1",
                "restitution " + at() + (rail.has(RailTerm.RESTITUTION_SPEED) ? ", 1 m/s across" : "")));
        if (rail.has(RailTerm.RESTITUTION_SPEED)) {
            all.add(plain(RailTerm.RESTITUTION_SPEED, "per m/s", "change of restitution with the speed across"));
        }
        all.add(plain(RailTerm.RESTITUTION_HUMIDITY, "per " + per(), "change of restitution with humidity"));
        if (rail.has(RailTerm.RESTITUTION_TEMPERATURE)) {
            all.add(plain(RailTerm.RESTITUTION_TEMPERATURE, "per 5 K", "change of restitution with temperature"));
        }
        all.add(level());
        all.add(percent(RailTerm.FRICTION_HUMIDITY, "% per " + per(), "change of the rail's friction with humidity"));
        if (rail.has(RailTerm.FRICTION_TEMPERATURE)) {
            all.add(percent(
                    RailTerm.FRICTION_TEMPERATURE, "% per 5 K", "change of the rail's friction with temperature"));
        }
        all.add(change());
        return all;
    }

    private Estimate plain(RailTerm term, String unit, String meaning) {
        double value = rail.value(term);
        double error = rail.error(term);
        double reach = rail.reach(error, rail.df(term));
        return new Estimate(term.key(), value, error, rail.df(term), value - reach, value + reach, unit, meaning);
    }

    private Estimate level() {
        double log = rail.value(RailTerm.FRICTION);
        double error = rail.error(RailTerm.FRICTION);
        double reach = rail.reach(error, rail.df(RailTerm.FRICTION));
        double friction = StrictMath.exp(log);
        return new Estimate(
                RailTerm.FRICTION.key(),
                friction,
                friction * error,
                rail.df(RailTerm.FRICTION),
                StrictMath.exp(log - reach),
                StrictMath.exp(log + reach),
                "1",
                "friction of ball on rail " + at());
    }

    private Estimate percent(RailTerm term, String unit, String meaning) {
        double value = rail.value(term);
        double error = rail.error(term);
        double reach = rail.reach(error, rail.df(term));
        return new Estimate(
                term.key(),
                100 * StrictMath.expm1(value),
                100 * StrictMath.exp(value) * error,
                rail.df(term),
                100 * StrictMath.expm1(value - reach),
                100 * StrictMath.expm1(value + reach),
                unit,
                meaning);
    }

    private Estimate change() {
        double[] change = rail.change(dry.x(), damp.x(), APPROACH_DEG, SPEED_MPS);
        double df = rail.df(RailTerm.FRICTION_HUMIDITY);
        double reach = rail.reach(change[1], df);
        return new Estimate(
                "rebound.change",
                change[0],
                change[1],
                df,
                change[0] - reach,
                change[0] + reach,
                "deg",
                "change of the rebound angle of a rolling ball that comes at 45° and 1.5 m/s, from the driest to the dampest"
                        + " session, by the model");
    }

    String sentence() {
        Estimate change = change();
        return "From " + rounded(dry.rhPct()) + " to " + rounded(damp.rhPct()) + " % relative humidity "
                + grip() + ", and " + spring() + ": a rolling ball that comes at 45° leaves the rail "
                + Figures.fixed(Math.abs(change.value()), 1) + "° " + (change.value() < 0 ? "tighter" : "wider")
                + " when damp (95 % interval of the change " + Figures.fixed(change.lower(), 1) + "° to "
                + Figures.fixed(change.upper(), 1) + "°).";
    }

    private String grip() {
        double dryFriction = StrictMath.exp(rail.parameters(dry.x())[1]);
        double dampFriction = StrictMath.exp(rail.parameters(damp.x())[1]);
        return "the rail's friction changes from " + Figures.fixed(dryFriction, 3) + " to "
                + Figures.fixed(dampFriction, 3) + doubt(RailTerm.FRICTION_HUMIDITY);
    }

    private String spring() {
        return "its restitution from " + Figures.fixed(rail.parameters(dry.x())[0], 3) + " to "
                + Figures.fixed(rail.parameters(damp.x())[0], 3) + doubt(RailTerm.RESTITUTION_HUMIDITY);
    }

    private String doubt(RailTerm term) {
        return Math.abs(rail.value(term)) > rail.reach(rail.error(term), rail.df(term))
                ? ""
                : " (no change that these data can tell from chance)";
    }

    private static String rounded(double rhPct) {
        return Figures.fixed(rhPct, 0);
    }
}
