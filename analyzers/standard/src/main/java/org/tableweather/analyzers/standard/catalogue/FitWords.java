package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/** What a reader must know of a fit of the pooled model before trusting it, in words. */
public final class FitWords {

    private static final Map<Caution, String> CAUTIONS = new EnumMap<>(Map.of(
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

    private final NestedFit fit;
    private final List<String> words = new ArrayList<>();

    /** None yet, of this fit. */
    public FitWords(NestedFit fit) {
        this.fit = fit;
    }

    /** Of the estimator's cautions. */
    public FitWords cautions() {
        CAUTIONS.forEach((caution, told) -> {
            if (fit.cautions().contains(caution)) {
                words.add(told);
            }
        });
        if (fit.cautions().contains(Caution.FEW_ROOMS)) {
            words.add(fit.rooms().size() + " rooms, fewer than 5: how much rooms differ is hardly known.");
        }
        return this;
    }

    /**
     * Of columns that others determine.
     *
     * @param names of the columns, the constant left out
     */
    public FitWords dropped(List<String> names) {
        if (!fit.dropped().isEmpty()) {
            List<String> gone =
                    fit.dropped().stream().map(column -> names.get(column - 1)).toList();
            words.add("Left out because the columns before determine them: " + String.join(", ", gone)
                    + "; their effect cannot be told from that of humidity in these data.");
        }
        return this;
    }

    /** Of few degrees of freedom of the change with humidity. */
    public FitWords freedom(double df) {
        if (df < 4) {
            words.add("The change with humidity has " + Figures.fixed(Math.max(1, df), 1)
                    + " degrees of freedom, fewer than 4: its interval is unreliable.");
        }
        return this;
    }

    /**
     * Of a curve that leaves the sessions' humidities.
     *
     * @param lowestPct of the sessions, %RH
     * @param highestPct of the sessions, %RH
     */
    public FitWords reach(CurveRange curve, double lowestPct, double highestPct) {
        if (curve.fromPct() < lowestPct || curve.toPct() > highestPct) {
            words.add("The curve reaches beyond the data: sessions were held at " + Figures.fixed(lowestPct, 1) + " to "
                    + Figures.fixed(highestPct, 1) + " %RH.");
        }
        return this;
    }

    /** Of a curve at 21 °C where no session was: lowest and highest of the sessions, °C. */
    public FitWords temperatures(double coldestC, double warmestC) {
        if (coldestC > 21 || warmestC < 21) {
            words.add("The curve is drawn at 21 °C, but sessions were held at " + Figures.fixed(coldestC, 1) + " to "
                    + Figures.fixed(warmestC, 1) + " °C.");
        }
        return this;
    }

    /** All so far. */
    public List<String> list() {
        return List.copyOf(words);
    }
}
