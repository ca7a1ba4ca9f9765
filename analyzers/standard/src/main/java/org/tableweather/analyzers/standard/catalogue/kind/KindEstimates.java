package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.RoomEffects;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/** The figures of a fit under the names that every pooled answer uses. */
final class KindEstimates {

    private static final List<String> ROOM_EFFECTS = List.of("intercept", "humidity");

    private final KindPool pool;
    private final KindQuestion question;
    private final NestedFit fit;
    private final KindCurve curve;

    KindEstimates(KindPool pool, KindQuestion question, NestedFit fit, KindCurve curve) {
        this.pool = pool;
        this.question = question;
        this.fit = fit;
        this.curve = curve;
    }

    List<Estimate> estimates() {
        List<Estimate> estimates = new ArrayList<>();
        String place = pool.rooms.size() == 1 ? " in this room" : " in an average room";
        String origins = question.asked().stream()
                .map(covariate -> ", " + covariate.origin())
                .collect(Collectors.joining());
        Outcome outcome = pool.outcome;
        estimates.add(of(
                "intercept",
                fit.coefficient(0),
                outcome.unit(),
                "mean " + outcome.noun() + " at 50 %RH and 21 °C" + place + origins));
        List<KindCovariate> covariates = question.covariates();
        for (int i = 0; i < covariates.size(); i++) {
            KindCovariate covariate = covariates.get(i);
            estimates.add(of(
                    covariate.estimate(),
                    fit.coefficient(i + 1),
                    outcome.per(covariate.per()),
                    String.format(covariate.meaning(), outcome.noun())));
        }
        estimates.add(change("humidity.change"));
        return estimates;
    }

    /** The change over the curve, under this name. */
    Estimate change(String name) {
        return of(
                name,
                Optional.of(curve.change()),
                pool.outcome.unit(),
                "change of the mean " + pool.outcome.noun() + " from " + round(curve.fromPct) + " to "
                        + round(curve.toPct) + " %RH");
    }

    static String round(double rhPct) {
        return Figures.plain(Math.round(rhPct * 10) / 10.0);
    }

    private static Estimate of(String name, Optional<Quantity> quantity, String unit, String meaning) {
        if (quantity.isEmpty()) {
            return new Estimate(name, null, null, null, null, null, unit, meaning + "; left out: see the warnings");
        }
        Quantity known = quantity.get();
        double reach = KindCurve.reach(known);
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

    List<VarianceComponent> variance() {
        List<VarianceComponent> components = new ArrayList<>();
        double[][] rooms = fit.roomCovariance();
        for (int u = 0; u < rooms.length; u++) {
            components.add(deviation("room." + ROOM_EFFECTS.get(fit.random().get(u)), rooms[u][u]));
        }
        if (rooms.length == 2) {
            Optional<String> note = fit.correlation().isEmpty()
                    ? Optional.of("not defined: a room variance is zero")
                    : noted(Caution.CORRELATION_AT_BOUND, "on the boundary");
            components.add(new VarianceComponent("room.correlation", OptionalDouble.empty(), fit.correlation(), note));
        }
        fit.sessionVariance().ifPresent(session -> components.add(deviation("session.intercept", session)));
        components.add(new VarianceComponent(
                "residual",
                OptionalDouble.of(Math.sqrt(fit.sigma2())),
                OptionalDouble.empty(),
                noted(Caution.SESSION_IN_RESIDUAL, "session and trial scatter together")));
        return components;
    }

    private Optional<String> noted(Caution caution, String words) {
        return Optional.of(caution).filter(fit.cautions()::contains).map(present -> words);
    }

    private static VarianceComponent deviation(String name, double variance) {
        Optional<String> note = variance == 0 ? Optional.of("on the boundary") : Optional.empty();
        return new VarianceComponent(name, OptionalDouble.of(Math.sqrt(variance)), OptionalDouble.empty(), note);
    }

    List<RoomEffects> rooms() {
        List<RoomEffects> rooms = new ArrayList<>();
        for (int room = 0; room < pool.rooms.size(); room++) {
            NestedFit.RoomEffect particular = fit.rooms().get(room);
            List<Effect> effects = new ArrayList<>();
            for (int u = 0; u < fit.random().size(); u++) {
                effects.add(new Effect(
                        ROOM_EFFECTS.get(fit.random().get(u)),
                        particular.effects()[u],
                        Math.sqrt(particular.variance()[u][u])));
            }
            rooms.add(new RoomEffects(
                    particular.key(),
                    pool.rooms.get(room).sessions().size(),
                    pool.rooms.get(room).trials(),
                    effects));
        }
        return rooms;
    }
}
