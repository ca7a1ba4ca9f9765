package org.tableweather.analyzers.standard.statistics.meta;

/** How the variance τ² between rooms is estimated. */
public enum HeterogeneityMethod {
    /** τ² = 0: one true effect is assumed. */
    FIXED,
    /**
     * Moments: {@code τ² = max(0, (Q − (k − p)) / tr P)} at τ² = 0.
     *
     * @source DerSimonian1986
     */
    DERSIMONIAN_LAIRD,
    /**
     * Largest restricted likelihood.
     *
     * @source Viechtbauer2005
     */
    REML,
    /**
     * Largest likelihood; too small on average with few rooms.
     *
     * @source Viechtbauer2005
     */
    ML,
    /**
     * The τ² at which the generalised Q equals its degrees of freedom.
     *
     * @source Paule1982
     */
    PAULE_MANDEL
}
