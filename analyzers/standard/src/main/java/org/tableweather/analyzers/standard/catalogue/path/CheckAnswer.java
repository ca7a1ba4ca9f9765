package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.numeric.StudentT;
import org.tableweather.schema.record.Shot;

/** Writes how good predictions were. */
final class CheckAnswer {

    private static final double BAND = 0.9;
    private static final double MANY = 1e6;

    private final PathCheck check;
    private final Shot shot;
    private final PathPool pool;
    private final PathQuestion question;
    private final CheckFigures figures;

    CheckAnswer(PathCheck check, Shot shot, PathPool pool, PathQuestion question) {
        this.check = check;
        this.shot = shot;
        this.pool = pool;
        this.question = question;
        figures = new CheckFigures(check.sessions);
    }

    Analysis.Estimated write(List<String> references) {
        return new Analysis.Estimated(
                sentence(),
                parameters(),
                facts(),
                estimates(),
                List.of(),
                List.of(),
                List.of(),
                List.of(calibration(), foretold()),
                warnings(),
                references);
    }

    private String sentence() {
        String first = "Of " + figures.landings() + " landings of " + shot.id() + " in " + figures.rooms()
                + " rooms, each room foretold from the others alone, "
                + Figures.fixed(100 * figures.physicsCoverage(BAND), 0)
                + " % lie in the 90 % band. Session means are missed by "
                + Figures.fixed(figures.rms(CheckFigures::physicsError), 2)
                + " diamonds (root mean square), changes within a room by "
                + Figures.fixed(figures.rmsWithin(CheckFigures::physicsError), 2);
        if (!figures.withStatistics) {
            return first + "; rebound-humidity declines to foretell them.";
        }
        return first + "; rebound-humidity, from landings alone, misses by "
                + Figures.fixed(figures.rms(CheckFigures::statisticsError), 2) + " and "
                + Figures.fixed(figures.rmsWithin(CheckFigures::statisticsError), 2) + ": " + verdict() + ".";
    }

    private String verdict() {
        if (!figures.clear()) {
            return "these rooms do not tell which of the two foretells better";
        }
        return figures.advantage() > 0
                ? "the rail and the ball foretell better"
                : "statistics of landings alone foretells better";
    }

    private Map<String, String> parameters() {
        Map<String, String> used = new LinkedHashMap<>();
        used.put(PathQuestion.SHOT, shot.id());
        used.put(PathQuestion.MEASURE, question.measure().parameter);
        used.put(PathQuestion.IMPACT, question.stepped() ? PathQuestion.STEPPED : "closed-form");
        used.put(PathQuestion.DRAWS, Integer.toString(question.draws()));
        used.put(PathQuestion.SEED, Long.toString(question.seed()));
        used.put(PathQuestion.TASK, PathQuestion.CHECK);
        return used;
    }

    private Map<String, Object> facts() {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", "leave one room out");
        facts.put("landings", figures.landings());
        facts.put("sessions", check.sessions.size());
        facts.put("rooms", figures.rooms());
        facts.put("roomsLeftOut", check.leftOut.size());
        facts.put("sessionsOffTheWay", check.offTheWay);
        return facts;
    }

    private List<Estimate> estimates() {
        List<Estimate> all = new ArrayList<>();
        all.add(figures.coverage("coverage.90", BAND, each -> each.inPhysics(BAND), figures.physicsCoverage(BAND)));
        all.add(figures.coverage("coverage.50", 0.5, each -> each.inPhysics(0.5), figures.physicsCoverage(0.5)));
        all.add(plain("rms", figures.rms(CheckFigures::physicsError), "error of session means, root mean square"));
        all.add(plain(
                "rms.within",
                figures.rmsWithin(CheckFigures::physicsError),
                "the same with each room's level taken out: error of changes within a room"));
        all.add(plain("bias", figures.bias(), "mean of observed less foretold, positive when they come longer"));
        if (figures.withStatistics) {
            double reach = StudentT.halfWidth(BAND, MANY);
            all.add(figures.coverage(
                    "statistics.coverage.90",
                    BAND,
                    each -> each.inStatistics(reach),
                    figures.statisticsCoverage(BAND)));
            all.add(plain(
                    "statistics.rms",
                    figures.rms(CheckFigures::statisticsError),
                    "error of session means by rebound-humidity, root mean square"));
            all.add(plain(
                    "statistics.rms.within",
                    figures.rmsWithin(CheckFigures::statisticsError),
                    "the same with each room's level taken out"));
        }
        return all;
    }

    private static Estimate plain(String name, double value, String meaning) {
        return new Estimate(name, Double.isNaN(value) ? null : value, null, null, null, null, "dia", meaning);
    }

    private Plot calibration() {
        List<Double> nominal = new ArrayList<>();
        List<Double> physics = new ArrayList<>();
        List<Double> statistics = new ArrayList<>();
        for (int pct = 5; pct <= 95; pct += 5) {
            nominal.add((double) pct);
            physics.add(100 * figures.physicsCoverage(pct / 100.0));
            statistics.add(100 * figures.statisticsCoverage(pct / 100.0));
        }
        List<Series> series = new ArrayList<>();
        series.add(line("rail and ball", nominal, physics));
        if (figures.withStatistics) {
            series.add(line("rebound-humidity", nominal, statistics));
        }
        series.add(line("as it should be", List.of(0.0, 100.0), List.of(0.0, 100.0)));
        return new Plot(
                "calibration",
                "How many landings of a room lie in the band that the other rooms give",
                "nominal coverage (%)",
                "observed coverage (%)",
                series);
    }

    private static Series line(String name, List<Double> x, List<Double> y) {
        return new Series(name, Mark.LINE, x, y, List.of(), List.of());
    }

    private Plot foretold() {
        Map<String, List<CheckedSession>> byRoom = new LinkedHashMap<>();
        check.sessions.forEach(each ->
                byRoom.computeIfAbsent(each.room(), room -> new ArrayList<>()).add(each));
        List<Series> series = new ArrayList<>();
        double low = check.sessions.stream()
                .mapToDouble(CheckedSession::physicsDia)
                .min()
                .orElse(0);
        double high = check.sessions.stream()
                .mapToDouble(CheckedSession::physicsDia)
                .max()
                .orElse(0);
        series.add(line("as foretold", List.of(low, high), List.of(low, high)));
        byRoom.forEach((room, own) -> series.add(new Series(
                room,
                Mark.POINTS,
                own.stream().map(CheckedSession::physicsDia).toList(),
                own.stream().map(CheckedSession::observedDia).toList(),
                List.of(),
                List.of())));
        return new Plot(
                "foretold",
                "Session means of landings beside what the other rooms foretell",
                "foretold landing (diamonds from the target)",
                "observed landing (diamonds from the target)",
                series);
    }

    private List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        long invented = pool.sessions.stream().filter(each -> each.invented()).count();
        if (invented > 0) {
            warnings.add("Invented data: " + invented + " of " + Figures.counted(pool.sessions.size(), "session")
                    + " are made up for demonstration; no figure here says anything about real tables.");
        }
        check.leftOut.forEach(words -> warnings.add("Room left out, " + words));
        if (check.offTheWay > 0) {
            warnings.add(Figures.counted(check.offTheWay, "session")
                    + " left out: there most draws meet other rails or come to rest before.");
        }
        return warnings;
    }
}
