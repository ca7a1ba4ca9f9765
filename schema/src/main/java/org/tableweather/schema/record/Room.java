package org.tableweather.schema.record;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A hall or home room.
 *
 * @param id unique in the contribution
 * @param name display name
 * @param country ISO 3166-1 alpha-2
 * @param latitude degrees north; published rounded to 0.1°
 * @param longitude degrees east; published rounded to 0.1°
 * @param altitudeM metres above sea level
 * @param climateControl what heats, cools, humidifies or dries the room
 */
public record Room(
        String id,
        Optional<String> name,
        Optional<String> country,
        OptionalDouble latitude,
        OptionalDouble longitude,
        OptionalDouble altitudeM,
        List<String> climateControl) {

    public Room {
        climateControl = climateControl == null ? List.of() : List.copyOf(climateControl);
    }
}
