package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.meta.IntervalMethod;
import org.tableweather.analyzers.standard.statistics.meta.MetaAnalysis.Omission;
import org.tableweather.analyzers.standard.statistics.meta.MetaFit;
import org.tableweather.analyzers.standard.statistics.meta.SmallStudyAsymmetry;

/** What a reader must know of slopes room by room, each with what would help. */
final class SlopeWarnings {

    /** Below this the regression on standard errors sees little. */
    private static final int ROOMS_FOR_ASYMMETRY = 10;

    private final RoomPool pool;
    private final SlopeQuestion question;
    private final SlopeStage stage;
    private final MetaFit fit;
    private final Optional<SmallStudyAsymmetry.Result> asymmetry;
    private final Omissions omissions;
    private final Response response;
    private final List<String> warnings = new ArrayList<>();

    SlopeWarnings(
            RoomPool pool,
            SlopeQuestion question,
            SlopeStage stage,
            MetaFit fit,
            Optional<SmallStudyAsymmetry.Result> asymmetry,
            Omissions omissions) {
        this.pool = pool;
        this.question = question;
        this.stage = stage;
        this.fit = fit;
        this.asymmetry = asymmetry;
        this.omissions = omissions;
        response = question.response();
    }

    List<String> list() {
        warnings.addAll(pool.warnings());
        warnOfLeftOut();
        if (fit.studies() < 5) {
            warnings.add(
                    fit.studies() + " rooms, fewer than 5: how much rooms differ is hardly known, and the interval of"
                            + " the mean is wide; add rooms rather than trials.");
        }
        warnOfZero();
        warnOfAsymmetry();
        warnOfOneRoom();
        return List.copyOf(warnings);
    }

    private void warnOfLeftOut() {
        if (!stage.narrow.isEmpty()) {
            warnings.add("No slope of their own, with fewer than "
                    + (question.shared() ? 2 : SlopeStage.LEAST_OWN_SESSIONS) + " sessions or less than "
                    + Figures.plain(SlopeStage.LEAST_RANGE_PCT) + " %RH between them: " + Figures.listed(stage.narrow)
                    + "; hold sessions there at other humidities.");
        }
        if (!stage.exact.isEmpty()) {
            warnings.add("Left out because their session means lie on a line to rounding: "
                    + Figures.listed(stage.exact) + "; check that the outcomes are measured, not computed.");
        }
    }

    private void warnOfZero() {
        if (fit.heterogeneity().tauSquared() > 0) {
            return;
        }
        Interval floored = question.analysis()
                .with(IntervalMethod.HARTUNG_KNAPP_FLOORED)
                .fit(stage.effects())
                .orThrow()
                .mean()
                .interval();
        warnings.add(
                "The variance between rooms is estimated as zero, on the boundary of what it can be; that is a result,"
                        + " no error, and no proof that rooms are alike.");
        if (floored.width() > fit.mean().interval().width()) {
            warnings.add(
                    "The slopes agree more closely than their errors let expect, which narrows the interval of the mean:"
                            + " a careful reader takes " + figure(floored.lower()) + " to " + figure(floored.upper())
                            + ", and looks for rooms that copy each other.");
        }
    }

    private void warnOfAsymmetry() {
        boolean uneven = asymmetry.isPresent() && asymmetry.get().slope().pValue() < 0.1;
        if (uneven && fit.studies() >= ROOMS_FOR_ASYMMETRY) {
            warnings.add("The funnel is uneven (p = "
                    + Figures.fixed(asymmetry.get().slope().pValue(), 3)
                    + "): loosely measured rooms tell another slope than closely measured ones. Ask for the results that were"
                    + " not contributed, and compare with the closely measured rooms alone.");
        } else if (fit.studies() < ROOMS_FOR_ASYMMETRY) {
            warnings.add("Fewer than " + ROOMS_FOR_ASYMMETRY + " rooms: the test of an uneven funnel sees little;"
                    + " look at the plot, and do not take silence for evenness.");
        }
    }

    private void warnOfOneRoom() {
        if (omissions.tooMany()) {
            warnings.add("More than " + Omissions.MOST + " rooms: the mean without each room was not worked out.");
        }
        boolean clear = !fit.mean().interval().contains(0);
        List<String> turning = omissions.list().stream()
                .filter(one -> one.without().mean().interval().contains(0) == clear)
                .map(Omission::label)
                .toList();
        if (!turning.isEmpty()) {
            warnings.add("Whether the mean slope can be told from zero hangs on one room: it changes without "
                    + Figures.listed(turning) + "; look at these first.");
        }
    }

    private String figure(double value) {
        return Figures.fixed(value, response.decimals) + response.sign;
    }
}
