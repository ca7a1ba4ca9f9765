package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.ReboundHumidity;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;

/**
 * The landing of a shot in a new room as {@code rebound-humidity} tells it from landings alone: its mean, and a standard deviation of the band
 * of a new room's curve (taken as normal), of sessions and of attempts.
 */
final class StatisticalLanding {

    private static final double NORMAL_95 = 1.959963984540054;

    private final Map<String, Double> coefficients = new HashMap<>();
    private final Map<String, Double> deviations = new HashMap<>();
    private final List<CurvePoint> curve;

    private StatisticalLanding(Estimated answer) {
        answer.estimates().stream()
                .filter(each -> each.value() != null)
                .forEach(each -> coefficients.put(each.name(), each.value()));
        answer.variance().forEach(each -> deviations.put(each.name(), each.sd().orElse(0)));
        curve = answer.curve();
    }

    /** Empty when it declines. */
    static Optional<StatisticalLanding> of(PathPool pool, String shot) {
        List<SessionSummary<SessionMoments>> sessions = new ArrayList<>();
        for (SessionSummary<PathSummary> each : pool.sessions) {
            sessions.add(new SessionSummary<>(
                    each.roomKey(),
                    each.sessionKey(),
                    each.digest(),
                    each.invented(),
                    each.trials(),
                    each.summary().moments()));
        }
        ReboundHumidity analyzer = new ReboundHumidity();
        Parameters parameters = Parameters.of(analyzer.info(), Map.of("shot", shot, "response", "landing_offset_dia"));
        return analyzer.conclude(new Listed(sessions), parameters)
                .fold(
                        answer -> answer.curve().isEmpty()
                                        || answer.curve().get(0).newRoomUpper() == null
                                ? Optional.empty()
                                : Optional.of(new StatisticalLanding(answer)),
                        none -> Optional.empty());
    }

    private record Listed(List<SessionSummary<SessionMoments>> sessions) implements SummarySource<SessionMoments> {
        @Override
        public String hash() {
            return "sha256:" + sessions.size();
        }
    }

    double mean(double rhPct, double tempC) {
        double h = (rhPct - 50) / 10;
        return of("intercept")
                + of("humidity") * h
                + of("humidity.squared") * h * h
                + of("temperature") * (tempC - 21) / 5;
    }

    private double of(String name) {
        return coefficients.getOrDefault(name, 0.0);
    }

    /** Of one attempt in one session of a new room. */
    double deviation(double rhPct) {
        double room = at(rhPct, point -> (point.newRoomUpper() - point.newRoomLower()) / (2 * NORMAL_95));
        double session = deviations.getOrDefault("session.intercept", 0.0);
        double attempt = deviations.getOrDefault("residual", 0.0);
        return Math.sqrt(room * room + session * session + attempt * attempt);
    }

    /** Between the curve's points; beyond its ends as there. */
    private double at(double rhPct, ToDoubleFunction<CurvePoint> figure) {
        CurvePoint before = curve.get(0);
        for (CurvePoint point : curve) {
            if (point.rhPct() >= rhPct) {
                double width = point.rhPct() - before.rhPct();
                double share = width > 0 ? Math.max(0, (rhPct - before.rhPct()) / width) : 1;
                return (1 - share) * figure.applyAsDouble(before) + share * figure.applyAsDouble(point);
            }
            before = point;
        }
        return figure.applyAsDouble(before);
    }
}
