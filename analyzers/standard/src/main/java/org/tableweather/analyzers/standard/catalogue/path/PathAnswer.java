package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.physics.PathEvent;
import org.tableweather.analyzers.standard.physics.RailMotion;
import org.tableweather.schema.record.Shot;

/** Writes a prediction as an answer. */
final class PathAnswer {

    private static final double MOST_LOST = 0.5;

    private final PathResult result;

    PathAnswer(PathResult result) {
        this.result = result;
    }

    /** What stands in the way: a ball that does not go where it should. */
    static Optional<PathCase.Obstacle> obstacle(PathCase asked, PathModel model) {
        for (AskedClimate climate : List.of(asked.question.from(), asked.question.to())) {
            Trace trace = model.trace(asked.climate(climate));
            if (!trace.lands()) {
                List<String> rails = model.pattern.rails().stream()
                        .map(rail -> rail.schemaName())
                        .toList();
                return Optional.of(new PathCase.Obstacle(
                        Reason.NOT_APPLICABLE,
                        "At " + climate.words() + " " + trace.instead() + ", not " + String.join(", ", rails)
                                + " and then a landing on the "
                                + model.pattern.targetRail().schemaName()
                                + " rail: the drift of this pattern is not defined; choose another aim or speed."));
            }
        }
        return Optional.empty();
    }

    /** Too many of the draws go elsewhere. */
    static Optional<PathCase.Obstacle> lost(PathResult result) {
        if (result.lostShare() <= MOST_LOST
                && result.draws.from().values().length > 2
                && result.draws.to().values().length > 2
                && result.draws.drift().values().length > 2) {
            return Optional.empty();
        }
        return Optional.of(new PathCase.Obstacle(
                Reason.DEGENERATE,
                "In " + Figures.fixed(100 * result.lostShare(), 0)
                        + " % of what rail and cloth might be the ball meets other rails or comes to rest before it lands:"
                        + " there is no band; choose another aim, a higher speed, or a pool with more rooms."));
    }

    Analysis.Estimated write(List<String> references) {
        PathFigures figures = new PathFigures(result);
        PathWords words = new PathWords(result);
        return new Analysis.Estimated(
                words.sentence(),
                parameters(),
                facts(),
                figures.estimates(),
                figures.variance(),
                List.of(),
                List.of(),
                new PathPlots(result).list(),
                words.warnings(),
                references);
    }

    private Map<String, String> parameters() {
        PathQuestion question = result.asked.question;
        Map<String, String> used = new LinkedHashMap<>();
        if (!question.typed()) {
            used.put(PathQuestion.SHOT, result.model.pattern.name());
        }
        question.start().ifPresent(at -> used.put(PathQuestion.START, place(at)));
        question.aim().ifPresent(at -> used.put(PathQuestion.AIM, place(at)));
        used.put(PathQuestion.SPEED, Figures.plain(result.model.pattern.speedMps()));
        used.put(PathQuestion.SPIN, Figures.plain(question.sideSpinRps()));
        used.put(PathQuestion.ROLL, Figures.plain(question.rollRatio()));
        used.put(PathQuestion.FROM_C, Figures.plain(question.from().tempC()));
        used.put(PathQuestion.FROM_PCT, Figures.plain(question.from().rhPct()));
        used.put(PathQuestion.TO_C, Figures.plain(question.to().tempC()));
        used.put(PathQuestion.TO_PCT, Figures.plain(question.to().rhPct()));
        result.asked.room.ifPresent(room -> used.put(PathQuestion.ROOM, room));
        used.put(
                PathQuestion.TABLE,
                Figures.fixed(1000 * result.model.pattern.table().playingLengthM(), 0));
        used.put(PathQuestion.MEASURE, question.measure().parameter);
        used.put(PathQuestion.IMPACT, question.stepped() ? PathQuestion.STEPPED : "closed-form");
        used.put(PathQuestion.DRAWS, Integer.toString(question.draws()));
        used.put(PathQuestion.SEED, Long.toString(question.seed()));
        used.put(PathQuestion.TASK, PathQuestion.PREDICT);
        return used;
    }

    private static String place(Shot.Position at) {
        return Figures.plain(at.xDia()) + "," + Figures.plain(at.yDia());
    }

    private Map<String, Object> facts() {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", "rigid ball and rails, Monte Carlo");
        facts.putAll(result.asked.rail.facts());
        facts.put("inOwnRoom", result.model.inOwnRoom());
        facts.put("cloth.rolling", result.model.cloth[1]);
        facts.put(
                "cloth.rolling.from",
                result.asked
                        .rolling
                        .map(known -> known.ofRoom() ? "roll-outs of the room" : "roll-outs of the pool's rooms")
                        .orElse("published range"));
        facts.put("drift.error.draws", result.draws.drift().deviation());
        facts.put("drift.error.firstOrder", result.driftSd());
        facts.put("attempt.sd", result.attemptSd);
        facts.put("attempt.seen", result.seenScatter.isPresent());
        facts.put("draws.lost", result.draws.drift().lost());
        facts.put("contacts", contacts());
        return facts;
    }

    /** Place, angles and speed at each rail in both climates. */
    private List<Map<String, Object>> contacts() {
        List<Map<String, Object>> all = new ArrayList<>();
        for (int i = 0; i <= result.model.pattern.rails().size(); i++) {
            Map<String, Object> one = new LinkedHashMap<>();
            boolean landing = i == result.model.pattern.rails().size();
            one.put("contact", landing ? "landing" : Integer.toString(i + 1));
            one.put(
                    "rail",
                    (landing
                                    ? result.model.pattern.targetRail()
                                    : result.model.pattern.rails().get(i))
                            .schemaName());
            describe(one, "from", result.first, i, landing);
            describe(one, "to", result.second, i, landing);
            if (!landing && !Double.isNaN(result.byRail[i])) {
                one.put("share", result.byRail[i]);
            }
            all.add(one);
        }
        return all;
    }

    private void describe(Map<String, Object> one, String when, Trace trace, int contact, boolean landing) {
        PathEvent event = trace.path().contacts().get(contact);
        Shot.Position at = result.model
                .pattern
                .table()
                .diamonds(landing ? trace.landing() : event.before().place());
        one.put(when + ".xDia", at.xDia());
        one.put(when + ".yDia", at.yDia());
        if (!landing) {
            one.put(when + ".approachDeg", angle(event, true));
            one.put(when + ".reboundDeg", angle(event, false));
            one.put(when + ".reboundMps", event.after().speedMps());
        }
    }

    private static double angle(PathEvent event, boolean before) {
        var state = before ? event.before() : event.after();
        boolean isShort = Pattern.isShort(event.rail().orElseThrow());
        double along = isShort ? state.vyMps() : state.vxMps();
        double across = isShort ? state.vxMps() : state.vyMps();
        return RailMotion.rolling(along, across, 0).angleDeg();
    }
}
