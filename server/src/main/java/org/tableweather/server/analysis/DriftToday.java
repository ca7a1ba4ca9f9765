package org.tableweather.server.analysis;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.server.web.Words;

/**
 * Reads off the pooled analyses what a change of climate does to a shot. Nothing is estimated here: a figure is an estimate of an
 * analyzer, or one per 10 % or per 5 K times the change, with its interval times the same.
 */
@ApplicationScoped
class DriftToday {
    private static final String CURVE = "rebound-humidity";
    private static final String COMPARISON = "room-comparison";
    private static final double SLOPE_PER_PCT = 10;
    private static final double SLOPE_PER_K = 5;

    private final Runs runs;

    DriftToday(Runs runs) {
        this.runs = runs;
    }

    /** What is expected of one shot. */
    ShotDrift of(DriftCase asked) {
        String query = QueryText.of(asked.asked());
        return ask(CURVE, asked.asked(), asked)
                .fold(
                        pooled -> new ShotDrift(
                                asked.shot(),
                                Stream.of(here(asked), average(asked, pooled), temperature(asked, pooled))
                                        .flatMap(List::stream)
                                        .toList(),
                                asked.isAsHumidAsUsual() ? "" : pooled.sentence(),
                                Stream.of(untold(asked), beyond(asked), scatter(pooled))
                                        .flatMap(List::stream)
                                        .toList(),
                                query),
                        none -> new ShotDrift(
                                asked.shot(),
                                List.of(),
                                "",
                                List.of("The pool gives no answer for this shot: " + none.detail()),
                                query));
    }

    /** The room's own slope, times the change. */
    private List<String> here(DriftCase asked) {
        return compared(asked)
                .flatMap(analysis -> analysis.<Optional<Estimate>>fold(
                        answer -> estimate(answer, "humidity.here"), none -> Optional.empty()))
                .map(slope -> "In this room" + because(asked) + change(slope, asked.changePct() / SLOPE_PER_PCT)
                        + " Read off the room’s own slope at 50 %, as a straight line.")
                .stream()
                .toList();
    }

    /** Why the room itself cannot be told. */
    private List<String> untold(DriftCase asked) {
        return compared(asked)
                .flatMap(analysis ->
                        analysis.<Optional<String>>fold(answer -> Optional.empty(), none -> Optional.of(none.detail())))
                .map(why -> "The room itself cannot be told for this shot: " + why)
                .stream()
                .toList();
    }

    private Optional<Analysis> compared(DriftCase asked) {
        return asked.room().isEmpty() || asked.isAsHumidAsUsual()
                ? Optional.empty()
                : Optional.of(ask(COMPARISON, Map.of("room", asked.room(), "shot", asked.shot()), asked));
    }

    private static List<String> average(DriftCase asked, Analysis.Estimated pooled) {
        if (asked.isAsHumidAsUsual()) {
            return List.of("The humidity is as usual, so no change is expected from it.");
        }
        return estimate(pooled, "humidity.change")
                .map(change -> "In an average room" + because(asked) + change(change, Math.signum(asked.changePct())))
                .stream()
                .toList();
    }

    private static String because(DriftCase asked) {
        return " because the humidity is " + apart(asked.changePct()) + " % " + side(asked.changePct()) + ": ";
    }

    private static List<String> temperature(DriftCase asked, Analysis.Estimated pooled) {
        if (asked.isAsWarmAsUsual()) {
            return List.of();
        }
        String change = estimate(pooled, "temperature")
                .map(perStep -> change(perStep, asked.changeK() / SLOPE_PER_K))
                .orElse("the pool cannot tell, for temperature and humidity went together in it.");
        return List.of("In an average room because the temperature is " + apart(asked.changeK()) + " °C "
                + side(asked.changeK()) + ": " + change);
    }

    /** In words; the sign of the factor turns the interval round. */
    private static String change(Estimate estimate, double factor) {
        double lower = Math.min(estimate.lower() * factor, estimate.upper() * factor);
        double upper = Math.max(estimate.lower() * factor, estimate.upper() * factor);
        return "the angle off the last rail changes by " + signed(estimate.value() * factor) + "° (95 % interval "
                + signed(lower) + "° to " + signed(upper) + "°): " + verdict(lower, upper) + ".";
    }

    private static String verdict(double lower, double upper) {
        if (lower <= 0 && upper >= 0) {
            return "the data cannot tell it from no change";
        }
        return "the ball comes off the last rail " + (upper < 0 ? "straighter" : "wider") + " than usual";
    }

    private List<String> beyond(DriftCase asked) {
        return ask(CURVE, Map.of("shot", asked.shot()), asked)
                .fold(
                        all -> beyond(asked, bound(all, "curve_from_pct"), bound(all, "curve_to_pct")),
                        none -> List.of());
    }

    private static List<String> beyond(DriftCase asked, double fromPct, double toPct) {
        boolean within = asked.lowestPct() >= fromPct && asked.highestPct() <= toPct;
        return within
                ? List.of()
                : List.of("The sessions of this shot lie between " + Words.number(fromPct, 0) + " and "
                        + Words.number(toPct, 0)
                        + " % relative humidity. This reaches beyond them: the further, the less it is worth.");
    }

    private static double bound(Analysis.Estimated answer, String parameter) {
        return Double.parseDouble(answer.parameters().get(parameter));
    }

    private static List<String> scatter(Analysis.Estimated pooled) {
        return pooled.variance().stream()
                .filter(component -> component.name().equals("session.intercept")
                        && component.sd().isPresent())
                .map(component -> "Sessions of one room in one climate still differ, by a standard deviation of "
                        + Words.number(component.sd().getAsDouble(), 2) + "°.")
                .toList();
    }

    private static Optional<Estimate> estimate(Analysis.Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(one -> one.name().equals(name) && one.value() != null && one.lower() != null)
                .findFirst();
    }

    private Analysis ask(String analyzer, Map<String, String> parameters, DriftCase asked) {
        return runs.answer(analyzer, parameters, asked.caller()).run().analysis();
    }

    private static String apart(double change) {
        return Words.number(Math.abs(change), 1);
    }

    private static String side(double change) {
        return change > 0 ? "above usual" : "below usual";
    }

    private static String signed(double value) {
        String text = Words.number(value, 2);
        return value > 0 ? "+" + text : text;
    }
}
