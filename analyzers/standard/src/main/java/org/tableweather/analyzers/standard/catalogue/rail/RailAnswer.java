package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.RoomEffects;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.statistics.nonlinear.NonlinearFit;

/** Writes the fitted rail as an answer. */
final class RailAnswer {

    private static final List<String> ROOM_EFFECTS =
            List.of("restitution", "friction.log", "restitution.humidity", "friction.humidity.log");

    private final FittedRail rail;
    private final RailPool pool;
    private final NonlinearFit fit;

    RailAnswer(FittedRail rail) {
        this.rail = rail;
        pool = rail.pool;
        fit = rail.fit;
    }

    Analysis.Estimated write(List<String> references) {
        List<GuardFinding> found = BiasGuards.of(pool.guarded, pool.mainShot(), RailSummariser.OUTCOME);
        List<String> warnings = new ArrayList<>(RailWarnings.of(rail));
        found.forEach(finding -> warnings.add(finding.words()));
        RailFigures figures = new RailFigures(rail);
        return new Analysis.Estimated(
                figures.sentence(),
                parameters(),
                facts(found),
                figures.estimates(),
                variance(),
                List.of(),
                rooms(),
                new RailPlots(rail).list(),
                warnings,
                BiasGuards.withSources(references, found));
    }

    private Map<String, String> parameters() {
        Map<String, String> used = new LinkedHashMap<>();
        pool.question.shot().ifPresent(shot -> used.put(RailQuestion.SHOT, shot));
        used.put(RailQuestion.MEASURE, pool.question.measure().parameter);
        used.put(RailQuestion.IMPACT, pool.question.impact());
        return used;
    }

    private Map<String, Object> facts(List<GuardFinding> found) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", "Gauss-Newton, restricted likelihood");
        facts.put("criterion", fit.criterion());
        facts.put("linearisations", fit.linearisations());
        facts.put("chiSquared", fit.chiSquared());
        facts.put("measured", pool.withRatio() ? "angles and speeds" : "angles");
        facts.put("pairs", pool.pairs);
        facts.put("conditions", pool.used.size());
        facts.put("sessions", pool.sessions.size());
        facts.put("rooms", pool.rooms.size());
        facts.put("names", rail.design.terms.stream().map(RailTerm::key).toList());
        facts.put("parameters", list(fit.coefficients()));
        facts.put(
                "covariance",
                Arrays.stream(fit.covariance()).map(RailAnswer::list).toList());
        facts.put("identifiable", new Identification(rail).facts());
        facts.put("guards", found.stream().map(GuardFinding::facts).toList());
        return facts;
    }

    private static List<Double> list(double[] numbers) {
        return Arrays.stream(numbers).boxed().toList();
    }

    private List<VarianceComponent> variance() {
        List<VarianceComponent> all = new ArrayList<>();
        for (int i = 0; i < fit.roomDeviations().length; i++) {
            all.add(component("room." + ROOM_EFFECTS.get(i), fit.roomDeviations()[i]));
        }
        for (int i = 0; i < fit.sessionDeviations().length; i++) {
            all.add(component("session." + ROOM_EFFECTS.get(i), fit.sessionDeviations()[i]));
        }
        all.add(component("residual.angle", rail.scatter.angleSd()));
        if (pool.withRatio()) {
            all.add(component("residual.speed-ratio", rail.scatter.ratioSd()));
        }
        return all;
    }

    private static VarianceComponent component(String name, double sd) {
        return new VarianceComponent(
                name,
                OptionalDouble.of(sd),
                OptionalDouble.empty(),
                sd == 0 ? Optional.of("on the boundary") : Optional.empty());
    }

    private List<RoomEffects> rooms() {
        Map<String, Long> pairs = new HashMap<>();
        pool.used.forEach(used -> pairs.merge(used.room(), used.pairs(), Long::sum));
        List<RoomEffects> rooms = new ArrayList<>();
        for (NonlinearFit.Room room : fit.rooms()) {
            List<Effect> effects = new ArrayList<>();
            for (int i = 0; i < room.effects().length; i++) {
                effects.add(new Effect(ROOM_EFFECTS.get(i), room.effects()[i], room.standardErrors()[i]));
            }
            rooms.add(new RoomEffects(room.label(), room.sessions(), pairs.get(room.label()), effects));
        }
        return rooms;
    }
}
