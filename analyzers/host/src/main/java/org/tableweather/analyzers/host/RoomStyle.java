package org.tableweather.analyzers.host;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * How the points of one room look: six inks that differ in lightness as well as in hue, so that they stay apart for
 * colour-blind eyes and in grey, and a shape of its own for each of twelve rooms. More rooms share one quiet style.
 *
 * @param ink colour of edge, bar and, when filled, of the inside
 * @param shape around the origin, about one unit in radius
 * @param filled whether the inside has the colour of the edge
 */
record RoomStyle(Color ink, Shape shape, boolean filled) {

    /** The most rooms that get a style of their own. */
    static final int DISTINCT = 12;

    private static final Color[] INKS = {
        new Color(0x2c1f8a), new Color(0xd97c1a), new Color(0x2a9fa0),
        new Color(0x6b123f), new Color(0x9a62e8), new Color(0x55491a)
    };
    private static final Shape[] SHAPES = {
        new Ellipse2D.Double(-0.9, -0.9, 1.8, 1.8),
        polygon(3, -90, 1.2),
        new Rectangle2D.Double(-0.85, -0.85, 1.7, 1.7),
        polygon(4, 0, 1.2),
        polygon(3, 90, 1.2),
        cross()
    };

    /**
     * The style of a room.
     *
     * @param index which room, from 0
     * @param rooms how many there are
     */
    static RoomStyle of(int index, int rooms) {
        if (rooms > DISTINCT) {
            return new RoomStyle(new Color(0x4a5a68), SHAPES[0], true);
        }
        boolean filled = index < SHAPES.length;
        int ink = filled ? index : (index + 3) % INKS.length;
        return new RoomStyle(INKS[ink], SHAPES[index % SHAPES.length], filled);
    }

    /** The style of points that are told apart by where they stand. */
    static RoomStyle plain() {
        return new RoomStyle(INKS[0], SHAPES[0], true);
    }

    /** The shape in pixels around a point. */
    Shape at(double xPx, double yPx, double radiusPx) {
        AffineTransform place = AffineTransform.getTranslateInstance(xPx, yPx);
        place.scale(radiusPx, radiusPx);
        return place.createTransformedShape(shape);
    }

    private static Shape polygon(int corners, double firstDeg, double radius) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < corners; i++) {
            double angle = Math.toRadians(firstDeg + 360.0 * i / corners);
            double x = radius * StrictMath.cos(angle);
            double y = radius * StrictMath.sin(angle);
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        path.closePath();
        return path;
    }

    private static Shape cross() {
        double[][] corners = {
            {-0.4, -1.1}, {0.4, -1.1}, {0.4, -0.4}, {1.1, -0.4}, {1.1, 0.4}, {0.4, 0.4},
            {0.4, 1.1}, {-0.4, 1.1}, {-0.4, 0.4}, {-1.1, 0.4}, {-1.1, -0.4}, {-0.4, -0.4}
        };
        Path2D path = new Path2D.Double();
        path.moveTo(corners[0][0], corners[0][1]);
        for (int i = 1; i < corners.length; i++) {
            path.lineTo(corners[i][0], corners[i][1]);
        }
        path.closePath();
        return path;
    }
}
