package org.tableweather.analyzers.standard.statistics;

/** What a reader of a nested fit must know. */
public enum Caution {
    /** Every session has one trial: the residual holds session and trial scatter together. */
    SESSION_IN_RESIDUAL,
    /** No room has two sessions: the room variance holds room and session scatter together. */
    SESSION_IN_ROOM,
    /** One trial in each room: the residual holds room, session and trial scatter together. */
    ROOM_IN_RESIDUAL,
    /** The response never varies within a session: session means were analysed. */
    MEANS_ONLY,
    /** One room: nothing is known about how rooms differ. */
    ONE_ROOM,
    /** Fewer than five rooms: the variances between rooms are hardly known. */
    FEW_ROOMS,
    /** The slope's variance rests on unequal spread between rooms alone: no room saw two settings. */
    SLOPE_FROM_SPREAD,
    /** The session variance is estimated as zero. */
    SESSION_ZERO,
    /** A room variance is estimated as zero. */
    ROOM_ZERO,
    /** The room correlation is at −1 or 1: slope and intercept variation cannot be told apart with these rooms. */
    CORRELATION_AT_BOUND,
    /** The penalised curve is a straight line: its wiggles have no variance. */
    CURVE_STRAIGHT,
    /** Columns were left out because the others determine them. */
    COLUMNS_DROPPED,
    /** Different starts ended in different optima; the best was kept. */
    SEVERAL_OPTIMA,
    /** The search for the optimum did not settle. */
    NOT_CONVERGED
}
