package org.tableweather.analyzers.standard.catalogue.path;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary;

/**
 * What is kept of a session: the pairs that the rail is fitted to, the landings that a prediction is held against, and the table.
 *
 * @param rail pairs of approach and rebound
 * @param moments for the purely statistical prediction beside it
 * @param rolling what roll-outs say of the cloth
 * @param landings ordered by shot
 * @param lengthM playing length, m; NaN when not stated
 * @param widthM playing width, m
 * @param ballM diameter of the ball, m
 */
public record PathSummary(
        RailSummary rail,
        SessionMoments moments,
        Rolling rolling,
        List<Landings> landings,
        double lengthM,
        double widthM,
        double ballM) {

    public PathSummary {
        landings = List.copyOf(landings);
    }

    /**
     * Where attempts at one shot came down.
     *
     * @param shot its id
     * @param rhPct mean humidity of these attempts, %
     * @param tempC their mean temperature, °C
     * @param offsetsDia each landing, diamonds from the shot's target, in the order of the trials
     */
    public record Landings(String shot, double rhPct, double tempC, List<Double> offsetsDia) {

        public Landings {
            offsetsDia = List.copyOf(offsetsDia);
        }

        double meanDia() {
            return offsetsDia.stream().mapToDouble(each -> each).sum() / offsetsDia.size();
        }

        /** Squares about the mean. */
        double squares() {
            double mean = meanDia();
            return offsetsDia.stream()
                    .mapToDouble(each -> (each - mean) * (each - mean))
                    .sum();
        }
    }
}
