package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.RoomEffects;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.standard.numeric.StudentT;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * What a fit of the pooled model says, under the names that every answer uses: quantities with their 95 % interval, degrees of
 * freedom below 1 counting as 1; standard deviations; each room's share.
 */
public final class FitFigures {

    static final double COVERAGE = 0.95;

    private static final List<String> ROOM_EFFECTS = List.of("intercept", "humidity");

    private FitFigures() {}

    static double halfWidth(double df) {
        return StudentT.halfWidth(COVERAGE, Math.max(1, df));
    }

    /** Half the width of the 95 % interval. */
    public static double reach(Quantity quantity) {
        return halfWidth(quantity.df()) * quantity.standardError();
    }

    /** The same of one that may have been left out of the fit. */
    public static Estimate estimate(String name, Optional<Quantity> quantity, String unit, String meaning) {
        return quantity.map(known -> estimate(name, known, unit, meaning))
                .orElseGet(() -> new Estimate(
                        name, null, null, null, null, null, unit, meaning + "; left out: see the warnings"));
    }

    /** A quantity as an estimate. */
    public static Estimate estimate(String name, Quantity known, String unit, String meaning) {
        double reach = reach(known);
        return new Estimate(
                name,
                known.value(),
                known.standardError(),
                Math.max(1, known.df()),
                known.value() - reach,
                known.value() + reach,
                unit,
                meaning);
    }

    /** Standard deviations of rooms, their correlation, of sessions and of trials. */
    public static List<VarianceComponent> variance(NestedFit fit) {
        List<VarianceComponent> components = new ArrayList<>();
        double[][] rooms = fit.roomCovariance();
        for (int u = 0; u < rooms.length; u++) {
            components.add(deviation("room." + roomEffect(fit, u), rooms[u][u]));
        }
        if (rooms.length == 2) {
            Optional<String> note = fit.correlation().isEmpty()
                    ? Optional.of("not defined: a room variance is zero")
                    : noted(fit, Caution.CORRELATION_AT_BOUND, "on the boundary");
            components.add(new VarianceComponent("room.correlation", OptionalDouble.empty(), fit.correlation(), note));
        }
        fit.sessionVariance().ifPresent(session -> components.add(deviation("session.intercept", session)));
        components.add(new VarianceComponent(
                "residual",
                OptionalDouble.of(Math.sqrt(fit.sigma2())),
                OptionalDouble.empty(),
                noted(fit, Caution.SESSION_IN_RESIDUAL, "session and trial scatter together")));
        return components;
    }

    private static String roomEffect(NestedFit fit, int effect) {
        return ROOM_EFFECTS.get(fit.random().get(effect));
    }

    private static Optional<String> noted(NestedFit fit, Caution caution, String words) {
        return Optional.of(caution).filter(fit.cautions()::contains).map(present -> words);
    }

    private static VarianceComponent deviation(String name, double variance) {
        Optional<String> note = variance == 0 ? Optional.of("on the boundary") : Optional.empty();
        return new VarianceComponent(name, OptionalDouble.of(Math.sqrt(variance)), OptionalDouble.empty(), note);
    }

    /**
     * What each room adds to the average room.
     *
     * @param fit of these rooms
     * @param rooms that were fitted, in their order
     */
    public static List<RoomEffects> rooms(NestedFit fit, List<RoomSessions> rooms) {
        List<RoomEffects> shares = new ArrayList<>();
        for (int room = 0; room < rooms.size(); room++) {
            NestedFit.RoomEffect particular = fit.rooms().get(room);
            List<Effect> effects = new ArrayList<>();
            for (int u = 0; u < fit.random().size(); u++) {
                effects.add(new Effect(
                        roomEffect(fit, u),
                        particular.effects()[u],
                        Math.sqrt(particular.variance()[u][u])));
            }
            RoomSessions pooled = rooms.get(room);
            shares.add(new RoomEffects(particular.key(), pooled.sessions().size(), pooled.trials(), effects));
        }
        return shares;
    }
}
