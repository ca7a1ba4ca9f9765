package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.catalogue.AskedRange;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.FitFigures;
import org.tableweather.analyzers.standard.catalogue.PooledCurve;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/** Writes a fit of one outcome as an answer: figures, words, curve, rooms, and the outcomes beside it. */
final class KindAnswer {

    private final KindPool pool;
    private final KindQuestion question;
    private final NestedFit fit;
    private final PooledCurve curve;
    private final KindEstimates figures;
    private final boolean oneRoom;

    KindAnswer(KindPool pool, KindQuestion question, NestedFit fit) {
        this.pool = pool;
        this.question = question;
        this.fit = fit;
        curve = question.curve(pool, fit);
        figures = new KindEstimates(pool, question, fit, curve);
        oneRoom = pool.rooms.size() == 1;
    }

    /** The change of this outcome, to stand beside the answer for another. */
    Estimate besideAnother() {
        return figures.change(pool.outcome.estimate() + ".change");
    }

    /** The same question about the same shot and range of humidity. */
    KindQuestion sameCurve() {
        return question.ofShot(pool.shot, curve.range());
    }

    Analysis.Estimated write(List<Estimate> beside, List<String> more, List<String> references) {
        List<CurvePoint> points = curve.points();
        List<Estimate> estimates = new ArrayList<>(figures.estimates());
        estimates.addAll(beside);
        List<GuardFinding> found = BiasGuards.of(pool.guarded, pool.shot, pool.outcome.parameter());
        List<String> warnings = new ArrayList<>(new KindWarnings(pool, question, fit, curve).list());
        warnings.addAll(more);
        found.forEach(finding -> warnings.add(finding.words()));
        return new Analysis.Estimated(
                sentence(),
                parameters(),
                facts(found),
                estimates,
                FitFigures.variance(fit),
                points,
                FitFigures.rooms(fit, pool.rooms),
                List.of(curve.plot(points, axes())),
                warnings,
                BiasGuards.withSources(references, found));
    }

    private PooledCurve.Axes axes() {
        return new PooledCurve.Axes(
                PooledCurve.title(pool.outcome.noun(), "humidity", pool.shot),
                "relative humidity, %",
                pool.outcome.axis(),
                rhPct -> rhPct,
                h -> 50 + 10 * h);
    }

    private Map<String, String> parameters() {
        Map<String, String> used = new LinkedHashMap<>();
        used.put(KindQuestion.SHOT, pool.shot);
        used.put(KindQuestion.RESPONSE, pool.outcome.parameter());
        used.put(KindQuestion.SHAPE, question.bent() ? KindQuestion.QUADRATIC : KindQuestion.LINEAR);
        used.put(AskedRange.FROM, Figures.plain(curve.range().fromPct()));
        used.put(AskedRange.TO, Figures.plain(curve.range().toPct()));
        used.put(
                KindQuestion.COVARIATES,
                question.asked().stream().map(KindCovariate::parameter).collect(Collectors.joining(",")));
        return used;
    }

    private Map<String, Object> facts(List<GuardFinding> found) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", "REML");
        facts.put("criterion", fit.criterion());
        facts.put("converged", fit.converged());
        facts.put("evaluations", fit.evaluations());
        facts.put("degreesOfFreedom", "Satterthwaite");
        facts.put("trials", pool.usedTrials);
        facts.put("sessions", pool.usedSessions);
        facts.put("rooms", pool.rooms.size());
        facts.put("guards", found.stream().map(GuardFinding::facts).toList());
        return facts;
    }

    private String sentence() {
        Quantity change = curve.change();
        double reach = FitFigures.reach(change);
        String subject = oneRoom ? "In this one room, from " : "From ";
        String text = subject + curve.range().words()
                + " % relative humidity the " + pool.outcome.noun() + " changes by " + figure(change.value())
                + " (95 % interval " + figure(change.value() - reach) + " to " + figure(change.value() + reach) + "): ";
        if (Math.abs(change.value()) <= reach) {
            text += "no change that these data can tell from chance.";
        } else {
            text += (change.value() < 0 ? pool.outcome.falling() : pool.outcome.rising()) + ".";
        }
        return oneRoom ? text + " One room says nothing about others." : text + newRoomSentence();
    }

    private String newRoomSentence() {
        Quantity room = curve.changeInNewRoom();
        double reach = FitFigures.reach(room);
        return " In a room not yet measured it is expected between " + figure(room.value() - reach) + " and "
                + figure(room.value() + reach) + ".";
    }

    private String figure(double value) {
        return Figures.fixed(value, pool.outcome.decimals()) + pool.outcome.sign();
    }
}
