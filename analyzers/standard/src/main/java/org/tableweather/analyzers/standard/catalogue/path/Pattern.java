package org.tableweather.analyzers.standard.catalogue.path;

import java.util.List;
import org.tableweather.analyzers.standard.physics.Ball;
import org.tableweather.analyzers.standard.physics.BallState;
import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.schema.geometry.MirrorPath;
import org.tableweather.schema.geometry.NominalPath;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

/**
 * A ball's way as it is meant, on one table.
 *
 * @param name of the shot, or what was typed, in words
 * @param table where
 * @param start in diamonds
 * @param aim on the first rail, in diamonds
 * @param rails in order
 * @param targetRail along which the landing is read
 * @param targetDia where on it 0 is
 * @param longSign +1 when long is towards larger diamonds
 * @param speedMps of a rolling ball on arrival at the first rail, or at the start when {@code atStart}
 * @param atStart whether the speed is that at the start
 * @param sideSpinRps at the start
 * @param rollRatio at the start
 */
record Pattern(
        String name,
        TableSize table,
        Shot.Position start,
        Shot.Position aim,
        List<Rail> rails,
        Rail targetRail,
        double targetDia,
        int longSign,
        double speedMps,
        boolean atStart,
        double sideSpinRps,
        double rollRatio) {

    /** A shot of the catalogue, as far as the question does not say otherwise. */
    static Pattern of(Shot shot, PathQuestion question, TableSize table) {
        Rail target = shot.targetRail().orElseThrow();
        Shot.Position place = shot.target().orElseThrow();
        return new Pattern(
                shot.id(),
                table,
                question.start().orElse(shot.start().orElseThrow()),
                question.aim().orElse(shot.aim().orElseThrow()),
                question.rails().isEmpty() ? shot.rails() : question.rails(),
                target,
                isShort(target) ? place.yDia() : place.xDia(),
                longSign(shot, table, isShort(target)),
                question.speedMps().orElse(shot.approachSpeedMps().orElseThrow()),
                question.speedMps().isPresent(),
                question.sideSpinRps(),
                question.rollRatio());
    }

    /** A typed way over these rails; landings are told as places along the next rail. */
    static Pattern typed(PathQuestion question, TableSize table, List<Rail> rails, Rail next) {
        return new Pattern(
                "the typed shot",
                table,
                question.start().orElseThrow(),
                question.aim().orElseThrow(),
                rails,
                next,
                0,
                1,
                question.speedMps().orElse(STANDARD_MPS),
                true,
                question.sideSpinRps(),
                question.rollRatio());
    }

    private static final double STANDARD_MPS = 3;

    private static int longSign(Shot shot, TableSize table, boolean isShort) {
        return NominalPath.of(shot, table).fold(path -> travel(path, isShort) < -1e-9 ? -1 : 1, impossible -> 1);
    }

    private static double travel(MirrorPath.Found path, boolean isShort) {
        TablePoint end = path.points().get(path.points().size() - 1);
        TablePoint before = path.points().get(path.points().size() - 2);
        return isShort ? end.yM() - before.yM() : end.xM() - before.xM();
    }

    static boolean isShort(Rail rail) {
        return rail == Rail.HEAD || rail == Rail.FOOT;
    }

    /** The same with the aim moved along the first rail, diamonds. */
    Pattern aimed(double byDia) {
        boolean across = isShort(rails.get(0));
        Shot.Position moved = new Shot.Position(aim.xDia() + (across ? 0 : byDia), aim.yDia() + (across ? byDia : 0));
        return with(moved, speedMps, sideSpinRps);
    }

    /** The same at another speed. */
    Pattern at(double otherMps) {
        return with(aim, otherMps, sideSpinRps);
    }

    /** The same with other side spin. */
    Pattern spun(double otherRps) {
        return with(aim, speedMps, otherRps);
    }

    private Pattern with(Shot.Position otherAim, double otherMps, double otherRps) {
        return new Pattern(
                name,
                table,
                start,
                otherAim,
                rails,
                targetRail,
                targetDia,
                longSign,
                otherMps,
                atStart,
                otherRps,
                rollRatio);
    }

    /** The ball as it is sent off. */
    BallState ball(ClothFriction cloth) {
        TablePoint from = table.heldInside(table.point(start));
        TablePoint towards = table.point(aim);
        double lost = atStart ? 0 : 2 * cloth.rolling() * ClothFriction.GRAVITY * from.distanceM(towards);
        double speed = Math.sqrt(speedMps * speedMps + lost);
        return BallState.sent(from, towards, speed, rollRatio, sideSpinRps, ballOf());
    }

    Ball ballOf() {
        return new Ball(table.ballDiameterM(), Ball.POOL.massKg());
    }

    /** Whether landings are told from a target. */
    boolean hasTarget() {
        return targetDia != 0;
    }

    /** Diamonds from the target, positive long; for a typed way the place along the rail. */
    double offsetDia(TablePoint place) {
        Shot.Position at = table.diamonds(place);
        return longSign * ((isShort(targetRail) ? at.yDia() : at.xDia()) - targetDia);
    }
}
