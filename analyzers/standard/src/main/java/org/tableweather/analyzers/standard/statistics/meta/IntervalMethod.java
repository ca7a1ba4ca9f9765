package org.tableweather.analyzers.standard.statistics.meta;

/** How the interval of a pooled effect is made. */
public enum IntervalMethod {
    /** Normal quantile, variance {@code (X'WX)⁻¹}: too narrow with few rooms. */
    NORMAL,
    /**
     * Student's t on k − p degrees of freedom, the variance scaled by {@code y'Py / (k − p)}.
     *
     * @source Hartung2001
     * @source Sidik2002
     */
    HARTUNG_KNAPP,
    /** The same with the scale kept at 1 or above, so that rooms that agree by luck do not narrow it. */
    HARTUNG_KNAPP_FLOORED
}
