package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/** What a reader must know before trusting the answer, in words. */
final class KindWarnings {

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

    private final KindPool pool;
    private final KindQuestion question;
    private final NestedFit fit;
    private final KindCurve curve;
    private final List<String> warnings = new ArrayList<>();

    KindWarnings(KindPool pool, KindQuestion question, NestedFit fit, KindCurve curve) {
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
        warnOfDropped();
        warnOfFreedom();
        warnOfReach();
        return List.copyOf(warnings);
    }

    /** What is to be said of the data whether or not there is a fit. */
    static List<String> ofPool(KindPool pool, KindQuestion question) {
        List<String> warnings = new ArrayList<>();
        if (pool.inventedSessions > 0) {
            warnings.add("Invented data: " + pool.inventedSessions + " of "
                    + Figures.counted(pool.usedSessions, "session")
                    + " are made up for demonstration; no figure here says anything about real tables.");
        }
        List<String> others = pool.usableByShot.keySet().stream()
                .filter(shot -> !shot.equals(pool.shot))
                .toList();
        if (question.shot().isEmpty() && !others.isEmpty()) {
            warnings.add("Shot " + pool.shot + " was taken because it has the most usable trials; others can be set by"
                    + " the parameter shot: " + Figures.listed(others) + ".");
        }
        if (pool.withoutOutcome > 0) {
            warnings.add(
                    Figures.counted(pool.withoutOutcome, "trial") + " left out: no " + pool.outcome.withNeeds() + ".");
        }
        if (pool.withoutClimate > 0) {
            warnings.add(Figures.counted(pool.withoutClimate, "trial")
                    + " left out: humidity or temperature at the trial is not known.");
        }
        if (pool.withoutCovariate > 0) {
            warnings.add(Figures.counted(pool.withoutCovariate, "trial")
                    + " left out: a covariate that was asked for is missing.");
        }
        return warnings;
    }

    private void warnOfDropped() {
        List<String> names = fit.dropped().stream()
                .map(column -> question.covariates().get(column - 1).estimate())
                .toList();
        if (!names.isEmpty()) {
            warnings.add("Left out because the columns before determine them: " + String.join(", ", names)
                    + "; their effect cannot be told from that of humidity in these data.");
        }
    }

    private void warnOfFreedom() {
        double df = curve.change().df();
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
        double coldest = pool.coldestC();
        double warmest = pool.warmestC();
        if (coldest > 21 || warmest < 21) {
            warnings.add("The curve is drawn at 21 °C, but sessions were held at " + Figures.fixed(coldest, 1) + " to "
                    + Figures.fixed(warmest, 1) + " °C.");
        }
    }
}
