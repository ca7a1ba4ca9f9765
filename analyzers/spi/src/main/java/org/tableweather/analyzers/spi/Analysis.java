package org.tableweather.analyzers.spi;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** The answer of an analyzer: estimated, or declined with the reason. */
public sealed interface Analysis {

    /**
     * An answer with its uncertainty.
     *
     * @param sentence the answer in plain words, with figures and units
     * @param parameters the parameter values as used, with what was chosen from the data
     * @param fit how the numbers were found; keys as the analyzer documents them
     * @param estimates the figures that answer the question
     * @param variance how much varies between rooms, sessions, trials
     * @param curve the pooled curve, empty where there is none
     * @param rooms each room's share, empty where there is none
     * @param plots as data
     * @param warnings what a reader must know before trusting it
     * @param references keys of {@code references.bib}
     */
    record Estimated(
            String sentence,
            Map<String, String> parameters,
            Map<String, Object> fit,
            List<Estimate> estimates,
            List<VarianceComponent> variance,
            List<CurvePoint> curve,
            List<RoomEffects> rooms,
            List<Plot> plots,
            List<String> warnings,
            List<String> references)
            implements Analysis {

        public Estimated {
            parameters = Collections.unmodifiableMap(new LinkedHashMap<>(parameters));
            fit = Collections.unmodifiableMap(new LinkedHashMap<>(fit));
            estimates = List.copyOf(estimates);
            variance = List.copyOf(variance);
            curve = List.copyOf(curve);
            rooms = List.copyOf(rooms);
            plots = List.copyOf(plots);
            warnings = List.copyOf(warnings);
            references = List.copyOf(references);
        }
    }

    /**
     * No answer.
     *
     * @param reason why
     * @param detail with figures and what would help
     * @param parameters the parameter values as used
     * @param warnings what was noticed all the same
     * @param references keys of {@code references.bib}
     */
    record Declined(
            Reason reason,
            String detail,
            Map<String, String> parameters,
            List<String> warnings,
            List<String> references)
            implements Analysis {

        public Declined {
            parameters = Collections.unmodifiableMap(new LinkedHashMap<>(parameters));
            warnings = List.copyOf(warnings);
            references = List.copyOf(references);
        }
    }

    /** Why an analyzer declines. */
    enum Reason {
        /** No trials, sessions or rooms enough. */
        TOO_FEW_RECORDS,
        /** Data without the variation that the question needs. */
        DEGENERATE,
        /** The data are of another kind, or lack a column. */
        NOT_APPLICABLE,
        /** The computation did not settle. */
        NOT_CONVERGED;

        /** The name in JSON. */
        @JsonValue
        public String schemaName() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * One figure.
     *
     * @param name stable: {@code humidity}
     * @param value null when it cannot be estimated (dropped as collinear), then the rest is null also
     * @param standardError in the same unit
     * @param df degrees of freedom of its t distribution
     * @param lower of the 95 % interval
     * @param upper of the 95 % interval
     * @param unit in words: {@code deg per 10 %RH}
     * @param meaning in words
     */
    @JsonInclude(JsonInclude.Include.ALWAYS)
    @JsonPropertyOrder({"name", "value", "standardError", "df", "lower", "upper", "unit", "meaning"})
    record Estimate(
            String name,
            Double value,
            Double standardError,
            Double df,
            Double lower,
            Double upper,
            String unit,
            String meaning) {}

    /**
     * One variance component.
     *
     * @param name {@code room.intercept}
     * @param sd standard deviation, for all but correlations
     * @param value the value, for correlations; empty for an undefined one
     * @param note on the boundary, not separable ...
     */
    @JsonInclude(JsonInclude.Include.NON_ABSENT)
    record VarianceComponent(String name, OptionalDouble sd, OptionalDouble value, Optional<String> note) {}

    /**
     * One point of the pooled curve.
     *
     * @param rhPct relative humidity, %
     * @param mean of the response in an average room
     * @param lower of the 95 % band of the mean
     * @param upper of the 95 % band of the mean
     * @param newRoomLower of the 95 % band of a new room's true curve; null when the data say nothing about other rooms
     * @param newRoomUpper of the 95 % band of a new room's true curve; null with the lower
     */
    @JsonInclude(JsonInclude.Include.ALWAYS)
    record CurvePoint(
            double rhPct, double mean, double lower, double upper, Double newRoomLower, Double newRoomUpper) {}

    /**
     * What is particular to one room.
     *
     * @param room the room key
     * @param sessions with data
     * @param trials with data
     * @param effects shrunken departures from the average room
     */
    record RoomEffects(String room, long sessions, long trials, List<Effect> effects) {}

    /**
     * One departure.
     *
     * @param name {@code intercept}, {@code humidity}
     * @param value in the response's unit
     * @param standardError conditional standard deviation
     */
    record Effect(String name, double value, double standardError) {}

    /**
     * Handles either case.
     *
     * @param estimated what to do with an answer
     * @param declined what to do with none
     */
    default <R> R fold(
            Function<? super Estimated, ? extends R> estimated, Function<? super Declined, ? extends R> declined) {
        if (this instanceof Estimated answer) {
            return estimated.apply(answer);
        }
        return declined.apply((Declined) this);
    }
}
