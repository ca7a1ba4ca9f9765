package org.tableweather.schema.geometry;

/**
 * The steps of the scales from which typed figures were read.
 *
 * @param angleDeg of angles, degrees
 * @param offsetDia of landing offsets, diamonds
 */
public record TypedResolution(double angleDeg, double offsetDia) {

    /** Angles read to a degree, landings to a tenth of a diamond: common practice, no source. */
    public static final TypedResolution BY_EYE = new TypedResolution(1, 0.1);
}
