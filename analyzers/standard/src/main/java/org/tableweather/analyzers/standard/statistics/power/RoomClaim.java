package org.tableweather.analyzers.standard.statistics.power;

/** Which rooms the planned test speaks for. */
public enum RoomClaim {
    /** Rooms in general: their slopes differ, and the rooms measured are a sample. Degrees of freedom: rooms − 1. */
    ANY_ROOM,
    /** These rooms, or slopes that are alike: session scatter alone judges the slope. */
    THESE_ROOMS
}
