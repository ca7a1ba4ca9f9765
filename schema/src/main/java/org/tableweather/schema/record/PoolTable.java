package org.tableweather.schema.record;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A table in a room.
 *
 * @param id unique in the contribution
 * @param room id of its room
 * @param playingLengthMm nose to nose along, mm
 * @param playingWidthMm nose to nose across, mm
 * @param heated whether the bed is heated
 * @param cloth what covers the bed
 * @param cushion rail rubber and its facing cloth
 */
public record PoolTable(
        String id,
        String room,
        OptionalDouble playingLengthMm,
        OptionalDouble playingWidthMm,
        Optional<Boolean> heated,
        Optional<Cloth> cloth,
        Optional<Cushion> cushion) {}
