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
import org.tableweather.analyzers.standard.catalogue.rooms.SlopeStage.RoomSlope;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.meta.Heterogeneity;
import org.tableweather.analyzers.standard.statistics.meta.MetaFit;
import org.tableweather.analyzers.standard.statistics.meta.PooledEffect;
import org.tableweather.analyzers.standard.statistics.meta.SmallStudyAsymmetry;

/** Writes a meta-analysis of slopes as an answer. */
final class SlopesAnswer {

    private static final String PER = "per 10 %RH";

    private final RoomPool pool;
    private final SlopeQuestion question;
    private final Optional<NestedFit> model;
    private final SlopeStage stage;
    private final MetaFit fit;
    private final Heterogeneity between;
    private final Response response;
    private final Optional<SmallStudyAsymmetry.Result> asymmetry;
    private final Omissions omissions;

    SlopesAnswer(RoomPool pool, SlopeQuestion question, Optional<NestedFit> model, SlopeStage stage, MetaFit fit) {
        this.pool = pool;
        this.question = question;
        this.model = model;
        this.stage = stage;
        this.fit = fit;
        between = fit.heterogeneity();
        response = question.response();
        asymmetry = SmallStudyAsymmetry.classical(stage.effects()).fold(Optional::of, refusal -> Optional.empty());
        omissions = Omissions.of(stage.effects(), question.analysis());
    }

    Analysis.Estimated write(List<String> references) {
        List<GuardFinding> found = pool.guards();
        List<String> warnings =
                new ArrayList<>(new SlopeWarnings(pool, question, stage, fit, asymmetry, omissions).list());
        found.forEach(finding -> warnings.add(finding.words()));
        return new Analysis.Estimated(
                sentence(),
                question.values(pool.shot()),
                facts(found),
                estimates(),
                variance(),
                List.of(),
                rooms(),
                new SlopePlots(response, stage, fit, omissions).all(),
                warnings,
                BiasGuards.withSources(references, found));
    }

    private String sentence() {
        Interval interval = fit.mean().interval();
        String text = "Over " + fit.studies() + " rooms the " + response.noun + " changes by "
                + figure(fit.mean().value()) + " " + PER + " (95 % interval " + figure(interval.lower()) + " to "
                + figure(interval.upper()) + "): ";
        if (interval.contains(0)) {
            text += "no change that these data can tell from chance. ";
        } else {
            text += (fit.mean().value() < 0 ? response.falling : response.rising) + ". ";
        }
        text += between.qPValue() < 0.05
                ? "The rooms do not agree: their slopes differ by more than their errors explain"
                : "The slopes differ by no more than their errors explain, which does not prove that rooms agree";
        text += "; the true slopes scatter by " + figure(Math.sqrt(between.tauSquared())) + " " + PER
                + " (standard deviation, 95 % interval "
                + figure(Math.sqrt(between.tauSquaredInterval().lower())) + " to "
                + figure(Math.sqrt(between.tauSquaredInterval().upper())) + ").";
        return text
                + fit.prediction()
                        .map(room -> " In a room not yet measured a slope between " + figure(room.lower()) + " and "
                                + figure(room.upper()) + " is expected.")
                        .orElse("");
    }

    private String figure(double value) {
        return Figures.fixed(value, response.decimals) + response.sign;
    }

    private Map<String, Object> facts(List<GuardFinding> found) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", question.method());
        facts.put("interval", "Hartung-Knapp");
        facts.put("rooms", fit.studies());
        facts.put("logLikelihood", fit.logLikelihood());
        facts.put("q", between.q());
        facts.put("qDegreesOfFreedom", between.df());
        facts.put("qPValue", between.qPValue());
        facts.put("hSquared", between.hSquared());
        asymmetry.ifPresent(
                uneven -> facts.put("asymmetryPValue", uneven.slope().pValue()));
        List<Map<String, Object>> slopes = new ArrayList<>();
        for (int i = 0; i < stage.slopes.size(); i++) {
            RoomSlope one = stage.slopes.get(i);
            Map<String, Object> row = new LinkedHashMap<>();
            row.put("room", one.room().key());
            row.put("slope", one.slope());
            row.put("standardError", Math.sqrt(one.variance()));
            row.put("weightPct", fit.weightsPct().get(i));
            slopes.add(row);
        }
        facts.put("slopes", slopes);
        facts.put("leaveOneOut", omissions.facts());
        facts.put("guards", found.stream().map(GuardFinding::facts).toList());
        return facts;
    }

    private List<Estimate> estimates() {
        List<Estimate> estimates = new ArrayList<>();
        String unit = response.per(PER);
        estimates.add(estimate(
                "humidity", fit.mean(), unit, "change of the mean " + response.noun + " over all rooms, at 50 %RH"));
        fit.prediction()
                .ifPresent(room -> estimates.add(new Estimate(
                        "humidity.new-room",
                        fit.mean().value(),
                        null,
                        fit.studies() - 2.0,
                        room.lower(),
                        room.upper(),
                        unit,
                        "the same in a room not yet measured")));
        Interval tauSquared = between.tauSquaredInterval();
        estimates.add(new Estimate(
                "rooms.sd",
                Math.sqrt(between.tauSquared()),
                null,
                null,
                Math.sqrt(tauSquared.lower()),
                Math.sqrt(tauSquared.upper()),
                unit,
                "τ, standard deviation of the rooms' true slopes"));
        estimates.add(new Estimate(
                "rooms.i-squared",
                between.iSquaredPct(),
                null,
                null,
                null,
                null,
                "%",
                "I², share of the scatter of slopes that lies between rooms and is not error"));
        asymmetry.ifPresent(found -> addAsymmetry(estimates, found, unit));
        return estimates;
    }

    private static void addAsymmetry(List<Estimate> estimates, SmallStudyAsymmetry.Result found, String unit) {
        estimates.add(estimate(
                "asymmetry",
                found.slope(),
                "1",
                "change of the slope per unit of its standard error: 0 when loosely and closely measured rooms agree"));
        estimates.add(estimate("humidity.large-room", found.limit(), unit, "the slope of a room measured without end"));
    }

    private static Estimate estimate(String name, PooledEffect effect, String unit, String meaning) {
        return new Estimate(
                name,
                effect.value(),
                effect.standardError(),
                effect.df(),
                effect.interval().lower(),
                effect.interval().upper(),
                unit,
                meaning);
    }

    private List<VarianceComponent> variance() {
        List<VarianceComponent> components = new ArrayList<>();
        components.add(new VarianceComponent(
                "room.humidity",
                OptionalDouble.of(Math.sqrt(between.tauSquared())),
                OptionalDouble.empty(),
                between.tauSquared() == 0 ? Optional.of("on the boundary") : Optional.empty()));
        if (question.shared()) {
            NestedFit shared = model.orElseThrow();
            shared.sessionVariance()
                    .ifPresent(v -> components.add(new VarianceComponent(
                            "session.intercept",
                            OptionalDouble.of(Math.sqrt(v)),
                            OptionalDouble.empty(),
                            v == 0 ? Optional.of("on the boundary") : Optional.empty())));
            components.add(new VarianceComponent(
                    "residual",
                    OptionalDouble.of(Math.sqrt(shared.sigma2())),
                    OptionalDouble.empty(),
                    Optional.empty()));
        }
        return components;
    }

    /** Departures from the mean slope, shrunken: {@code τ²/(τ² + v) (b − μ)}. */
    private List<RoomEffects> rooms() {
        List<RoomEffects> rooms = new ArrayList<>();
        for (RoomSlope one : stage.slopes) {
            double share = between.tauSquared() / (between.tauSquared() + one.variance());
            rooms.add(new RoomEffects(
                    one.room().key(),
                    one.room().sessions().size(),
                    one.room().trials(),
                    List.of(new Effect(
                            "humidity",
                            share * (one.slope() - fit.mean().value()),
                            Math.sqrt(share * one.variance())))));
        }
        return rooms;
    }
}
