package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * Linear mixed model with sessions nested in rooms:
 *
 * <pre>
 * y = x'b + z'u[room] + w[session] + e,   u ~ N(0, Σ),  w ~ N(0, v),  e ~ N(0, s²)
 * </pre>
 *
 * <p>x is the constant and all covariates, z some of them. Immutable options; the cost of a fit is in the number of
 * sessions, whatever the number of trials. Columns are counted with the constant as 0.
 *
 * @param method the likelihood
 * @param covariance of the room effects
 * @param sessions whether sessions have an effect of their own
 * @param random columns with a room effect; 0 is the constant
 * @param smooths groups of columns whose coefficients are drawn together, {@code b ~ N(0, τ² I)}: the wiggles of a
 *     penalised curve; the last covariates, ascending
 * @source Laird1982
 * @source Patterson1971
 */
public record NestedModel(
        Method method, Covariance covariance, Sessions sessions, List<Integer> random, List<List<Integer>> smooths) {

    /**
     * Copies.
     *
     * @throws IllegalArgumentException for smooths under the full likelihood
     */
    public NestedModel {
        random = List.copyOf(random);
        smooths = smooths.stream().map(List::copyOf).toList();
        if (method == Method.ML && !smooths.isEmpty()) {
            throw new IllegalArgumentException("a penalised curve needs REML, got ML: drop the smooths or use REML");
        }
    }

    /** Which likelihood is at its maximum. */
    public enum Method {
        /** Restricted: variances free of the bias from estimating b. */
        REML,
        /** Full: for comparing models that differ in x. */
        ML
    }

    /** Which covariances of room effects are allowed. */
    public enum Covariance {
        /** Any positive semidefinite Σ. */
        FREE,
        /** Diagonal Σ: depends on the origin of the covariates. */
        DIAGONAL
    }

    /** Whether sessions have an effect of their own. */
    public enum Sessions {
        /** w[session] is in the model. */
        VARYING,
        /** It is not. */
        ALIKE
    }

    /** REML, a room intercept, a session intercept. */
    public static NestedModel withDefaults() {
        return new NestedModel(Method.REML, Covariance.FREE, Sessions.VARYING, List.of(0), List.of());
    }

    /** The same with this likelihood. */
    public NestedModel with(Method other) {
        return new NestedModel(other, covariance, sessions, random, smooths);
    }

    /** The same with this covariance of the room effects. */
    public NestedModel with(Covariance other) {
        return new NestedModel(method, other, sessions, random, smooths);
    }

    /** The same with or without a session effect. */
    public NestedModel with(Sessions other) {
        return new NestedModel(method, covariance, other, random, smooths);
    }

    /** The same with a room effect of these columns, ascending. */
    public NestedModel withRandom(Integer... columns) {
        return new NestedModel(method, covariance, sessions, Arrays.asList(columns), smooths);
    }

    /**
     * The same with one more group of columns of a penalised curve.
     *
     * @param columns behind all others, ascending
     * @source Wood2017
     */
    public NestedModel withSmooth(List<Integer> columns) {
        return new NestedModel(
                method,
                covariance,
                sessions,
                random,
                Stream.concat(smooths.stream(), Stream.of(columns)).toList());
    }

    /**
     * Fits the model.
     *
     * @param rooms each with its sessions; the response is the last column; rooms and sessions without rows are left out
     * @return the fit, or why there is none
     */
    public NestedOutcome fit(List<RoomSessions> rooms) {
        return new NestedPreparation(this, rooms).fit();
    }

    /**
     * Fits the model where its variances are expected near those of another fit with the same room effects, as with the same
     * rooms and other covariates. In a pool of many rooms the search begins there; in a small one, where there may be several
     * optima, it begins where it always does.
     *
     * @param near what to begin from
     */
    public NestedOutcome fit(List<RoomSessions> rooms, NestedFit near) {
        return new NestedPreparation(this, rooms).near(near).fit();
    }
}
