package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.RoomEffects;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/** Writes a fit of the pooled model as an answer: figures, words, curve, rooms. */
final class HumidityAnswer {

    private static final List<String> ROOM_EFFECTS = List.of("intercept", "humidity");

    private final HumidityPool pool;
    private final HumidityQuestion question;
    private final NestedFit fit;
    private final HumidityCurve curve;
    private final Response response;
    private final boolean oneRoom;

    HumidityAnswer(HumidityPool pool, HumidityQuestion question, NestedFit fit) {
        this.pool = pool;
        this.question = question;
        this.fit = fit;
        response = question.response();
        curve = new HumidityCurve(pool, question, fit);
        oneRoom = pool.rooms.size() == 1;
    }

    Analysis.Estimated write(List<String> references) {
        List<CurvePoint> points = curve.points();
        return new Analysis.Estimated(
                sentence(),
                parameters(),
                fitFacts(),
                estimates(),
                variance(),
                points,
                rooms(),
                List.of(curve.plot(points)),
                new HumidityWarnings(pool, question, fit, curve).list(),
                references);
    }

    private Map<String, String> parameters() {
        Map<String, String> used = new LinkedHashMap<>();
        used.put(HumidityQuestion.SHOT, pool.shot);
        used.put(HumidityQuestion.RESPONSE, response.parameter);
        used.put(HumidityQuestion.FROM, Figures.plain(curve.fromPct));
        used.put(HumidityQuestion.TO, Figures.plain(curve.toPct));
        used.put(
                HumidityQuestion.COVARIATES,
                question.asked().stream().map(covariate -> covariate.parameter).collect(Collectors.joining(",")));
        return used;
    }

    private Map<String, Object> fitFacts() {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", "REML");
        facts.put("criterion", fit.criterion());
        facts.put("converged", fit.converged());
        facts.put("evaluations", fit.evaluations());
        facts.put("degreesOfFreedom", "Satterthwaite");
        facts.put("trials", pool.usedTrials);
        facts.put("sessions", pool.usedSessions);
        facts.put("rooms", pool.rooms.size());
        return facts;
    }

    private String sentence() {
        Quantity change = fit.contrast(curve.changeRow());
        double reach = HumidityCurve.halfWidth(change.df()) * change.standardError();
        String subject = oneRoom ? "In this one room, from " : "From ";
        String text = subject + Figures.plain(rounded(curve.fromPct)) + " to " + Figures.plain(rounded(curve.toPct))
                + " % relative humidity the " + response.noun + " changes by " + figure(change.value())
                + " (95 % interval " + figure(change.value() - reach) + " to " + figure(change.value() + reach) + "): ";
        if (Math.abs(change.value()) <= reach) {
            text += "no change that these data can tell from chance.";
        } else {
            text += (change.value() < 0 ? response.falling : response.rising) + ".";
        }
        return oneRoom ? text + " One room says nothing about others." : text + newRoomSentence(change);
    }

    private String newRoomSentence(Quantity change) {
        Quantity room = fit.inNewRoom(curve.changeRow());
        double reach = HumidityCurve.halfWidth(room.df()) * room.standardError();
        return " In a room not yet measured it is expected between " + figure(change.value() - reach) + " and "
                + figure(change.value() + reach) + ".";
    }

    private static double rounded(double rhPct) {
        return Math.round(rhPct * 10) / 10.0;
    }

    private String figure(double value) {
        return Figures.fixed(value, response.decimals) + response.sign;
    }

    private List<Estimate> estimates() {
        List<Estimate> estimates = new ArrayList<>();
        String place = oneRoom ? " in this room" : " in an average room";
        estimates.add(estimate(
                "intercept",
                fit.coefficient(0),
                response.unit,
                "mean " + response.noun + " at 50 %RH and 21 °C" + place + atOrigins()));
        List<Covariate> covariates = question.covariates();
        for (int i = 0; i < covariates.size(); i++) {
            Covariate covariate = covariates.get(i);
            estimates.add(estimate(
                    covariate.estimate,
                    fit.coefficient(i + 1),
                    response.per(covariate.per),
                    String.format(covariate.meaning, response.noun)));
        }
        estimates.add(estimate(
                "humidity.change",
                Optional.of(fit.contrast(curve.changeRow())),
                response.unit,
                "change of the mean " + response.noun + " from " + Figures.plain(rounded(curve.fromPct)) + " to "
                        + Figures.plain(rounded(curve.toPct)) + " %RH"));
        return estimates;
    }

    private String atOrigins() {
        return question.asked().stream()
                .map(covariate -> ", " + covariate.origin)
                .collect(Collectors.joining());
    }

    private static Estimate estimate(String name, Optional<Quantity> quantity, String unit, String meaning) {
        if (quantity.isEmpty()) {
            return new Estimate(name, null, null, null, null, null, unit, meaning + "; left out: see the warnings");
        }
        Quantity known = quantity.get();
        double df = Math.max(1, known.df());
        double reach = HumidityCurve.halfWidth(df) * known.standardError();
        return new Estimate(
                name,
                known.value(),
                known.standardError(),
                df,
                known.value() - reach,
                known.value() + reach,
                unit,
                meaning);
    }

    private List<VarianceComponent> variance() {
        List<VarianceComponent> components = new ArrayList<>();
        double[][] rooms = fit.roomCovariance();
        for (int u = 0; u < rooms.length; u++) {
            components.add(deviation("room." + ROOM_EFFECTS.get(fit.random().get(u)), rooms[u][u]));
        }
        if (rooms.length == 2) {
            Optional<String> note = fit.correlation().isEmpty()
                    ? Optional.of("not defined: a room variance is zero")
                    : Optional.of(Caution.CORRELATION_AT_BOUND)
                            .filter(fit.cautions()::contains)
                            .map(bound -> "on the boundary");
            components.add(new VarianceComponent("room.correlation", OptionalDouble.empty(), fit.correlation(), note));
        }
        if (fit.sessionVariance().isPresent()) {
            components.add(deviation("session.intercept", fit.sessionVariance().getAsDouble()));
        }
        components.add(new VarianceComponent(
                "residual",
                OptionalDouble.of(Math.sqrt(fit.sigma2())),
                OptionalDouble.empty(),
                Optional.of(Caution.SESSION_IN_RESIDUAL)
                        .filter(fit.cautions()::contains)
                        .map(mixed -> "session and trial scatter together")));
        return components;
    }

    private static VarianceComponent deviation(String name, double variance) {
        Optional<String> note = variance == 0 ? Optional.of("on the boundary") : Optional.empty();
        return new VarianceComponent(name, OptionalDouble.of(Math.sqrt(variance)), OptionalDouble.empty(), note);
    }

    private List<RoomEffects> rooms() {
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
