package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.catalogue.FitFigures;
import org.tableweather.analyzers.standard.catalogue.PooledCurve;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/** The figures of a fit under the names that every pooled answer uses. */
final class KindEstimates {

    private final KindPool pool;
    private final KindQuestion question;
    private final NestedFit fit;
    private final PooledCurve curve;

    KindEstimates(KindPool pool, KindQuestion question, NestedFit fit, PooledCurve curve) {
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
        estimates.add(FitFigures.estimate(
                "intercept",
                fit.coefficient(0),
                outcome.unit(),
                "mean " + outcome.noun() + " at 50 %RH and 21 °C" + place + origins));
        List<KindCovariate> covariates = question.covariates();
        for (int i = 0; i < covariates.size(); i++) {
            KindCovariate covariate = covariates.get(i);
            estimates.add(FitFigures.estimate(
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
        return FitFigures.estimate(
                name,
                curve.change(),
                pool.outcome.unit(),
                "change of the mean " + pool.outcome.noun() + " from "
                        + curve.range().words() + " %RH");
    }
}
