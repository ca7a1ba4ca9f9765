package org.tableweather.schema.geometry;

import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

/**
 * The playing area and the ball: what turns diamonds into metres and back.
 *
 * @param playingLengthM nose to nose along, m, finite and &gt; 0
 * @param playingWidthM nose to nose across, m, finite and &gt; 0
 * @param ballDiameterM m, &gt; 0 and less than half of the shorter side
 */
public record TableSize(double playingLengthM, double playingWidthM, double ballDiameterM) {

    /** Diamonds along a long rail. */
    public static final int DIAMONDS_ALONG = 8;

    /** Diamonds along a short rail. */
    public static final int DIAMONDS_ACROSS = 4;

    /**
     * The table on which the figures of the built-in shots are printed: 2540 mm × 1270 mm, ball 57.15 mm.
     *
     * @source WpaEquipment
     */
    public static final TableSize REFERENCE = new TableSize(2.54, 1.27, 0.05715);

    public TableSize {
        if (!possible(playingLengthM, playingWidthM, ballDiameterM)) {
            throw new IllegalArgumentException("no table: playing area " + playingLengthM + " m × " + playingWidthM
                    + " m, ball " + ballDiameterM + " m");
        }
    }

    /**
     * A table from figures that may be unfit.
     *
     * @return empty when no ball could roll on it
     */
    public static Optional<TableSize> of(double playingLengthM, double playingWidthM, double ballDiameterM) {
        return possible(playingLengthM, playingWidthM, ballDiameterM)
                ? Optional.of(new TableSize(playingLengthM, playingWidthM, ballDiameterM))
                : Optional.empty();
    }

    /**
     * The size that a contribution states. A width that is not stated is half the length.
     *
     * @param table the table
     * @param balls the session's ball set, when there is one
     * @param otherwiseBallDiameterM the ball when none is stated, m
     * @return empty when the playing length is not stated, or the figures make no table
     */
    public static Optional<TableSize> stated(PoolTable table, Optional<BallSet> balls, double otherwiseBallDiameterM) {
        if (table.playingLengthMm().isEmpty()) {
            return Optional.empty();
        }
        double lengthM = table.playingLengthMm().getAsDouble() / 1000;
        OptionalDouble ballMm = balls.map(BallSet::diameterMm).orElse(OptionalDouble.empty());
        double ballM = ballMm.isPresent() ? ballMm.getAsDouble() / 1000 : otherwiseBallDiameterM;
        OptionalDouble widthMm = table.playingWidthMm();
        return of(lengthM, widthMm.isPresent() ? widthMm.getAsDouble() / 1000 : lengthM / 2, ballM);
    }

    private static boolean possible(double lengthM, double widthM, double ballM) {
        return lengthM > 0
                && widthM > 0
                && ballM > 0
                && ballM < Math.min(lengthM, widthM) / 2
                && Double.isFinite(lengthM)
                && Double.isFinite(widthM);
    }

    /** How far a centre stays from the nose line of a rail that the ball touches, m. */
    public double ballRadiusM() {
        return ballDiameterM / 2;
    }

    /** A diamond along, m. */
    public double diamondAlongM() {
        return playingLengthM / DIAMONDS_ALONG;
    }

    /** A diamond across, m. */
    public double diamondAcrossM() {
        return playingWidthM / DIAMONDS_ACROSS;
    }

    /** A diamond in the direction of a rail, m. */
    public double diamondAlongM(Rail rail) {
        return new RailFrame(rail).isShort() ? diamondAcrossM() : diamondAlongM();
    }

    /** How far centres travel from short rail to short rail, m: the playing length less one ball diameter. */
    public double centreLengthM() {
        return playingLengthM - ballDiameterM;
    }

    /** How far centres travel from long rail to long rail, m: the playing width less one ball diameter. */
    public double centreWidthM() {
        return playingWidthM - ballDiameterM;
    }

    /** Diamonds to metres. */
    public TablePoint point(double xDia, double yDia) {
        return new TablePoint(xDia * diamondAlongM(), yDia * diamondAcrossM());
    }

    /** Diamonds to metres. */
    public TablePoint point(Shot.Position position) {
        return point(position.xDia(), position.yDia());
    }

    /** Metres to diamonds. */
    public Shot.Position diamonds(TablePoint point) {
        return new Shot.Position(point.xM() / diamondAlongM(), point.yM() / diamondAcrossM());
    }

    /**
     * Where the centre of a ball is that touches a rail.
     *
     * @param rail which
     * @return x for a short rail, y for a long one, m
     */
    public double lineM(Rail rail) {
        return switch (rail) {
            case HEAD, NEAR -> ballRadiusM();
            case FOOT -> playingLengthM - ballRadiusM();
            case FAR -> playingWidthM - ballRadiusM();
        };
    }

    /** The same place along the rail, of a ball that touches it. */
    public TablePoint heldTo(Rail rail, TablePoint point) {
        RailFrame frame = new RailFrame(rail);
        return frame.point(frame.along(point), lineM(rail));
    }

    /** The nearest place that a ball's centre can take. */
    public TablePoint heldInside(TablePoint point) {
        return new TablePoint(
                Math.min(Math.max(point.xM(), lineM(Rail.HEAD)), lineM(Rail.FOOT)),
                Math.min(Math.max(point.yM(), lineM(Rail.NEAR)), lineM(Rail.FAR)));
    }

    /** How far a point lies outside the rectangle of centres, m; 0 inside. */
    public double outsideM(TablePoint point) {
        return point.distanceM(heldInside(point));
    }
}
