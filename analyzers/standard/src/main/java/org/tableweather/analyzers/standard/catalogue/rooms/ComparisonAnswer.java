package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.RoomEffects;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;

/** Writes one room beside the others as an answer. */
final class ComparisonAnswer {

    private static final String PER = "per 10 %RH";

    private final RoomPool pool;
    private final NestedFit fit;
    private final int room;
    private final boolean asked;
    private final Response response;
    private final List<RoomDeparture> departures = new ArrayList<>();
    private final NextSessions next;

    ComparisonAnswer(RoomPool pool, NestedFit fit, int room, boolean asked) {
        this.pool = pool;
        this.fit = fit;
        this.room = room;
        this.asked = asked;
        response = pool.response();
        for (int effect = 0; effect < fit.random().size(); effect++) {
            departures.add(RoomDeparture.of(fit, room, effect));
        }
        next = new NextSessions(pool, fit, room);
    }

    Analysis.Estimated write(List<String> references) {
        List<GuardFinding> found = pool.guards();
        List<String> warnings = new ArrayList<>(new ComparisonWarnings(pool, fit, room, asked, departures).list());
        found.forEach(finding -> warnings.add(finding.words()));
        Map<String, String> used = new LinkedHashMap<>();
        used.put(RoomComparison.ROOM, key());
        used.put(RoomComparison.SHOT, pool.shot());
        used.put(RoomComparison.RESPONSE, response.parameter);
        return new Analysis.Estimated(
                sentence(),
                used,
                facts(found),
                estimates(),
                variance(),
                List.of(),
                rooms(),
                new ComparisonPlots(response, fit, room, departures, next).all(),
                warnings,
                BiasGuards.withSources(references, found));
    }

    private String key() {
        return pool.rooms().get(room).key();
    }

    private String sentence() {
        StringBuilder text =
                new StringBuilder("Room " + key() + " among " + pool.rooms().size() + " rooms:");
        for (RoomDeparture one : departures) {
            Interval interval = one.interval();
            text.append(" its ").append(one.name().equals(RoomDeparture.LEVEL) ? "level" : "slope with humidity");
            text.append(" differs by ").append(figure(one.value())).append(unit(one));
            text.append(" from the average room's (95 % interval ").append(figure(interval.lower()));
            text.append(" to ")
                    .append(figure(interval.upper()))
                    .append("), place ")
                    .append(one.place());
            one.places()
                    .ifPresent(places -> text.append(" (95 % interval ")
                            .append(places.best(Coverage.DEFAULT))
                            .append(" to ")
                            .append(places.worst(Coverage.DEFAULT))
                            .append(")"));
            text.append(": ").append(one.verdict()).append(";");
        }
        text.setCharAt(text.length() - 1, '.');
        return text + " " + advice();
    }

    private static String unit(RoomDeparture one) {
        return one.name().equals(RoomDeparture.LEVEL) ? "" : " " + PER;
    }

    private String figure(double value) {
        return Figures.fixed(value, response.decimals) + response.sign;
    }

    private String advice() {
        if (next.best.isEmpty()) {
            return "Rooms do not differ as far as these data tell: measure in another room next.";
        }
        String what = next.forSlope ? "slope" : "level";
        String at = String.join(", ", next.best.stream().map(Figures::plain).toList());
        return "Next, hold sessions of " + Figures.counted(next.trials, "trial") + " at " + at
                + " % relative humidity, in this order: the standard error of this room's " + what
                + " would fall from " + Figures.fixed(next.now, response.decimals + 1) + response.sign + " to about "
                + Figures.fixed(next.after, response.decimals + 1) + response.sign + ".";
    }

    private Map<String, Object> facts(List<GuardFinding> found) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", "REML");
        facts.put("rooms", pool.rooms().size());
        facts.put("sessions", pool.sessions());
        facts.put("trials", pool.trials());
        facts.put("sessionsHere", pool.rooms().get(room).sessions().size());
        facts.put("trialsHere", pool.rooms().get(room).trials());
        for (RoomDeparture one : departures) {
            facts.put("reliability." + one.name(), one.reliability());
        }
        facts.put("nextRhPct", List.copyOf(next.best));
        facts.put("nextTrials", next.trials);
        facts.put("standardErrorNow", next.now);
        facts.put("standardErrorAfter", next.after);
        facts.put("guards", found.stream().map(GuardFinding::facts).toList());
        return facts;
    }

    private List<Estimate> estimates() {
        List<Estimate> estimates = new ArrayList<>();
        for (RoomDeparture one : departures) {
            boolean level = one.name().equals(RoomDeparture.LEVEL);
            String unit = level ? response.unit : response.per(PER);
            String what = level
                    ? "mean " + response.noun + " at 50 %RH and 21 °C"
                    : "change of the mean " + response.noun + " at 50 %RH";
            estimates.add(withFreedom(one.name(), one.average(), unit, what + " in an average room"));
            estimates.add(withFreedom(one.name() + ".here", one.here(), unit, what + " in this room"));
            Interval interval = one.interval();
            estimates.add(new Estimate(
                    one.name() + ".departure",
                    one.value(),
                    one.standardError(),
                    null,
                    interval.lower(),
                    interval.upper(),
                    unit,
                    "what this room adds to the average room, shrunken: " + what));
            one.places()
                    .ifPresent(places -> estimates.add(new Estimate(
                            one.name() + ".place",
                            (double) one.place(),
                            null,
                            null,
                            (double) places.best(Coverage.DEFAULT),
                            (double) places.worst(Coverage.DEFAULT),
                            "of " + pool.rooms().size() + " rooms",
                            "place of this room, 1 for the largest; on average over what is not known "
                                    + Figures.fixed(places.expected(), 1))));
        }
        return estimates;
    }

    private static Estimate withFreedom(String name, Quantity known, String unit, String meaning) {
        double df = Math.max(1, known.df());
        double reach = Coverage.DEFAULT.halfWidth(df) * known.standardError();
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
        departures.forEach(one -> components.add(component("room." + one.name(), one.roomSd())));
        fit.sessionVariance().ifPresent(v -> components.add(component("session.intercept", Math.sqrt(v))));
        components.add(component("residual", Math.sqrt(fit.sigma2())));
        return components;
    }

    private static VarianceComponent component(String name, double sd) {
        return new VarianceComponent(
                name,
                OptionalDouble.of(sd),
                OptionalDouble.empty(),
                sd == 0 ? Optional.of("on the boundary") : Optional.empty());
    }

    private List<RoomEffects> rooms() {
        List<RoomEffects> rooms = new ArrayList<>();
        for (int other = 0; other < pool.rooms().size(); other++) {
            NestedFit.RoomEffect particular = fit.rooms().get(other);
            List<Effect> effects = new ArrayList<>();
            for (int effect = 0; effect < departures.size(); effect++) {
                effects.add(new Effect(
                        departures.get(effect).name(),
                        particular.effects()[effect],
                        Math.sqrt(particular.variance()[effect][effect])));
            }
            PooledRoom pooled = pool.rooms().get(other);
            rooms.add(new RoomEffects(pooled.key(), pooled.sessions().size(), pooled.trials(), effects));
        }
        return rooms;
    }
}
