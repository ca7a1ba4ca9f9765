package org.tableweather.schema.geometry;

import org.tableweather.schema.record.Rail;

/**
 * A point of the table whose place is known, and where it is seen on the frame.
 *
 * <p>A homography maps one plane. Points at another height are seen elsewhere: a height difference Δh shifts a point by
 * Δh / tan ε on the table, ε being the camera's angle above the plane, so at 45° a nose 8 mm above the height of a ball's
 * centre shifts by 8 mm, at 20° by 22 mm. Use points near the height of the ball's centre (noses rather than the tops of
 * the rails) and a high camera.
 *
 * @param onTable in the table frame, m; may lie outside the playing area
 * @param onFrame in pixels
 */
public record KnownPoint(TablePoint onTable, PixelPoint onFrame) {

    /** The nose of a rail opposite a diamond, counted from the head rail (long rails) or the near rail (short rails). */
    public static KnownPoint nose(TableSize table, Rail rail, double diamond, PixelPoint onFrame) {
        return sight(table, rail, diamond, 0, onFrame);
    }

    /**
     * The sight of a diamond.
     *
     * @param table its size
     * @param rail which
     * @param diamond counted from the head rail (long rails) or the near rail (short rails)
     * @param behindNoseM distance of the sight's centre from the nose line, m
     * @param onFrame where it is seen
     */
    public static KnownPoint sight(TableSize table, Rail rail, double diamond, double behindNoseM, PixelPoint onFrame) {
        RailFrame frame = new RailFrame(rail);
        double nose = table.lineM(rail) - frame.inward() * table.ballRadiusM();
        double along = diamond * table.diamondAlongM(rail);
        return new KnownPoint(frame.point(along, nose - frame.inward() * behindNoseM), onFrame);
    }
}
