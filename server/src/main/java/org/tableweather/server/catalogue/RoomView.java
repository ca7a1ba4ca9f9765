package org.tableweather.server.catalogue;

import java.util.List;
import java.util.Optional;

/**
 * A room as the public sees it.
 *
 * @param key its name over all contributions
 * @param name display name
 * @param country ISO 3166-1 alpha-2
 * @param latitude degrees north, rounded to 0.1
 * @param longitude degrees east, rounded to 0.1
 * @param altitudeM metres above sea level
 * @param climateControl what heats, cools, humidifies or dries it
 * @param sessions published sessions that pass the filter
 * @param trials attempts in them
 * @param invented whether any of them is made up for demonstration
 */
record RoomView(
        String key,
        Optional<String> name,
        Optional<String> country,
        Optional<Double> latitude,
        Optional<Double> longitude,
        Optional<Double> altitudeM,
        List<String> climateControl,
        long sessions,
        long trials,
        boolean invented) {

    static final List<String> CSV_HEADER = List.of(
            "key",
            "name",
            "country",
            "latitude",
            "longitude",
            "altitude_m",
            "climate_control",
            "sessions",
            "trials",
            "invented");

    List<String> csv() {
        return List.of(
                key,
                name.orElse(""),
                country.orElse(""),
                latitude.map(String::valueOf).orElse(""),
                longitude.map(String::valueOf).orElse(""),
                altitudeM.map(String::valueOf).orElse(""),
                String.join("; ", climateControl),
                Long.toString(sessions),
                Long.toString(trials),
                Boolean.toString(invented));
    }
}
