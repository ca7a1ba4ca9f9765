package org.tableweather.release;

import java.time.Instant;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * A session as a row of its table.
 *
 * @param contribution it came with
 * @param session with all it refers to; the room's position to 0.1°
 * @param digestHolds whether the digest can be computed again from this row and its trials; not where the room's position was
 *     stated more closely
 * @param trials how many
 * @param firstAt earliest start of a trial
 * @param lastAt latest start of a trial
 * @param tempMinC coolest air of a trial, °C
 * @param tempMaxC warmest, °C
 * @param rhMinPct driest, %
 * @param rhMaxPct dampest, %
 */
record SessionRow(
        String contribution,
        SessionRecord session,
        boolean digestHolds,
        int trials,
        Optional<Instant> firstAt,
        Optional<Instant> lastAt,
        OptionalDouble tempMinC,
        OptionalDouble tempMaxC,
        OptionalDouble rhMinPct,
        OptionalDouble rhMaxPct) {

    static SessionRow of(String contribution, SessionRecord session, boolean digestHolds, List<Trial> trials) {
        DoubleSummaryStatistics temp = range(trials, trial -> trial.climate().tempC());
        DoubleSummaryStatistics rh = range(trials, trial -> trial.climate().rhPct());
        return new SessionRow(
                contribution,
                session,
                digestHolds,
                trials.size(),
                trials.stream().flatMap(trial -> trial.startedAt().stream()).min(Instant::compareTo),
                trials.stream().flatMap(trial -> trial.startedAt().stream()).max(Instant::compareTo),
                finite(temp.getMin()),
                finite(temp.getMax()),
                finite(rh.getMin()),
                finite(rh.getMax()));
    }

    private static DoubleSummaryStatistics range(List<Trial> trials, ToDoubleFunction<Trial> value) {
        return trials.stream()
                .mapToDouble(value)
                .filter(number -> !Double.isNaN(number))
                .summaryStatistics();
    }

    /** The extremes of nothing are infinite. */
    private static OptionalDouble finite(double value) {
        return Double.isInfinite(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
