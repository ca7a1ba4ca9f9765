package org.tableweather.schema.geometry;

/**
 * {@code u = (h₀x + h₁y + h₂)/w, v = (h₃x + h₄y + h₅)/w, w = h₆x + h₇y + 1}, in scaled coordinates.
 *
 * <p>Fixing the last coefficient at 1 loses nothing here: the origin is the centroid of points that the camera sees, and w
 * is linear and has one sign on all of them, so it cannot vanish between them.
 */
final class ProjectiveMap {

    /** How many coefficients are free. */
    static final int COEFFICIENTS = 8;

    private final double[] h;

    ProjectiveMap(double[] coefficients) {
        h = coefficients.clone();
    }

    double coefficient(int i) {
        return i < COEFFICIENTS ? h[i] : 1;
    }

    /** w: positive in front of the camera. */
    double depth(double[] x) {
        return h[6] * x[0] + h[7] * x[1] + 1;
    }

    double[] image(double[] x) {
        double w = depth(x);
        return new double[] {(h[0] * x[0] + h[1] * x[1] + h[2]) / w, (h[3] * x[0] + h[4] * x[1] + h[5]) / w};
    }

    /** The point with this image. */
    double[] origin(double[] image) {
        double a = h[0] - image[0] * h[6];
        double b = h[1] - image[0] * h[7];
        double c = h[3] - image[1] * h[6];
        double d = h[4] - image[1] * h[7];
        double e = image[0] - h[2];
        double f = image[1] - h[5];
        double determinant = a * d - b * c;
        return new double[] {(e * d - b * f) / determinant, (a * f - e * c) / determinant};
    }

    /** Derivatives of the image to x and y: row-major 2 × 2. */
    double[][] byPoint(double[] x) {
        double w = depth(x);
        double[] image = image(x);
        return new double[][] {
            {(h[0] - image[0] * h[6]) / w, (h[1] - image[0] * h[7]) / w},
            {(h[3] - image[1] * h[6]) / w, (h[4] - image[1] * h[7]) / w}
        };
    }

    /** Derivatives of the image to the coefficients: 2 × 8. */
    double[][] byCoefficients(double[] x) {
        double w = depth(x);
        double[] image = image(x);
        double p = x[0] / w;
        double q = x[1] / w;
        return new double[][] {
            {p, q, 1 / w, 0, 0, 0, -image[0] * p, -image[0] * q}, {0, 0, 0, p, q, 1 / w, -image[1] * p, -image[1] * q}
        };
    }

    ProjectiveMap plus(double[] step, double part) {
        double[] moved = h.clone();
        for (int i = 0; i < COEFFICIENTS; i++) {
            moved[i] += part * step[i];
        }
        return new ProjectiveMap(moved);
    }
}
