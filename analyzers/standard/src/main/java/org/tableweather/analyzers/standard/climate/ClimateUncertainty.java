package org.tableweather.analyzers.standard.climate;

import org.tableweather.analyzers.standard.uncertainty.Propagation;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;
import org.tableweather.analyzers.standard.uncertainty.UncertaintyBudget;
import org.tableweather.schema.climate.MoistAir;

/**
 * Uncertainty of what is computed from temperature and humidity, sensitivities from the formulas themselves.
 *
 * <p>The formulas' own error is not in it: at room climates the saturation curve is known to 0.03 %, which is 0.005 K of dew point.
 *
 * @source JCGM100
 */
public final class ClimateUncertainty {
    private static final double ZERO_C = 273.15;
    private static final String BED = "bedC";

    private ClimateUncertainty() {}

    /**
     * Dew point, °C: {@code ∂t_d/∂RH = e'ₛ(t)/(100 e'ₛ'(t_d))}, {@code ∂t_d/∂t = RH e'ₛ'(t)/(100 e'ₛ'(t_d))}.
     *
     * @throws IllegalArgumentException where {@link MoistAir#dewPointC()} has no value
     */
    public static UncertaintyBudget dewPointC(AirReading reading) {
        MoistAir air = reading.air();
        double dewC = air.dewPointC();
        return Propagation.of(dewC, dewSensitivities(air, dewC), reading.inputs());
    }

    /** Absolute humidity, g/m³: {@code ∂a/∂RH = a/RH}, {@code ∂a/∂t = a (e'ₛ'(t)/e'ₛ(t) − 1/T)}. */
    public static UncertaintyBudget absoluteHumidityGPerM3(AirReading reading) {
        MoistAir air = reading.air();
        double saturated = new MoistAir(air.tempC(), 100, air.pressurePa(), air.formula()).absoluteHumidityGPerM3();
        double value = air.absoluteHumidityGPerM3();
        double[] sensitivities = {
            value * (relativeSlope(air, air.tempC()) - 1 / (air.tempC() + ZERO_C)), saturated / 100
        };
        return Propagation.of(value, sensitivities, reading.inputs());
    }

    /**
     * Relative humidity at the bed, %: {@code RH_b = RH e'ₛ(t)/e'ₛ(t_b)}.
     *
     * @param reading of the room's air
     * @param bedC temperature of the bed, °C, independent of the reading
     * @throws IllegalArgumentException if water condenses on the bed
     */
    public static UncertaintyBudget bedRhPct(AirReading reading, UncertainValue bedC) {
        MoistAir air = reading.air();
        double atBed = air.rhPctAt(bedC.value());
        double ratio = saturation(air, air.tempC()) / saturation(air, bedC.value());
        double[] sensitivities = {
            atBed * relativeSlope(air, air.tempC()), ratio, -atBed * relativeSlope(air, bedC.value())
        };
        return Propagation.of(atBed, sensitivities, reading.inputs().and(BED, bedC));
    }

    /**
     * How far the bed is above the air's dew point, K; below zero it sweats.
     *
     * @param reading of the room's air
     * @param bedC temperature of the bed, °C, independent of the reading
     */
    public static UncertaintyBudget marginAboveDewPointK(AirReading reading, UncertainValue bedC) {
        MoistAir air = reading.air();
        double dewC = air.dewPointC();
        double[] dew = dewSensitivities(air, dewC);
        return Propagation.of(
                bedC.value() - dewC,
                new double[] {-dew[0], -dew[1], 1},
                reading.inputs().and(BED, bedC));
    }

    private static double[] dewSensitivities(MoistAir air, double dewC) {
        double slopeAtDew = slope(air, dewC);
        return new double[] {
            air.rhPct() / 100 * slope(air, air.tempC()) / slopeAtDew, saturation(air, air.tempC()) / 100 / slopeAtDew
        };
    }

    private static double relativeSlope(MoistAir air, double tempC) {
        return slope(air, tempC) / saturation(air, tempC);
    }

    private static double saturation(MoistAir air, double tempC) {
        return air.formula().saturationPa(tempC, air.pressurePa());
    }

    private static double slope(MoistAir air, double tempC) {
        return air.formula().saturationSlopePaPerK(tempC, air.pressurePa());
    }
}
