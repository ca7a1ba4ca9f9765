package org.tableweather.cli.demo;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.tableweather.analyzers.standard.physics.Ball;
import org.tableweather.analyzers.standard.physics.BallPath;
import org.tableweather.analyzers.standard.physics.BallRun;
import org.tableweather.analyzers.standard.physics.BallState;
import org.tableweather.analyzers.standard.physics.ClosedFormImpact;
import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.analyzers.standard.physics.PathEvent;
import org.tableweather.analyzers.standard.physics.RailImpact;
import org.tableweather.analyzers.standard.physics.RailMotion;
import org.tableweather.schema.geometry.MirrorPath;
import org.tableweather.schema.geometry.NominalPath;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

/**
 * Kicks over several rails in one session, from the ball library: {@link PathTruth}.
 *
 * @param truth of aim and speed
 * @param rails of the rails
 * @param departure of the room and the session
 * @param cloth of the room
 * @param table of the room
 * @param draws of chance
 */
record InventedPaths(
        PathTruth truth,
        RailTruth rails,
        RailTruth.Departure departure,
        ClothFriction cloth,
        TableSize table,
        SeededDraws draws) {

    /**
     * What is written down of one.
     *
     * @param landingOffsetDia along the target rail; NaN when the ball met other rails or came to rest before
     * @param rails how many were touched before the landing
     */
    record Attempt(double landingOffsetDia, int rails) {}

    /** After which of the other attempts one of these comes, by lot. */
    List<Boolean> places(int others, int wanted) {
        List<Boolean> places = new ArrayList<>(Collections.nCopies(wanted, true));
        places.addAll(Collections.nCopies(others - wanted, false));
        return draws.shuffled(places);
    }

    Attempt draw(Shot shot, double rhPct, double tempC) {
        RailImpact rail = new ClosedFormImpact(rails.rail(rhPct, tempC, departure, InventedRoom.noseSine()));
        BallState start = start(shot);
        BallPath path = new BallRun(table, Ball.POOL, cloth, before -> scattered(rail.after(before)))
                .toRails(start, shot.rails().size() + 1);
        List<PathEvent> contacts = path.contacts();
        Rail wanted = shot.targetRail().orElseThrow();
        boolean asMeant = contacts.size() == shot.rails().size() + 1
                && path.rails().subList(0, shot.rails().size()).equals(shot.rails());
        double landing = asMeant ? drawnOn(contacts.get(shot.rails().size()), wanted) : Double.NaN;
        double target = shot.target().orElseThrow().xDia();
        return new Attempt(
                longSign(shot) * (landing - target),
                Math.min(contacts.size(), shot.rails().size()));
    }

    /** Long is farther in the direction in which the shot travels along the target rail. */
    private double longSign(Shot shot) {
        List<TablePoint> points = NominalPath.of(shot, table).fold(MirrorPath.Found::points, impossible -> {
            throw new IllegalStateException(impossible.detail());
        });
        int last = points.size() - 1;
        return Math.signum(points.get(last).xM() - points.get(last - 1).xM());
    }

    private BallState start(Shot shot) {
        TablePoint from = table.point(shot.start().orElseThrow());
        Shot.Position aim = shot.aim().orElseThrow();
        TablePoint towards = table.point(aim.xDia() + draws.normal(truth.aimSdDia()), aim.yDia());
        double arriving = shot.approachSpeedMps().orElseThrow() * (1 + draws.normal(truth.speedSdShare()));
        double lost = 2 * cloth.rolling() * ClothFriction.GRAVITY * from.distanceM(towards);
        return BallState.sent(from, towards, Math.sqrt(arriving * arriving + lost), 1, 0, Ball.POOL);
    }

    private RailMotion scattered(RailMotion off) {
        double turn = Math.toRadians(draws.normal(rails.angleSdDeg()));
        double scale = 1 + draws.normal(rails.ratioSd());
        double cosine = StrictMath.cos(turn);
        double sine = StrictMath.sin(turn);
        return new RailMotion(
                scale * (cosine * off.alongMps() - sine * off.intoMps()),
                scale * (sine * off.alongMps() + cosine * off.intoMps()),
                off.upMps(),
                off.spinAlongMps(),
                off.spinIntoMps(),
                off.spinUpMps());
    }

    /** The diamond where the last leg, drawn on beyond another rail if need be, meets a long rail. */
    private double drawnOn(PathEvent last, Rail wanted) {
        BallState ball = last.before();
        double across = table.lineM(wanted) - ball.yM();
        boolean there = last.rail().orElseThrow() == wanted;
        if (!there && !(across * ball.vyMps() > 0)) {
            return Double.NaN;
        }
        double xM = there ? ball.xM() : ball.xM() + across * ball.vxMps() / ball.vyMps();
        return table.diamonds(new TablePoint(xM, 0)).xDia();
    }
}
