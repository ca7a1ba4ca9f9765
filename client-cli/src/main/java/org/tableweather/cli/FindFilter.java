package org.tableweather.cli;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine.Option;

/** What to look for: the server's filters as options. Values are judged by the server, which knows what they may be. */
final class FindFilter {
    private final Map<String, String> filter = new LinkedHashMap<>();

    @Option(
            names = "--room",
            paramLabel = "ROOM",
            description = "In this room: its key, or its id where it is the only one.")
    private String room;

    @Option(names = "--query", paramLabel = "NAME", description = "By a saved query: NAME, or NAME@VERSION.")
    private void query(String name) {
        filter.put("query", name);
    }

    @Option(names = "--shot", paramLabel = "ID", description = "With this shot.")
    private void shot(String value) {
        filter.put("shot", value);
    }

    @Option(names = "--kind", paramLabel = "KIND", description = "With this kind of trial: rebound, bank, kick ...")
    private void kind(String value) {
        filter.put("kind", value);
    }

    @Option(names = "--country", paramLabel = "CODE", description = "In this country: NO, SE ...")
    private void country(String value) {
        filter.put("country", value);
    }

    @Option(
            names = "--contributor",
            paramLabel = "WHO",
            description = "From this contributor: ORCID iD, or the name where there is none.")
    private void contributor(String value) {
        filter.put("contributor", value);
    }

    @Option(names = "--from", paramLabel = "TIME", description = "Not before: 2026-01-12, or 2026-01-12T18:05:00Z.")
    private void from(String value) {
        filter.put("from", value);
    }

    @Option(names = "--to", paramLabel = "TIME", description = "Before.")
    private void to(String value) {
        filter.put("to", value);
    }

    @Option(
            names = "--severity-from",
            paramLabel = "WORD",
            description = "Checks found at least this: none, note, warn.")
    private void severityFrom(String value) {
        filter.put("severityFrom", value);
    }

    @Option(
            names = "--severity-to",
            paramLabel = "WORD",
            description = "Checks found nothing worse than this: none, note, warn.")
    private void severityTo(String value) {
        filter.put("severityTo", value);
    }

    @Option(names = "--temp-from", paramLabel = "C", description = "At least this temperature, deg C.")
    private void tempFrom(String value) {
        filter.put("tempFrom", value);
    }

    @Option(names = "--temp-to", paramLabel = "C", description = "At most this temperature, deg C.")
    private void tempTo(String value) {
        filter.put("tempTo", value);
    }

    @Option(names = "--rh-from", paramLabel = "PCT", description = "At least this relative humidity, %%.")
    private void rhFrom(String value) {
        filter.put("rhFrom", value);
    }

    @Option(names = "--rh-to", paramLabel = "PCT", description = "At most this relative humidity, %%.")
    private void rhTo(String value) {
        filter.put("rhTo", value);
    }

    @Option(
            names = "--absolute-humidity-from",
            paramLabel = "G",
            description = "At least this absolute humidity, g/m3.")
    private void absoluteHumidityFrom(String value) {
        filter.put("absoluteHumidityFrom", value);
    }

    @Option(names = "--absolute-humidity-to", paramLabel = "G", description = "At most this absolute humidity, g/m3.")
    private void absoluteHumidityTo(String value) {
        filter.put("absoluteHumidityTo", value);
    }

    @Option(names = "--dew-point-from", paramLabel = "C", description = "At least this dew point, deg C.")
    private void dewPointFrom(String value) {
        filter.put("dewPointFrom", value);
    }

    @Option(names = "--dew-point-to", paramLabel = "C", description = "At most this dew point, deg C.")
    private void dewPointTo(String value) {
        filter.put("dewPointTo", value);
    }

    @Option(names = "--vapour-pressure-from", paramLabel = "PA", description = "At least this vapour pressure, Pa.")
    private void vapourPressureFrom(String value) {
        filter.put("vapourPressureFrom", value);
    }

    @Option(names = "--vapour-pressure-to", paramLabel = "PA", description = "At most this vapour pressure, Pa.")
    private void vapourPressureTo(String value) {
        filter.put("vapourPressureTo", value);
    }

    @Option(
            names = "--mixing-ratio-from",
            paramLabel = "G",
            description = "At least this mixing ratio, g of water per kg of dry air.")
    private void mixingRatioFrom(String value) {
        filter.put("mixingRatioFrom", value);
    }

    @Option(
            names = "--mixing-ratio-to",
            paramLabel = "G",
            description = "At most this mixing ratio, g of water per kg of dry air.")
    private void mixingRatioTo(String value) {
        filter.put("mixingRatioTo", value);
    }

    @Option(
            names = "--cloth-regain-from",
            paramLabel = "PCT",
            description = "At least this estimated regain of the cloth, %% of dry mass.")
    private void clothRegainFrom(String value) {
        filter.put("clothRegainFrom", value);
    }

    @Option(
            names = "--cloth-regain-to",
            paramLabel = "PCT",
            description = "At most this estimated regain of the cloth, %% of dry mass.")
    private void clothRegainTo(String value) {
        filter.put("clothRegainTo", value);
    }

    @Option(
            names = "--bed-relative-humidity-from",
            paramLabel = "PCT",
            description = "At least this relative humidity at the bed, %%.")
    private void bedRelativeHumidityFrom(String value) {
        filter.put("bedRelativeHumidityFrom", value);
    }

    @Option(
            names = "--bed-relative-humidity-to",
            paramLabel = "PCT",
            description = "At most this relative humidity at the bed, %%.")
    private void bedRelativeHumidityTo(String value) {
        filter.put("bedRelativeHumidityTo", value);
    }

    @Option(
            names = "--playing-length-from",
            paramLabel = "MM",
            description = "At least this playing length of the table, mm.")
    private void playingLengthFrom(String value) {
        filter.put("playingLengthFrom", value);
    }

    @Option(
            names = "--playing-length-to",
            paramLabel = "MM",
            description = "At most this playing length of the table, mm.")
    private void playingLengthTo(String value) {
        filter.put("playingLengthTo", value);
    }

    @Option(names = "--wool-from", paramLabel = "PCT", description = "At least this wool in the cloth by mass, %%.")
    private void woolFrom(String value) {
        filter.put("woolFrom", value);
    }

    @Option(names = "--wool-to", paramLabel = "PCT", description = "At most this wool in the cloth by mass, %%.")
    private void woolTo(String value) {
        filter.put("woolTo", value);
    }

    @Option(names = "--cloth-age-from", paramLabel = "DAYS", description = "At least this age of the cloth, days.")
    private void clothAgeFrom(String value) {
        filter.put("clothAgeFrom", value);
    }

    @Option(names = "--cloth-age-to", paramLabel = "DAYS", description = "At most this age of the cloth, days.")
    private void clothAgeTo(String value) {
        filter.put("clothAgeTo", value);
    }

    /** The parameters of a query. */
    Map<String, String> parameters(ServerClient server) throws IOException {
        Map<String, String> parameters = new LinkedHashMap<>(filter);
        if (room != null) {
            parameters.put("room", RoomKey.of(room, server));
        }
        return parameters;
    }
}
