package org.tableweather.analyzers.standard.statistics.measurement;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Takes a known instrument error out of a slope: {@code β = S_wy / (S_ww − E)}, with S over the measured covariate w and E
 * what the errors add to {@code S_ww} on average; {@code 1 − E/S_ww} is the reliability. Sessions count alike, because session
 * scatter outweighs that of trials.
 *
 * @param kind which differences the slope rests on
 * @param error of the instruments, taken as known
 * @param coverage of the interval
 * @source Fuller1987
 * @source Carroll2006
 */
public record RegressionCalibration(SlopeKind kind, InstrumentError error, Coverage coverage) {

    private static final double LEAST_RELIABILITY = 0.1;
    private static final int LEAST_ROOMS = 3;

    /** For this slope and error, 95 %. */
    public static RegressionCalibration of(SlopeKind kind, InstrumentError error) {
        return new RegressionCalibration(kind, error, Coverage.DEFAULT);
    }

    /** The same at another coverage. */
    public RegressionCalibration with(Coverage other) {
        return new RegressionCalibration(kind, error, other);
    }

    /**
     * Corrects the slope.
     *
     * @param sessions refused below 3 rooms, when the covariate does not vary in this way, with or without any one room, and
     *     when less than a tenth of its spread would be true
     */
    public Answer<CorrectedSlope> correct(List<SessionPoint> sessions) {
        Set<String> rooms = new LinkedHashSet<>();
        sessions.forEach(session -> rooms.add(session.room()));
        if (rooms.size() < LEAST_ROOMS) {
            return Answer.refuse(
                    Cause.TOO_FEW, rooms.size() + " rooms: " + LEAST_ROOMS + " are needed to judge the slope's error");
        }
        return estimate(sessions).then(whole -> jackknife(sessions, rooms, whole));
    }

    private record Estimate(double naive, double reliability) {
        double corrected() {
            return naive / reliability;
        }
    }

    private Answer<Estimate> estimate(List<SessionPoint> sessions) {
        SlopeSums sums = new SlopeSums(sessions);
        double squares = sums.squares(kind);
        double scale = sessions.stream()
                .mapToDouble(session -> session.measured() * session.measured())
                .sum();
        if (squares <= 1e-12 * scale) {
            return Answer.refuse(
                    Cause.NO_VARIATION, "the measured covariate does not vary " + kind + ": hold other climates");
        }
        double reliability = 1 - sums.errorSquares(kind, error) / squares;
        if (reliability < LEAST_RELIABILITY) {
            return Answer.refuse(
                    Cause.ERROR_SWAMPS,
                    "of the measured spread only " + Math.max(0, reliability)
                            + " would be true: calibrate the instruments, or hold climates further apart");
        }
        return Answer.of(new Estimate(sums.products(kind) / squares, reliability));
    }

    private Answer<CorrectedSlope> jackknife(List<SessionPoint> sessions, Set<String> rooms, Estimate whole) {
        List<Estimate> without = new ArrayList<>();
        for (String room : rooms) {
            List<SessionPoint> others = sessions.stream()
                    .filter(session -> !session.room().equals(room))
                    .toList();
            Answer<Estimate> estimate = estimate(others);
            if (estimate instanceof Answer.Refused<Estimate> refused) {
                return new Answer.Refused<>(refused.refusal());
            }
            without.add(estimate.orThrow());
        }
        int df = rooms.size() - 1;
        double error = spread(without.stream().mapToDouble(Estimate::corrected).toArray());
        return Answer.of(new CorrectedSlope(
                whole.naive(),
                spread(without.stream().mapToDouble(Estimate::naive).toArray()),
                whole.reliability(),
                whole.corrected(),
                error,
                df,
                Interval.around(whole.corrected(), coverage.halfWidth(df) * error)));
    }

    /** {@code √((J − 1)/J Σ (β₍ⱼ₎ − mean)²)}. */
    private static double spread(double[] estimates) {
        double mean = 0;
        for (double estimate : estimates) {
            mean += estimate / estimates.length;
        }
        double squares = 0;
        for (double estimate : estimates) {
            squares += (estimate - mean) * (estimate - mean);
        }
        return Math.sqrt(squares * (estimates.length - 1) / estimates.length);
    }
}
