package org.tableweather.analyzers.standard.climate;

import java.util.Optional;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;
import org.tableweather.analyzers.standard.uncertainty.UncertaintyBudget;

/**
 * What the cloth feels: the room's air brought to the bed's temperature. A heated bed is a dry bed; a cold one may sweat.
 *
 * <p>The vapour is taken as the same at the bed as in the room, which holds for air that is moved and a bed that neither gives off
 * nor takes up much water.
 *
 * @param room the reading of the room's air
 * @param bedC temperature of the bed, °C
 * @param marginK the bed above the air's dew point, K
 * @param rhPct relative humidity at the bed, %; empty where water condenses
 */
public record BedClimate(
        AirReading room, UncertainValue bedC, UncertaintyBudget marginK, Optional<UncertaintyBudget> rhPct) {

    private static final double LEVEL = 0.95;

    /** Whether the bed sweats. */
    public enum Condensation {
        /** The bed is warmer than the dew point by more than the uncertainty. */
        NONE,
        /** Within the uncertainty the bed may be at the dew point. */
        POSSIBLE,
        /** The bed as read is at the dew point or below. */
        PRESENT
    }

    /**
     * The climate at the bed.
     *
     * @param room a reading of the room's air
     * @param bedC temperature of the bed, °C, read by another sensor
     * @throws IllegalArgumentException outside the ranges of the formulas, or without any vapour
     */
    public static BedClimate of(AirReading room, UncertainValue bedC) {
        boolean condenses = room.air().condensesOn(bedC.value());
        return new BedClimate(
                room,
                bedC,
                ClimateUncertainty.marginAboveDewPointK(room, bedC),
                condenses ? Optional.empty() : Optional.of(ClimateUncertainty.bedRhPct(room, bedC)));
    }

    /** Whether the bed sweats, or may within a 95 % interval of the margin. */
    public Condensation condensation() {
        if (rhPct.isEmpty()) {
            return Condensation.PRESENT;
        }
        // Correlated readings of few observations have no degrees of freedom to state: k = 2 then.
        double reach =
                marginK.degreesOfFreedom().isPresent() ? marginK.expanded(LEVEL) : 2 * marginK.standardUncertainty();
        return marginK.value() <= reach ? Condensation.POSSIBLE : Condensation.NONE;
    }
}
