package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/** What a reader must know before trusting the answer, in words. */
final class HumidityWarnings {

    private final HumidityPool pool;
    private final HumidityQuestion question;
    private final NestedFit fit;
    private final HumidityCurve curve;

    HumidityWarnings(HumidityPool pool, HumidityQuestion question, NestedFit fit, HumidityCurve curve) {
        this.pool = pool;
        this.question = question;
        this.fit = fit;
        this.curve = curve;
    }

    List<String> list() {
        List<String> warnings = new ArrayList<>(ofPool(pool, question));
        warnings.addAll(new FitWords(fit).cautions().list());
        warnings.addAll(ofMethod());
        int temperature = question.columns().temperature() - 1;
        warnings.addAll(new FitWords(fit)
                .dropped(question.columns().names())
                .freedom(curve.change().df())
                .reach(curve.range(), pool.lowestPct(), pool.highestPct())
                .temperatures(21 + 5 * pool.lowest(temperature), 21 + 5 * pool.highest(temperature))
                .list());
        return List.copyOf(warnings);
    }

    /** What is to be said of the data whether or not there is a fit. */
    static List<String> ofPool(HumidityPool pool, HumidityQuestion question) {
        long corrected = pool.traits.stream()
                .flatMap(List::stream)
                .filter(SessionTraits::corrected)
                .count();
        String needed = "their sessions leave unsaid, or put beyond its formulas, what the " + question.measure().noun
                + " or a covariate needs.";
        return new PoolWords("trial")
                .invented(pool.inventedSessions, pool.usedSessions)
                .corrected(corrected, pool.usedSessions)
                .chosen(question.shot(), pool.shot, pool.shots)
                .leftOut(pool.withoutResponse, "no " + question.response().parameter + ".")
                .leftOut(pool.withoutClimate, "humidity or temperature at the trial is not known.")
                .leftOut(pool.usedTrials > 0 ? pool.withoutTrait : 0, needed)
                .leftOut(pool.withoutCovariate, "a covariate that was asked for is missing.")
                .list();
    }

    private List<String> ofMethod() {
        List<String> warnings = new ArrayList<>();
        if (fit.cautions().contains(Caution.CURVE_STRAIGHT)) {
            warnings.add(
                    "The curve has no bend that these data can tell from chance: the spline is a straight line here.");
        }
        boolean singular = fit.cautions().contains(Caution.SESSION_ZERO)
                || fit.cautions().contains(Caution.ROOM_ZERO)
                || fit.cautions().contains(Caution.CORRELATION_AT_BOUND);
        if (question.kenwardRoger() && singular) {
            warnings.add(
                    "Kenward and Roger's method takes a variance at its bound for an unknown one: with this fit it is far"
                            + " too careful (it rejected a true null in 0.7 % of simulated pools of 8 rooms, not 5 %); compare with"
                            + " df_method = satterthwaite.");
        }
        return warnings;
    }
}
