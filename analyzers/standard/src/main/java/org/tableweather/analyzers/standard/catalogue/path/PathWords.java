package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.physics.PathEvent;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.schema.record.Rail;

/** A prediction in two sentences, and what a reader must know before trusting it. */
final class PathWords {

    private static final double RIGID_MPS = 2.5;
    private static final double FEW_LOST = 0.01;

    private final PathResult result;
    private final PathQuestion question;
    private final Pattern pattern;

    PathWords(PathResult result) {
        this.result = result;
        question = result.asked.question;
        pattern = result.model.pattern;
    }

    /** Drift, band and correction; then the reason. */
    String sentence() {
        Estimate drift = new PathFigures(result).drift();
        return "From " + question.from().words() + " to " + question.to().words() + " the landing of "
                + pattern.name() + " moves by " + signed(drift.value()) + " diamonds (95 % band "
                + signed(drift.lower()) + " to " + signed(drift.upper()) + ", " + direction(drift.value()) + ") in "
                + where() + "; " + remedy() + ". " + reason();
    }

    private String direction(double drift) {
        return pattern.hasTarget()
                ? "positive long, so it comes " + (drift < 0 ? "short" : "long")
                : "along the " + pattern.targetRail().schemaName() + " rail";
    }

    private String where() {
        String table = "on a table of " + Figures.fixed(1000 * pattern.table().playingLengthM(), 0) + " mm";
        if (result.model.inOwnRoom()) {
            return "room " + result.asked.room.orElseThrow() + " " + table;
        }
        return "a room not yet measured, " + table;
    }

    private String remedy() {
        if (result.aim.isEmpty()) {
            return "no aim within 1.5 diamonds brings it back" + other();
        }
        double aim = result.aim.get().value();
        Rail rail = pattern.rails().get(0);
        String towards = Pattern.isShort(rail) ? aim < 0 ? "near" : "far" : aim < 0 ? "head" : "foot";
        return "to bring it back aim " + Figures.fixed(Math.abs(aim), 2) + " diamonds nearer to the " + towards
                + " rail along the " + rail.schemaName() + " rail";
    }

    private String other() {
        if (result.speed.isPresent()) {
            return ", but " + signed(result.speed.get().value()) + " m/s does";
        }
        return result.spin
                .map(change -> ", but side spin of " + signed(change.value()) + " revolutions a second does")
                .orElse(", nor any speed or side spin tried");
    }

    private String reason() {
        boolean grip = Math.abs(result.byFriction) >= Math.abs(result.byRestitution);
        RailProperties first = result.model.rail(result.from);
        RailProperties second = result.model.rail(result.to);
        String cause = grip
                ? "the rails grip " + compared(second.friction() > first.friction(), "more", "less") + " (friction "
                        + Figures.fixed(first.friction(), 3) + " to " + Figures.fixed(second.friction(), 3) + ")"
                : "the rails give back "
                        + compared(
                                second.restitution().at(1) > first.restitution().at(1), "more", "less")
                        + " (restitution " + Figures.fixed(first.restitution().at(1), 3) + " to "
                        + Figures.fixed(second.restitution().at(1), 3) + ")";
        return "The reason: " + cause + most() + ".";
    }

    private static String compared(boolean higher, String up, String down) {
        return higher ? up : down;
    }

    private String most() {
        int best = -1;
        for (int i = 0; i < result.byRail.length; i++) {
            if (!Double.isNaN(result.byRail[i])
                    && (best < 0 || Math.abs(result.byRail[i]) > Math.abs(result.byRail[best]))) {
                best = i;
            }
        }
        if (best < 0 || result.byRail.length < 2) {
            return "";
        }
        return ", and of " + signed(result.drift()) + " diamonds contact " + (best + 1) + ", the "
                + pattern.rails().get(best).schemaName() + " rail, makes " + signed(result.byRail[best]);
    }

    static String signed(double value) {
        String text = Figures.fixed(value, 2);
        return text.startsWith("-") ? "−" + text.substring(1) : "+" + text;
    }

    List<String> warnings() {
        List<String> warnings = new ArrayList<>(result.asked.rail.warnings());
        if (result.asked.room.isPresent() && !result.model.inOwnRoom()) {
            warnings.add("Room " + result.asked.room.get()
                    + " has no pairs of approach and rebound: predicted as a new room, with the wider band.");
        }
        outside(warnings, question.from());
        outside(warnings, question.to());
        if (!result.asked.rail.feelsTemperature()
                && question.from().tempC() != question.to().tempC()) {
            warnings.add("The rail's model has no temperature: the two temperatures are taken to be alike.");
        }
        warnings.add(result.seenScatter
                .map(sd -> "An attempt scatters by " + Figures.fixed(sd, 2) + " diamonds, as those of the pool at "
                        + pattern.name() + ".")
                .orElse("No landings of " + pattern.name() + " repeat in the pool: an attempt is taken to scatter by "
                        + Figures.fixed(result.attemptSd, 2)
                        + " diamonds, what single rebounds make of it; aim and speed add to that."));
        ofTheWay(warnings);
        return warnings;
    }

    private void ofTheWay(List<String> warnings) {
        if (result.lostShare() > FEW_LOST) {
            warnings.add(Figures.fixed(100 * result.lostShare(), 0) + " % of the draws left the way, met other rails or"
                    + " came to rest before, and are not in the band: the pattern is on the edge here.");
        }
        if (fastest() > RIGID_MPS) {
            warnings.add("The ball meets a rail at " + Figures.fixed(fastest(), 1)
                    + " m/s across; a rigid rail holds up to about 2.5 m/s.");
        }
        if (pattern.sideSpinRps() != 0) {
            warnings.add(
                    "Side spin: the rails were fitted to balls without it, so its part rests on the impact alone.");
        }
        if (result.aim.isEmpty() || result.speed.isEmpty() || result.spin.isEmpty()) {
            warnings.add("Not every correction exists: searched were " + PathSolutions.reach() + ".");
        }
    }

    private double fastest() {
        return result.first.path().contacts().stream()
                .mapToDouble(PathWords::across)
                .max()
                .orElse(0);
    }

    private static double across(PathEvent contact) {
        return Pattern.isShort(contact.rail().orElseThrow())
                ? Math.abs(contact.before().vxMps())
                : Math.abs(contact.before().vyMps());
    }

    private void outside(List<String> warnings, AskedClimate climate) {
        double low = result.asked.rail.lowestPct();
        double high = result.asked.rail.highestPct();
        Optional<String> humidity = climate.rhPct() < low || climate.rhPct() > high
                ? Optional.of(Figures.plain(climate.rhPct()) + " %RH is outside the pairs' " + Figures.fixed(low, 0)
                        + " to " + Figures.fixed(high, 0) + " %RH: the model is drawn on beyond what was measured.")
                : Optional.empty();
        humidity.ifPresent(warnings::add);
        double[] temperatures = result.asked.rail.temperaturesC();
        if (climate.tempC() < temperatures[0] - 1 || climate.tempC() > temperatures[1] + 1) {
            warnings.add(Figures.plain(climate.tempC()) + " °C is outside the pairs' "
                    + Figures.fixed(temperatures[0], 0) + " to " + Figures.fixed(temperatures[1], 0)
                    + " °C: the model is drawn on beyond what was measured.");
        }
    }
}
