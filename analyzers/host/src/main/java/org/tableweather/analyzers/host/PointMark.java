package org.tableweather.analyzers.host;

import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;

/**
 * The shape of one plotted point that knows whose it is, so that an SVG can say so.
 *
 * @param outline what is painted
 * @param room whose point
 * @param words the point in words, with units
 */
record PointMark(Shape outline, String room, String words) implements Shape {

    @Override
    public Rectangle getBounds() {
        return outline.getBounds();
    }

    @Override
    public Rectangle2D getBounds2D() {
        return outline.getBounds2D();
    }

    @Override
    public boolean contains(double x, double y) {
        return outline.contains(x, y);
    }

    @Override
    public boolean contains(Point2D point) {
        return outline.contains(point);
    }

    @Override
    public boolean intersects(double x, double y, double width, double height) {
        return outline.intersects(x, y, width, height);
    }

    @Override
    public boolean intersects(Rectangle2D area) {
        return outline.intersects(area);
    }

    @Override
    public boolean contains(double x, double y, double width, double height) {
        return outline.contains(x, y, width, height);
    }

    @Override
    public boolean contains(Rectangle2D area) {
        return outline.contains(area);
    }

    @Override
    public PathIterator getPathIterator(AffineTransform transform) {
        return outline.getPathIterator(transform);
    }

    @Override
    public PathIterator getPathIterator(AffineTransform transform, double flatness) {
        return outline.getPathIterator(transform, flatness);
    }
}
