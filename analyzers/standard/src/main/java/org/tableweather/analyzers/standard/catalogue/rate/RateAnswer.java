package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.RoomEffects;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.standard.catalogue.AskedRange;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.Guard;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.statistics.binomial.BinomialEffect;
import org.tableweather.analyzers.standard.statistics.binomial.BinomialFit;

/** Writes the fitted odds as an answer. */
final class RateAnswer {

    private final RateModel model;
    private final BinomialFit fit;
    private final RateCurve curve;

    RateAnswer(RateModel model) {
        this.model = model;
        fit = model.fit;
        curve = new RateCurve(model);
    }

    Analysis.Estimated write(RateQuestion asked, List<String> references) {
        List<CurvePoint> points = curve.points();
        List<GuardFinding> found = guards();
        List<String> warnings = new ArrayList<>(new RateWarnings(model, curve).list(asked));
        found.forEach(finding -> warnings.add(finding.words()));
        return new Analysis.Estimated(
                sentence(),
                parameters(),
                facts(found),
                estimates(),
                List.of(new VarianceComponent(
                        "room.intercept",
                        OptionalDouble.of(fit.clusterSd()),
                        OptionalDouble.empty(),
                        fit.clusterSd() == 0 ? Optional.of("on the boundary") : Optional.empty())),
                points,
                rooms(),
                List.of(curve.plot(points), new RateCalibration(model).plot()),
                warnings,
                BiasGuards.withSources(references, found));
    }

    // made or missed is no scatter with two tails: the guards of its shape do not apply
    private List<GuardFinding> guards() {
        return BiasGuards.of(model.pool.guarded, model.pool.shot, RateSummariser.OUTCOME).stream()
                .filter(finding ->
                        finding.guard() != Guard.CUT_ON_BOTH_SIDES && finding.guard() != Guard.CUT_ON_ONE_SIDE)
                .toList();
    }

    private Map<String, String> parameters() {
        Map<String, String> used = new LinkedHashMap<>();
        used.put(RateQuestion.SHOT, model.pool.shot);
        used.put(RateQuestion.SHAPE, model.question.bent() ? RateQuestion.QUADRATIC : RateQuestion.LINEAR);
        used.put(RateQuestion.TEMPERATURE, model.question.temperature() ? RateQuestion.ADJUSTED : RateQuestion.IGNORED);
        used.put(RateQuestion.POINTS, Integer.toString(model.question.points()));
        used.put(AskedRange.FROM, Figures.plain(curve.fromPct));
        used.put(AskedRange.TO, Figures.plain(curve.toPct));
        return used;
    }

    private Map<String, Object> facts(List<GuardFinding> found) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", model.question.points() == 1 ? "Laplace" : "adaptive Gauss-Hermite quadrature");
        facts.put("quadraturePoints", model.question.points());
        facts.put("logLikelihood", fit.logLikelihood());
        facts.put("akaike", fit.akaike());
        facts.put("naiveLogLikelihood", fit.naiveLogLikelihood());
        facts.put("pearson", model.pearson());
        facts.put("pearsonDf", model.pearsonDf());
        facts.put("made", model.pool.made());
        facts.put("trials", fit.attempts());
        facts.put("sessions", model.pool.sessions.size());
        facts.put("rooms", fit.clusters());
        facts.put("guards", found.stream().map(GuardFinding::facts).toList());
        return facts;
    }

    private List<Estimate> estimates() {
        List<Estimate> all = new ArrayList<>();
        String where = model.question.bent() ? " at 50 %RH" : "";
        BinomialEffect humidity = fit.coefficient(1);
        all.add(ratio("humidity.odds-ratio", humidity, "per 10 %RH", "of humidity" + where));
        double change = curve.changePct();
        all.add(new Estimate(
                "made.change",
                change,
                curve.changeErrorPct(),
                null,
                change - curve.changeReachPct(),
                change + curve.changeReachPct(),
                "percentage points",
                "change of the chance in an average room from " + rounded(curve.fromPct) + " to " + rounded(curve.toPct)
                        + " %RH"));
        all.add(odds("intercept", fit.coefficient(0), "log odds", "at 50 %RH" + at21()));
        all.add(odds("humidity", humidity, "log odds per 10 %RH", "change with humidity" + where));
        if (model.question.bent()) {
            all.add(odds("humidity.squared", fit.coefficient(2), "log odds per (10 %RH)²", "bend over humidity"));
        }
        if (model.question.temperature()) {
            BinomialEffect temperature = fit.coefficient(fit.coefficients() - 1);
            all.add(odds("temperature", temperature, "log odds per 5 K", "change with air temperature"));
            all.add(ratio("temperature.odds-ratio", temperature, "per 5 K", "of air temperature"));
        }
        return all;
    }

    private String at21() {
        return model.question.temperature() ? " and 21 °C" : "";
    }

    private static Estimate odds(String name, BinomialEffect effect, String unit, String meaning) {
        return new Estimate(
                name,
                effect.value(),
                effect.standardError(),
                null,
                effect.interval().lower(),
                effect.interval().upper(),
                unit,
                "log odds of going in, in an average room: " + meaning);
    }

    private static Estimate ratio(String name, BinomialEffect effect, String unit, String meaning) {
        return new Estimate(
                name,
                effect.oddsRatio(),
                effect.oddsRatio() * effect.standardError(),
                null,
                StrictMath.exp(effect.interval().lower()),
                StrictMath.exp(effect.interval().upper()),
                unit,
                "factor on the odds of going in, in an average room: effect " + meaning);
    }

    private List<RoomEffects> rooms() {
        Map<String, Long> sessions = new HashMap<>();
        model.pool.sessions.forEach(session -> sessions.merge(session.room(), 1L, Long::sum));
        return fit.modes().stream()
                .map(mode -> new RoomEffects(
                        mode.cluster(),
                        sessions.get(mode.cluster()),
                        mode.attempts(),
                        List.of(new Effect("intercept", mode.value(), mode.standardDeviation()))))
                .toList();
    }

    private String sentence() {
        double change = curve.changePct();
        double reach = curve.changeReachPct();
        String text = "From " + rounded(curve.fromPct) + " to " + rounded(curve.toPct)
                + " % relative humidity the chance to make shot " + model.pool.shot
                + " in an average room changes from "
                + Figures.fixed(curve.chancePct(curve.fromPct), 1) + " % to "
                + Figures.fixed(curve.chancePct(curve.toPct), 1) + " %, by " + Figures.fixed(change, 1)
                + " percentage points (95 % interval " + Figures.fixed(change - reach, 1) + " to "
                + Figures.fixed(change + reach, 1) + "): ";
        if (Math.abs(change) <= reach) {
            text += "no change that these data can tell from luck.";
        } else {
            text += change < 0 ? "it goes in less often when damp." : "it goes in more often when damp.";
        }
        return text + oddsSentence();
    }

    private String oddsSentence() {
        BinomialEffect humidity = fit.coefficient(1);
        return " Each 10 % more humidity" + (model.question.bent() ? ", at 50 %," : "") + " multiplies the odds by "
                + Figures.fixed(humidity.oddsRatio(), 2) + " ("
                + Figures.fixed(StrictMath.exp(humidity.interval().lower()), 2) + " to "
                + Figures.fixed(StrictMath.exp(humidity.interval().upper()), 2) + ").";
    }

    private static String rounded(double pct) {
        return Figures.plain(Math.rint(10 * pct) / 10);
    }
}
