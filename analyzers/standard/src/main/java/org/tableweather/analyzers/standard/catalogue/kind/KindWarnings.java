package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.standard.catalogue.FitWords;
import org.tableweather.analyzers.standard.catalogue.PoolWords;
import org.tableweather.analyzers.standard.catalogue.PooledCurve;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/** What a reader must know before trusting the answer, in words. */
final class KindWarnings {

    private final KindPool pool;
    private final KindQuestion question;
    private final NestedFit fit;
    private final PooledCurve curve;

    KindWarnings(KindPool pool, KindQuestion question, NestedFit fit, PooledCurve curve) {
        this.pool = pool;
        this.question = question;
        this.fit = fit;
        this.curve = curve;
    }

    List<String> list() {
        List<String> warnings = new ArrayList<>(ofPool(pool, question));
        warnings.addAll(new FitWords(fit)
                .cautions()
                .dropped(question.covariates().stream()
                        .map(KindCovariate::estimate)
                        .toList())
                .freedom(curve.change().df())
                .reach(curve.range(), pool.lowestPct(), pool.highestPct())
                .temperatures(pool.coldestC(), pool.warmestC())
                .list());
        return List.copyOf(warnings);
    }

    /** What is to be said of the data whether or not there is a fit. */
    static List<String> ofPool(KindPool pool, KindQuestion question) {
        return new PoolWords("trial")
                .invented(pool.inventedSessions, pool.usedSessions)
                .chosen(question.shot(), pool.shot, pool.shots)
                .leftOut(pool.withoutOutcome, "no " + pool.outcome.withNeeds() + ".")
                .leftOut(pool.withoutClimate, "humidity or temperature at the trial is not known.")
                .leftOut(pool.withoutCovariate, "a covariate that was asked for is missing.")
                .list();
    }
}
