package org.tableweather.schema.geometry;

/**
 * A place on a video frame.
 *
 * @param uPx to the right, pixels
 * @param vPx down, pixels
 */
public record PixelPoint(double uPx, double vPx) {

    /** Straight distance, pixels. */
    public double distancePx(PixelPoint other) {
        return Math.hypot(other.uPx - uPx, other.vPx - vPx);
    }
}
