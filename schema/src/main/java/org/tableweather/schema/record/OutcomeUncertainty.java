package org.tableweather.schema.record;

/**
 * Standard uncertainties of what one trial states, one standard deviation in the unit of the quantity; NaN when not stated.
 *
 * @param approachAngleUDeg of approachAngleDeg
 * @param approachSpeedUMps of approachSpeedMps
 * @param reboundAngleUDeg of reboundAngleDeg
 * @param reboundSpeedUMps of reboundSpeedMps
 * @param finalReboundAngleUDeg of finalReboundAngleDeg
 * @param landingOffsetUDia of landingOffsetDia
 * @param runOutUM of runOutM
 * @param runOutULengths of runOutLengths
 * @param objectAngleUDeg of objectAngleDeg
 * @param deflectionAngleUDeg of deflectionAngleDeg
 * @param hopHeightUMm of hopHeightMm
 * @param spreadNearestUMm of spreadNearestMm
 * @param cueBallTravelUM of cueBallTravelM
 * @source JCGM100
 */
public record OutcomeUncertainty(
        double approachAngleUDeg,
        double approachSpeedUMps,
        double reboundAngleUDeg,
        double reboundSpeedUMps,
        double finalReboundAngleUDeg,
        double landingOffsetUDia,
        double runOutUM,
        double runOutULengths,
        double objectAngleUDeg,
        double deflectionAngleUDeg,
        double hopHeightUMm,
        double spreadNearestUMm,
        double cueBallTravelUM) {

    /** None stated. */
    public static final OutcomeUncertainty NONE = new OutcomeUncertainty(
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Double.NaN);

    /** This, or the shared {@link #NONE} when nothing is stated. */
    public OutcomeUncertainty orNone() {
        return equals(NONE) ? NONE : this;
    }
}
