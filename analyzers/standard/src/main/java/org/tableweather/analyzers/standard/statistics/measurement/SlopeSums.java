package org.tableweather.analyzers.standard.statistics.measurement;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Sums of squares and products about room means and of room means, and what errors add to the squares: with M the projection
 * that belongs to the slope and Z the instruments' sessions, {@code E[e'Me] = σ_u² tr M + σ_o² tr Z'MZ}.
 */
final class SlopeSums {

    private final Centred overAll = new Centred();
    private final Map<String, Centred> rooms = new LinkedHashMap<>();
    private final Map<String, Map<String, Integer>> instruments = new LinkedHashMap<>();

    SlopeSums(List<SessionPoint> sessions) {
        for (SessionPoint session : sessions) {
            overAll.add(session);
            rooms.computeIfAbsent(session.room(), room -> new Centred()).add(session);
            instruments
                    .computeIfAbsent(session.instrument(), instrument -> new LinkedHashMap<>())
                    .merge(session.room(), 1, Integer::sum);
        }
    }

    /** {@code Σ (w − w̄)²} of the kind. */
    double squares(SlopeKind kind) {
        double within =
                rooms.values().stream().mapToDouble(room -> room.squares).sum();
        return pick(kind, within, overAll.squares);
    }

    /** {@code Σ (w − w̄)(y − ȳ)} of the kind. */
    double products(SlopeKind kind) {
        double within =
                rooms.values().stream().mapToDouble(room -> room.products).sum();
        return pick(kind, within, overAll.products);
    }

    /** What the errors add to the squares, on average. */
    double errorSquares(SlopeKind kind, InstrumentError error) {
        double readings = pick(kind, overAll.n - rooms.size(), overAll.n - 1);
        double within = 0;
        double total = 0;
        for (Map<String, Integer> byRoom : instruments.values()) {
            double sessions = 0;
            for (Map.Entry<String, Integer> share : byRoom.entrySet()) {
                double count = share.getValue();
                sessions += count;
                within += count - count * count / rooms.get(share.getKey()).n;
            }
            total += sessions - sessions * sessions / overAll.n;
        }
        return error.readingSd() * error.readingSd() * readings
                + error.offsetSd() * error.offsetSd() * pick(kind, within, total);
    }

    private static double pick(SlopeKind kind, double within, double overAll) {
        return switch (kind) {
            case WITHIN_ROOMS -> within;
            case BETWEEN_ROOMS -> overAll - within;
            case OVER_ALL -> overAll;
        };
    }

    private static final class Centred {

        private double n;
        private double measured;
        private double response;
        private double squares;
        private double products;

        private void add(SessionPoint session) {
            n++;
            double apart = session.measured() - measured;
            measured += apart / n;
            squares += apart * (session.measured() - measured);
            response += (session.response() - response) / n;
            products += apart * (session.response() - response);
        }
    }
}
