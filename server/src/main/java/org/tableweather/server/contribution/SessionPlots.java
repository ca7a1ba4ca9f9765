package org.tableweather.server.contribution;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.folder.SessionTraces;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Trial;
import org.tableweather.server.web.Words;

/** The plots of one session: its climate over time with the attempts in it, and the angle of each attempt. */
final class SessionPlots {
    /** Most readings that a line is drawn through; of more, every second, third ... is taken. */
    private static final int MOST_READINGS = 1500;

    private static final double SECONDS_PER_HOUR = 3600;

    private final List<ClimateReading> log;
    private final List<Trial> trials;
    private final Optional<Instant> start;

    private SessionPlots(List<ClimateReading> log, List<Trial> trials, Optional<Instant> start) {
        this.log = log;
        this.trials = trials;
        this.start = start;
    }

    /** All plots that the session has data for. */
    static List<Plot> of(SessionDossier dossier) {
        List<ClimateReading> log = dossier.traces().map(SessionTraces::log).orElse(List.of());
        List<Trial> trials = dossier.whole().trials();
        Optional<Instant> start = dossier.whole()
                .entry()
                .session()
                .startedAt()
                .map(time -> time.toInstant())
                .or(() -> trials.stream()
                        .map(Trial::startedAt)
                        .flatMap(Optional::stream)
                        .min(Instant::compareTo));
        SessionPlots plots = new SessionPlots(thinned(log), trials, start);
        List<Plot> all = new ArrayList<>();
        plots.temperature().ifPresent(all::add);
        plots.humidity().ifPresent(all::add);
        plots.angles().ifPresent(all::add);
        return all;
    }

    private static List<ClimateReading> thinned(List<ClimateReading> log) {
        int step = (log.size() + MOST_READINGS - 1) / MOST_READINGS;
        List<ClimateReading> kept = new ArrayList<>();
        for (int i = 0; i < log.size(); i += Math.max(1, step)) {
            kept.add(log.get(i));
        }
        return kept;
    }

    private Optional<Plot> temperature() {
        List<Plot.Series> series = new ArrayList<>();
        line("air temperature", ClimateReading::tempC).ifPresent(series::add);
        line("dew point", reading -> dewPointC(reading.tempC(), reading.rhPct()))
                .ifPresent(series::add);
        marks("temperature at the attempts", Climate::tempC).ifPresent(series::add);
        return plot("temperature", "Temperature and dew point", across(), "Temperature, °C", series);
    }

    private Optional<Plot> humidity() {
        List<Plot.Series> series = new ArrayList<>();
        line("relative humidity", ClimateReading::rhPct).ifPresent(series::add);
        marks("humidity at the attempts", Climate::rhPct).ifPresent(series::add);
        return plot("humidity", "Relative humidity", across(), "Relative humidity, %", series);
    }

    /** The angle of departure from the last rail, attempt by attempt; a series for each shot. */
    private Optional<Plot> angles() {
        Map<String, List<double[]>> shots = new LinkedHashMap<>();
        for (int i = 0; i < trials.size(); i++) {
            double angle = trials.get(i).lastReboundAngleDeg();
            if (!Double.isNaN(angle)) {
                shots.computeIfAbsent(trials.get(i).shot(), shot -> new ArrayList<>())
                        .add(new double[] {i + 1, angle});
            }
        }
        List<Plot.Series> series = shots.entrySet().stream()
                .map(shot -> series(shot.getKey(), Plot.Mark.POINTS, shot.getValue()))
                .toList();
        return plot(
                "final-angle",
                "Angle off the last rail, attempt by attempt",
                "Attempt",
                "Angle from straight out, degrees",
                series);
    }

    private static Optional<Plot> plot(String id, String title, String across, String up, List<Plot.Series> series) {
        return series.isEmpty() ? Optional.empty() : Optional.of(new Plot(id, title, across, up, series));
    }

    private String across() {
        return start.filter(time -> isTimed())
                .map(time -> "Hours since " + Words.minute(Optional.of(time)) + " universal time")
                .orElse("Attempt");
    }

    private boolean isTimed() {
        return start.isPresent()
                && (!log.isEmpty()
                        || trials.stream().anyMatch(trial -> trial.startedAt().isPresent()));
    }

    private Optional<Plot.Series> line(String name, ToDoubleFunction<ClimateReading> value) {
        if (!isTimed()) {
            return Optional.empty();
        }
        List<double[]> points = new ArrayList<>();
        for (ClimateReading reading : log) {
            add(points, hours(reading.time()), value.applyAsDouble(reading));
        }
        return points.isEmpty() ? Optional.empty() : Optional.of(series(name, Plot.Mark.LINE, points));
    }

    private Optional<Plot.Series> marks(String name, ToDoubleFunction<Climate> value) {
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < trials.size(); i++) {
            Trial trial = trials.get(i);
            Optional<Double> across = isTimed() ? trial.startedAt().map(this::hours) : Optional.of((double) (i + 1));
            across.ifPresent(x -> add(points, x, value.applyAsDouble(trial.climate())));
        }
        return points.isEmpty() ? Optional.empty() : Optional.of(series(name, Plot.Mark.POINTS, points));
    }

    private static void add(List<double[]> points, double x, double y) {
        if (Double.isFinite(y)) {
            points.add(new double[] {x, y});
        }
    }

    private double hours(Instant time) {
        return Duration.between(start.orElseThrow(), time).toSeconds() / SECONDS_PER_HOUR;
    }

    /** °C; NaN outside of what the formula is stated for. */
    private static double dewPointC(double tempC, double rhPct) {
        return rhPct > 0 && rhPct <= 100 && MoistAir.TEMPERATURE.contains(tempC)
                ? MoistAir.of(tempC, rhPct).dewPointC()
                : Double.NaN;
    }

    private static Plot.Series series(String name, Plot.Mark mark, List<double[]> points) {
        return new Plot.Series(
                name,
                mark,
                points.stream().map(point -> point[0]).toList(),
                points.stream().map(point -> point[1]).toList(),
                List.of(),
                List.of());
    }
}
