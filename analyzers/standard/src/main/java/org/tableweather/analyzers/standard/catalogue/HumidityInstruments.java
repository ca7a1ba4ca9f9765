package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.statistics.HeldVariances;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.RoomSessions;
import org.tableweather.analyzers.standard.statistics.measurement.CorrectedSlope;
import org.tableweather.analyzers.standard.statistics.measurement.InstrumentError;
import org.tableweather.analyzers.standard.statistics.measurement.RegressionCalibration;
import org.tableweather.analyzers.standard.statistics.measurement.SessionPoint;
import org.tableweather.analyzers.standard.statistics.measurement.Simex;
import org.tableweather.analyzers.standard.statistics.measurement.SimexResult;
import org.tableweather.analyzers.standard.statistics.measurement.SlopeEstimate;
import org.tableweather.analyzers.standard.statistics.measurement.SlopeKind;

/**
 * The slope with the stated accuracy of the hygrometers taken out, beside the naive one: the pooled model by simulation and
 * extrapolation, the slope between rooms by regression calibration. An accuracy ±a counts as a constant error of each
 * hygrometer, even over ±a.
 *
 * @source Stefanski1995
 * @source Carroll2006
 * @source JCGM100
 */
final class HumidityInstruments {

    private static final int MOST_REPLICATES = 200;
    private static final int LEAST_REPLICATES = 10;
    /** Its jackknife costs the square of the rooms, and with more of them simulation tells enough. */
    private static final int MOST_ROOMS = 200;
    /** Sessions moved in all, so that large pools cost no more than small ones. */
    private static final long MOST_MOVED = 20_000;

    private final HumidityFit pooled;
    private final List<SessionTraits> traits;

    HumidityInstruments(HumidityFit pooled) {
        this.pooled = pooled;
        traits = pooled.pool().traits.stream().flatMap(List::stream).toList();
    }

    HumidityPart part() {
        boolean fits = pooled.question().measure() == HumidityMeasure.RELATIVE && !pooled.columns().curved;
        long stated = traits.stream().filter(HumidityInstruments::isStated).count();
        if (!fits || stated == 0 || pooled.pool().rooms.size() < 3) {
            return HumidityPart.NOTHING;
        }
        if (stated < traits.size()) {
            return HumidityPart.warning("The hygrometer's accuracy is stated for " + stated + " of "
                    + Figures.counted(traits.size(), "session")
                    + ": its error is carried into the slope only when it is stated for all.");
        }
        InstrumentError error = error();
        List<Estimate> estimates = new ArrayList<>();
        simulated(error).ifPresent(estimates::add);
        between(error).ifPresent(estimates::add);
        double accuracy = error.offsetSd() * Math.sqrt(3) * HumidityMeasure.RELATIVE.step;
        return new HumidityPart(
                "",
                estimates,
                List.of(),
                List.of(),
                Map.of("hygrometerAccuracyRhPct", Math.round(accuracy * 100) / 100.0));
    }

    private static boolean isStated(SessionTraits traits) {
        return traits.accuracyRhPct() >= 0 && !traits.instrument().isEmpty();
    }

    /** Of the root mean square of the accuracies, in units of x. */
    private InstrumentError error() {
        double square = traits.stream()
                .mapToDouble(each -> each.accuracyRhPct() * each.accuracyRhPct())
                .average()
                .orElse(0);
        return InstrumentError.ofAccuracy(Math.sqrt(square) / HumidityMeasure.RELATIVE.step);
    }

    private Optional<Estimate> simulated(InstrumentError error) {
        HeldVariances held = new HeldVariances(pooled.fit(), pooled.pool().rooms, 1, 2);
        double[] row = pooled.columns().slopeRow();
        int replicates = (int) Math.max(LEAST_REPLICATES, Math.min(MOST_REPLICATES, MOST_MOVED / traits.size()));
        Simex simulation = Simex.withDefaults(pooled.question().seed()).withReplicates(replicates);
        int all = simulation.evaluations();
        int[] told = {0};
        Optional<SimexResult> result = simulation
                .correct(instruments(), error, shifts -> {
                    pooled.listener().at("hygrometer error", Math.min(told[0]++, all), all);
                    return slope(held, row, shifts);
                })
                .fold(Optional::of, refusal -> Optional.empty());
        return result.filter(found -> found.standardError().isPresent())
                .map(found -> FitFigures.estimate(
                        "humidity.calibrated",
                        new Quantity(
                                found.corrected(),
                                found.standardError().getAsDouble(),
                                pooled.slope().df()),
                        pooled.slopeUnit(),
                        pooled.slopeMeaning()
                                + ", with the stated accuracy of the hygrometers taken out (simulation and extrapolation;"
                                + " humidity is the naive one)"));
    }

    private static SlopeEstimate slope(HeldVariances held, double[] row, double[] shifts) {
        return held.estimate(shifts, row)
                .map(found -> new SlopeEstimate(found.value(), found.standardError() * found.standardError()))
                .orElse(new SlopeEstimate(Double.NaN, Double.NaN));
    }

    /** Numbers of the instruments in the order of their first session. */
    private int[] instruments() {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        return traits.stream()
                .mapToInt(each -> numbers.computeIfAbsent(each.instrument(), name -> numbers.size()))
                .toArray();
    }

    private Optional<Estimate> between(InstrumentError error) {
        if (pooled.pool().rooms.size() > MOST_ROOMS) {
            return Optional.empty();
        }
        List<SessionPoint> points = new ArrayList<>();
        int at = 0;
        for (RoomSessions room : pooled.pool().rooms) {
            for (Moments session : room.sessions()) {
                points.add(new SessionPoint(
                        room.key(),
                        traits.get(at++).instrument(),
                        session.mean(0),
                        session.mean(session.columns() - 1)));
            }
        }
        return RegressionCalibration.of(SlopeKind.BETWEEN_ROOMS, error)
                .correct(points)
                .fold(Optional::of, refusal -> Optional.<CorrectedSlope>empty())
                .map(slope -> FitFigures.estimate(
                        "humidity.between.calibrated",
                        new Quantity(slope.corrected(), slope.standardError(), slope.df()),
                        pooled.slopeUnit(),
                        "change of the mean " + pooled.response().noun
                                + " from room to room, over plain room means, with the stated accuracy of the hygrometers"
                                + " taken out (regression calibration); naive "
                                + pooled.figure(slope.naive()) + ", of the spread between rooms "
                                + Figures.fixed(100 * slope.reliability(), 0) + " % is true"));
    }
}
