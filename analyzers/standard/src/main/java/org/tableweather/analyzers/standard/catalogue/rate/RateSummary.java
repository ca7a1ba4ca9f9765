package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocol;

/**
 * What is kept of a session: per shot, how many attempts went in and how many were tried at each climate; and how the session
 * was shot. Counts are whole numbers, so summaries merge without loss.
 *
 * @param parts ordered by shot
 * @param protocol of the session
 */
public record RateSummary(List<Part> parts, SessionProtocol protocol) {

    public RateSummary {
        parts = List.copyOf(parts);
    }

    /**
     * The attempts of one shot.
     *
     * @param shot id of the shot
     * @param cells ordered by humidity, then temperature
     * @param withoutClimate attempts stated as made or missed, of unknown humidity or temperature
     * @param notStated attempts that do not say whether they went in
     */
    public record Part(String shot, List<Cell> cells, long withoutClimate, long notStated) {

        public Part {
            cells = List.copyOf(cells);
        }

        /** Attempts with a climate. */
        long tried() {
            return cells.stream().mapToLong(Cell::tried).sum();
        }
    }

    /**
     * Attempts at one climate.
     *
     * @param rhTenths relative humidity in steps of 0.1 %, a fraction of what any hygrometer can tell
     * @param tempTenths temperature in steps of 0.1 °C
     * @param made how many went in
     * @param tried how many there were
     */
    public record Cell(int rhTenths, int tempTenths, long made, long tried) {

        /** {@code h = (RH − 50 %) / 10 %}. */
        double h() {
            return (rhTenths - 500) / 100.0;
        }

        /** {@code t = (T − 21 °C) / 5 K}. */
        double t() {
            return (tempTenths - 210) / 50.0;
        }
    }
}
