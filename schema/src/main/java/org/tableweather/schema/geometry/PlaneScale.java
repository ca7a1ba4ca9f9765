package org.tableweather.schema.geometry;

import java.util.List;

/**
 * Moves points to their centroid and scales their mean distance from it to √2, so that the equations of a homography are
 * well conditioned.
 *
 * @param centreX centroid
 * @param centreY centroid
 * @param factor scale, &gt; 0
 * @source Hartley1997
 */
record PlaneScale(double centreX, double centreY, double factor) {

    /** The scale of points, each x and y; infinite or NaN factor when they all coincide. */
    static PlaneScale of(List<double[]> points) {
        double x = 0;
        double y = 0;
        for (double[] point : points) {
            x += point[0] / points.size();
            y += point[1] / points.size();
        }
        double distance = 0;
        for (double[] point : points) {
            distance += Math.hypot(point[0] - x, point[1] - y) / points.size();
        }
        return new PlaneScale(x, y, Math.sqrt(2) / distance);
    }

    double[] scaled(double x, double y) {
        return new double[] {(x - centreX) * factor, (y - centreY) * factor};
    }

    double[] restored(double[] scaled) {
        return new double[] {scaled[0] / factor + centreX, scaled[1] / factor + centreY};
    }
}
