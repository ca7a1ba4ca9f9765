package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocol;
import org.tableweather.analyzers.standard.statistics.Moments;

/**
 * What is kept of a session for one kind of trial: per shot, the moments of its trials, apart for each pattern of measured
 * columns, so that outcome and covariates can be chosen later; and how the session was shot.
 *
 * @param parts ordered by shot
 * @param protocol of the session
 */
public record KindSummary(List<Part> parts, SessionProtocol protocol) {

    public KindSummary {
        parts = List.copyOf(parts);
    }

    /**
     * The trials of one shot.
     *
     * @param shot id of the shot
     * @param blocks ordered by pattern
     */
    public record Part(String shot, List<Block> blocks) {

        public Part {
            blocks = List.copyOf(blocks);
        }
    }

    /**
     * Trials that have the same columns measured.
     *
     * @param measured a bit for each column in the order of the definition: 1 humidity, 2 its square, 4 temperature, then
     *     covariates, then outcomes
     * @param moments of the measured columns, in the order of their bits
     */
    public record Block(int measured, Moments moments) {}
}
