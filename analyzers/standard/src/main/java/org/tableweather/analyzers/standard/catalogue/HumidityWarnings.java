package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/** What a reader must know before trusting the answer, in words. */
final class HumidityWarnings {

    private static final Map<Caution, String> WORDS = new EnumMap<>(Map.of(
            Caution.SESSION_IN_RESIDUAL,
            "Every session has one usable trial: the residual holds session and trial scatter together.",
            Caution.SESSION_IN_ROOM,
            "No room has two sessions: the room variance holds room and session scatter together.",
            Caution.MEANS_ONLY,
            "The response never varies within a session: session means were analysed, the scatter of trials is unknown.",
            Caution.ONE_ROOM,
            "One room: how rooms differ is unknown, so there is no claim about other rooms and no band for a new one.",
            Caution.SLOPE_FROM_SPREAD,
            "No room was measured at two humidities: how the slope varies between rooms rests on unequal spread alone.",
            Caution.SESSION_ZERO,
            "The session variance is estimated as zero, on the boundary of what it can be; that is a result, no error.",
            Caution.ROOM_ZERO,
            "A room variance is estimated as zero, on the boundary of what it can be; that is a result, no error.",
            Caution.CORRELATION_AT_BOUND,
            "Room slopes and room intercepts cannot be told apart with these rooms: their correlation is on the boundary;"
                    + " the coefficients and their standard errors stand.",
            Caution.SEVERAL_OPTIMA,
            "The likelihood has more than one peak for these data; the highest found was taken."));

    private final HumidityPool pool;
    private final HumidityQuestion question;
    private final NestedFit fit;
    private final HumidityCurve curve;
    private final List<String> warnings = new ArrayList<>();

    HumidityWarnings(HumidityPool pool, HumidityQuestion question, NestedFit fit, HumidityCurve curve) {
        this.pool = pool;
        this.question = question;
        this.fit = fit;
        this.curve = curve;
    }

    List<String> list() {
        warnings.addAll(ofPool(pool, question));
        WORDS.forEach((caution, words) -> {
            if (fit.cautions().contains(caution)) {
                warnings.add(words);
            }
        });
        if (fit.cautions().contains(Caution.FEW_ROOMS)) {
            warnings.add(pool.rooms.size() + " rooms, fewer than 5: how much rooms differ is hardly known.");
        }
        warnOfMethod();
        warnOfDropped();
        warnOfFreedom();
        warnOfReach();
        return List.copyOf(warnings);
    }

    /** What is to be said of the data whether or not there is a fit. */
    static List<String> ofPool(HumidityPool pool, HumidityQuestion question) {
        List<String> warnings = new ArrayList<>();
        if (pool.inventedSessions > 0) {
            warnings.add("Invented data: " + pool.inventedSessions + " of "
                    + Figures.counted(pool.usedSessions, "session")
                    + " are made up for demonstration; no figure here says anything about real tables.");
        }
        long corrected = pool.traits.stream()
                .flatMap(List::stream)
                .filter(SessionTraits::corrected)
                .count();
        if (corrected > 0) {
            warnings.add("The climate of " + corrected + " of " + Figures.counted(pool.usedSessions, "session")
                    + " was corrected by the calibration of its instrument.");
        }
        List<String> others = pool.usableByShot.keySet().stream()
                .filter(shot -> !shot.equals(pool.shot))
                .toList();
        if (question.shot().isEmpty() && !others.isEmpty()) {
            warnings.add("Shot " + pool.shot + " was taken because it has the most usable trials; others can be set by"
                    + " the parameter shot: " + Figures.listed(others) + ".");
        }
        if (pool.withoutResponse > 0) {
            warnings.add(Figures.counted(pool.withoutResponse, "trial") + " left out: no "
                    + question.response().parameter + ".");
        }
        if (pool.withoutClimate > 0) {
            warnings.add(Figures.counted(pool.withoutClimate, "trial")
                    + " left out: humidity or temperature at the trial is not known.");
        }
        if (pool.withoutTrait > 0 && pool.usedTrials > 0) {
            warnings.add(Figures.counted(pool.withoutTrait, "trial")
                    + " left out: their sessions leave unsaid, or put beyond its formulas, what the "
                    + question.measure().noun + " or a covariate needs.");
        }
        if (pool.withoutCovariate > 0) {
            warnings.add(Figures.counted(pool.withoutCovariate, "trial")
                    + " left out: a covariate that was asked for is missing.");
        }
        return warnings;
    }

    private void warnOfMethod() {
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
    }

    private void warnOfDropped() {
        List<String> names = fit.dropped().stream()
                .map(column -> question.columns().names().get(column - 1))
                .toList();
        if (!names.isEmpty()) {
            warnings.add("Left out because the columns before determine them: " + String.join(", ", names)
                    + "; their effect cannot be told from that of humidity in these data.");
        }
    }

    private void warnOfFreedom() {
        double df = fit.contrast(curve.changeRow()).df();
        if (df < 4) {
            warnings.add("The change with humidity has " + Figures.fixed(Math.max(1, df), 1)
                    + " degrees of freedom, fewer than 4: its interval is unreliable.");
        }
    }

    private void warnOfReach() {
        double lowest = pool.lowestPct();
        double highest = pool.highestPct();
        if (curve.fromPct < lowest || curve.toPct > highest) {
            warnings.add("The curve reaches beyond the data: sessions were held at " + Figures.fixed(lowest, 1) + " to "
                    + Figures.fixed(highest, 1) + " %RH.");
        }
        double coldest = 21 + 5 * pool.lowest(question.columns().temperature() - 1);
        double warmest = 21 + 5 * pool.highest(question.columns().temperature() - 1);
        if (coldest > 21 || warmest < 21) {
            warnings.add("The curve is drawn at 21 °C, but sessions were held at " + Figures.fixed(coldest, 1) + " to "
                    + Figures.fixed(warmest, 1) + " °C.");
        }
    }
}
