package org.tableweather.analyzers.standard.statistics.measurement;

/** Which differences between sessions a slope rests on. */
public enum SlopeKind {
    /** Between sessions of one room: an instrument's offset cancels. */
    WITHIN_ROOMS,
    /** Between rooms' means: every offset enters. */
    BETWEEN_ROOMS,
    /** Both together, rooms ignored. */
    OVER_ALL
}
