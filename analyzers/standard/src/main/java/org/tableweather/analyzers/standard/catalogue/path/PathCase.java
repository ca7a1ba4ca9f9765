package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.SessionTraits;
import org.tableweather.analyzers.standard.catalogue.rail.PooledRail;
import org.tableweather.analyzers.standard.physics.BallPath;
import org.tableweather.analyzers.standard.statistics.nonlinear.NonlinearFit;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;

/** Turns a question and a pool into the model of one pattern in one room, or says why there is none. */
final class PathCase {

    private static final String USUAL = "kick-4-rail";
    private static final int TYPED_RAILS = 3;

    final PathPool pool;
    final PathQuestion question;
    final PooledRail rail;
    final Optional<String> room;
    final TableSize table;
    final Optional<RollingEstimate> rolling;

    PathCase(PathPool pool, PathQuestion question, PooledRail rail) {
        this.pool = pool;
        this.question = question;
        this.rail = rail;
        List<String> rooms = found();
        room = rooms.size() == 1 ? Optional.of(rooms.get(0)) : Optional.empty();
        rolling = RollingEstimate.of(pool.sessions, room);
        TableSize own = pool.table(room);
        table = question.tableLengthMm()
                .flatMap(mm -> TableSize.of(mm / 1000, mm / 2000, own.ballDiameterM()))
                .orElse(own);
    }

    /** Rooms of the asked name: the whole key, or its last part. */
    private List<String> found() {
        return question.room()
                .map(name -> pool.rooms().stream()
                        .filter(key -> key.equals(name) || key.endsWith("/" + name))
                        .toList())
                .orElse(List.of());
    }

    /**
     * Why not.
     *
     * @param reason of the list
     * @param detail in words, with what would help
     */
    record Obstacle(Reason reason, String detail) {}

    /** What stands in the way of any prediction. */
    Optional<Obstacle> obstacle() {
        if (question.room().isPresent() && room.isEmpty()) {
            return Optional.of(new Obstacle(
                    Reason.NOT_APPLICABLE,
                    "The pool has " + (found().isEmpty() ? "no room " : "several rooms ")
                            + question.room().get() + ": name one of "
                            + Figures.listed(new ArrayList<>(pool.rooms()))
                            + ", or leave the room out to predict for a new one."));
        }
        for (AskedClimate climate : List.of(question.from(), question.to())) {
            if (Double.isNaN(climate(climate).x())) {
                return Optional.of(new Obstacle(
                        Reason.NOT_APPLICABLE,
                        "At " + climate.words() + " " + question.measure().noun
                                + " is not known: choose another humidity_measure, or state what it needs."));
            }
        }
        return Optional.empty();
    }

    ModelClimate climate(AskedClimate asked) {
        SessionTraits traits = rail.typical();
        return new ModelClimate(question.measure().x(asked.rhPct(), asked.tempC(), traits), asked.t());
    }

    /** The room's cloth as far as roll-outs tell. */
    ClothRange cloth() {
        return new ClothRange(rolling);
    }

    PathModel model() {
        Optional<NonlinearFit.Room> own = room.flatMap(rail::room);
        return new PathModel(rail, pattern(), pool.noseSine(room), own, cloth());
    }

    private Pattern pattern() {
        if (!question.typed()) {
            return Pattern.of(shot(question, pool), question, table);
        }
        if (!question.rails().isEmpty()) {
            List<Rail> all = question.rails();
            Rail next = opposite(all.get(all.size() - 1));
            return Pattern.typed(
                    question,
                    table,
                    all,
                    met(all.size()).map(rails -> rails.get(all.size())).orElse(next));
        }
        List<Rail> rails = met(TYPED_RAILS).orElse(List.of(Rail.NEAR, Rail.FAR));
        return Pattern.typed(question, table, rails.subList(0, rails.size() - 1), rails.get(rails.size() - 1));
    }

    /** The rails that a typed shot meets in the first climate, the landing's included; empty when it meets fewer than two. */
    private Optional<List<Rail>> met(int rails) {
        Pattern any = Pattern.typed(question, table, java.util.Collections.nCopies(rails, Rail.NEAR), Rail.FAR);
        BallPath path = new PathModel(rail, any, pool.noseSine(room), room.flatMap(rail::room), cloth())
                .trace(climate(question.from()))
                .path();
        return path.rails().size() > rails
                ? Optional.of(path.rails())
                : path.rails().size() > 1 && question.rails().isEmpty() ? Optional.of(path.rails()) : Optional.empty();
    }

    private static Rail opposite(Rail rail) {
        return switch (rail) {
            case HEAD -> Rail.FOOT;
            case FOOT -> Rail.HEAD;
            case NEAR -> Rail.FAR;
            case FAR -> Rail.NEAR;
        };
    }

    /** The asked shot, else the one over at least two rails that landed most often in the pool. */
    static Shot shot(PathQuestion question, PathPool pool) {
        return question.shot().orElseGet(() -> {
            Map<String, Long> landed = pool.landed();
            Shot best = ShotCatalogue.byId(USUAL).orElseThrow();
            for (Shot shot : PathQuestion.paths()) {
                boolean over = shot.rails().size() > 1;
                if (over && landed.getOrDefault(shot.id(), 0L) > landed.getOrDefault(best.id(), 0L)) {
                    best = shot;
                }
            }
            return best;
        });
    }
}
