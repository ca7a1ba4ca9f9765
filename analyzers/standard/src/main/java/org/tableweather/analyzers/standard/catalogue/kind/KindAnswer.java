package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/** Writes a fit of one outcome as an answer: figures, words, curve, rooms, and the outcomes beside it. */
final class KindAnswer {

    private final KindPool pool;
    private final KindQuestion question;
    private final NestedFit fit;
    private final KindCurve curve;
    private final KindEstimates figures;
    private final boolean oneRoom;

    KindAnswer(KindPool pool, KindQuestion question, NestedFit fit) {
        this.pool = pool;
        this.question = question;
        this.fit = fit;
        curve = new KindCurve(pool, question, fit);
        figures = new KindEstimates(pool, question, fit, curve);
        oneRoom = pool.rooms.size() == 1;
    }

    /** The change of this outcome, to stand beside the answer for another. */
    Estimate besideAnother() {
        return figures.change(pool.outcome.estimate() + ".change");
    }

    /** The same question about the same shot and range of humidity. */
    KindQuestion sameCurve() {
        return question.ofShot(pool.shot, curve.fromPct, curve.toPct);
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
                figures.variance(),
                points,
                figures.rooms(),
                List.of(curve.plot(points)),
                warnings,
                BiasGuards.withSources(references, found));
    }

    private Map<String, String> parameters() {
        Map<String, String> used = new LinkedHashMap<>();
        used.put(KindQuestion.SHOT, pool.shot);
        used.put(KindQuestion.RESPONSE, pool.outcome.parameter());
        used.put(KindQuestion.SHAPE, question.bent() ? KindQuestion.QUADRATIC : KindQuestion.LINEAR);
        used.put(KindQuestion.FROM, Figures.plain(curve.fromPct));
        used.put(KindQuestion.TO, Figures.plain(curve.toPct));
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
        double reach = KindCurve.reach(change);
        String subject = oneRoom ? "In this one room, from " : "From ";
        String text = subject + KindEstimates.round(curve.fromPct) + " to " + KindEstimates.round(curve.toPct)
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
        double reach = KindCurve.reach(room);
        return " In a room not yet measured it is expected between " + figure(room.value() - reach) + " and "
                + figure(room.value() + reach) + ".";
    }

    private String figure(double value) {
        return Figures.fixed(value, pool.outcome.decimals()) + pool.outcome.sign();
    }
}
