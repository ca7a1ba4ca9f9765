package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/** Writes a fit of the pooled model as an answer: figures, words, curve, rooms. */
final class HumidityAnswer {

    private final HumidityPool pool;
    private final HumidityQuestion question;
    private final HumidityFit pooled;
    private final NestedFit fit;
    private final HumidityCurve curve;
    private final Response response;
    private final boolean oneRoom;

    HumidityAnswer(HumidityFit pooled) {
        this.pooled = pooled;
        pool = pooled.pool();
        question = pooled.question();
        fit = pooled.fit();
        response = question.response();
        curve = pooled.curve();
        oneRoom = pool.rooms.size() == 1;
    }

    Analysis.Estimated write(List<String> references) {
        List<CurvePoint> points = curve.points();
        List<HumidityPart> parts = parts();
        List<Estimate> estimates = estimates();
        List<Plot> plots = new ArrayList<>(List.of(curve.plot(points)));
        List<String> warnings = new ArrayList<>(new HumidityWarnings(pool, question, fit, curve).list());
        Map<String, Object> facts = fitFacts();
        String sentence = sentence();
        for (HumidityPart part : parts) {
            sentence += part.words();
            estimates.addAll(part.estimates());
            plots.addAll(part.plots());
            warnings.addAll(part.warnings());
            facts.putAll(part.facts());
        }
        List<GuardFinding> found = BiasGuards.of(pool.guarded, pool.shot, response.parameter);
        found.forEach(finding -> warnings.add(finding.words()));
        facts.put("guards", found.stream().map(GuardFinding::facts).toList());
        return new Analysis.Estimated(
                sentence,
                parameters(),
                facts,
                estimates,
                FitFigures.variance(fit),
                points,
                FitFigures.rooms(fit, pool.rooms),
                plots,
                warnings,
                BiasGuards.withSources(references, found));
    }

    private List<HumidityPart> parts() {
        return List.of(
                new HumidityWithinBetween(pooled).part(),
                new HumidityRobust(pooled).part(),
                new HumidityInstruments(pooled).part(),
                HumiditySubgroups.of(pooled),
                HumidityBootstrap.of(pooled),
                new HumidityDiagnosis(pooled).part());
    }

    private Map<String, String> parameters() {
        Map<String, String> used = new LinkedHashMap<>();
        used.put(HumidityQuestion.SHOT, pool.shot);
        used.put(HumidityQuestion.RESPONSE, response.parameter);
        used.put(HumidityQuestion.MEASURE, question.measure().parameter);
        used.put(
                HumidityQuestion.CURVE,
                question.columns().curved ? HumidityQuestion.SPLINE : HumidityQuestion.QUADRATIC);
        used.put(AskedRange.FROM, Figures.plain(curve.fromPct));
        used.put(AskedRange.TO, Figures.plain(curve.toPct));
        used.put(
                HumidityQuestion.COVARIATES,
                question.asked().stream().map(covariate -> covariate.parameter).collect(Collectors.joining(",")));
        used.put(
                HumidityQuestion.DF_METHOD,
                question.kenwardRoger() ? HumidityQuestion.KENWARD_ROGER : HumidityQuestion.SATTERTHWAITE);
        used.put(
                HumidityQuestion.SUBGROUP,
                question.subgroup().map(each -> each.parameter).orElse(HumidityQuestion.NO_SUBGROUP));
        used.put(HumidityQuestion.BOOTSTRAP, Integer.toString(question.bootstrap()));
        used.put(HumidityQuestion.SEED, Long.toString(question.seed()));
        return used;
    }

    private Map<String, Object> fitFacts() {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", "REML");
        facts.put("criterion", fit.criterion());
        facts.put("converged", fit.converged());
        facts.put("evaluations", fit.evaluations());
        facts.put("degreesOfFreedom", question.kenwardRoger() ? "Kenward-Roger" : "Satterthwaite");
        facts.put("trials", pool.usedTrials);
        facts.put("sessions", pool.usedSessions);
        facts.put("rooms", pool.rooms.size());
        if (question.columns().curved) {
            facts.put("curveDegreesOfFreedom", 1 + fit.effectiveDf(0));
        }
        return facts;
    }

    private String sentence() {
        Quantity change = curve.change();
        double reach = FitFigures.reach(change);
        String subject = oneRoom ? "In this one room, from " : "From ";
        String text = subject + curve.range().words()
                + " % relative humidity" + place() + " the " + response.noun + " changes by " + figure(change.value())
                + " (95 % interval " + figure(change.value() - reach) + " to " + figure(change.value() + reach) + "): ";
        if (Math.abs(change.value()) <= reach) {
            text += "no change that these data can tell from chance.";
        } else {
            text += (change.value() < 0 ? response.falling : response.rising) + ".";
        }
        return oneRoom ? text + " One room says nothing about others." : text + newRoomSentence(change);
    }

    private String newRoomSentence(Quantity change) {
        Quantity room = curve.changeInNewRoom();
        double reach = FitFigures.reach(room);
        return " In a room not yet measured it is expected between " + figure(change.value() - reach) + " and "
                + figure(change.value() + reach) + ".";
    }

    /** What the humidities of the curve are, where it is drawn over another measure. */
    private String place() {
        return switch (question.measure()) {
            case RELATIVE -> "";
            case AT_BED -> " at the bed";
            default -> " at 21 °C (" + curve.rangeInUnits() + " " + question.measure().noun + ")";
        };
    }

    private String figure(double value) {
        return Figures.fixed(value, response.decimals) + response.sign;
    }

    private List<Estimate> estimates() {
        List<Estimate> estimates = new ArrayList<>();
        HumidityMeasure measure = question.measure();
        HumidityColumns columns = question.columns();
        String place = oneRoom ? " in this room" : " in an average room";
        estimates.add(FitFigures.estimate(
                "intercept",
                fit.coefficient(0),
                response.unit,
                "mean " + response.noun + " at " + measure.at() + " and 21 °C" + place + atOrigins()));
        estimates.add(FitFigures.estimate(
                "humidity",
                columns.curved ? Optional.of(pooled.slope()) : fit.coefficient(1),
                pooled.slopeUnit(),
                pooled.slopeMeaning()));
        if (!columns.curved) {
            estimates.add(FitFigures.estimate(
                    "humidity.squared",
                    fit.coefficient(2),
                    response.per("per (" + measure.per().substring("per ".length()) + ")²"),
                    "bend of the mean " + response.noun + " over humidity: half the change of its slope "
                            + measure.per()));
        }
        estimates.add(FitFigures.estimate(
                "temperature",
                fit.coefficient(columns.temperature()),
                response.per("per 5 K"),
                "change of the mean " + response.noun + " with air temperature, from 21 °C"));
        addAsked(estimates);
        estimates.add(FitFigures.estimate(
                "humidity.change",
                curve.change(),
                response.unit,
                "change of the mean " + response.noun + " from " + curve.range().words() + " %RH" + place()));
        return estimates;
    }

    private void addAsked(List<Estimate> estimates) {
        for (int i = 0; i < question.asked().size(); i++) {
            Covariate covariate = question.asked().get(i);
            estimates.add(FitFigures.estimate(
                    covariate.estimate,
                    fit.coefficient(question.columns().firstAsked() + i),
                    response.per(covariate.per),
                    String.format(covariate.meaning, response.noun)));
        }
    }

    private String atOrigins() {
        return question.asked().stream()
                .map(covariate -> ", " + covariate.origin)
                .collect(Collectors.joining());
    }
}
