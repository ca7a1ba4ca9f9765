package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import java.util.stream.IntStream;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocol;
import org.tableweather.analyzers.standard.statistics.Moments;

/**
 * What is kept of a session: per shot, the moments of its trials, apart for each pattern of measured columns. So the
 * response and the covariates can be chosen later: blocks with all columns that are needed merge exactly.
 *
 * @param parts ordered by shot
 * @param traits what is the same for all trials of the session
 * @param protocol how the session was shot, for the guards
 */
public record SessionMoments(List<Part> parts, SessionTraits traits, SessionProtocol protocol) {

    public SessionMoments {
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
     * @param measured a bit for each column: 1 humidity, 2 its square, 4 temperature, 8 approach angle, 16 approach speed,
     *     32 side spin, 64 final rebound angle, 128 landing offset, 256 speed kept, 512 roll ratio
     * @param moments of the measured columns, in the order of their bits
     */
    public record Block(int measured, Moments moments) {

        /** Whether all columns of these bits are measured. */
        public boolean measures(int bits) {
            return (measured & bits) == bits;
        }

        /**
         * The moments of some columns.
         *
         * @param bits one for each column, all measured, in the order that is wanted
         */
        public Moments select(int[] bits) {
            return moments.select(IntStream.of(bits)
                    .map(bit -> Integer.bitCount(measured & (bit - 1)))
                    .toArray());
        }
    }
}
