package org.tableweather.schema.climate;

/**
 * How much more vapour saturates air than saturates an empty volume of the same temperature; off by default.
 *
 * <p>At room climates the factor is about 1.004. It depends on pressure alone here, so it drops out of the dew point of a measured
 * relative humidity and out of the humidity at the bed; it stays in vapour pressure, g/m³, g/kg and enthalpy.
 */
public enum Enhancement {
    /** Water vapour as if air were not there: what the handbook's tables for engineers and the reference library do. */
    NONE("no enhancement factor", "ASHRAE2017") {
        @Override
        public double factor(double pressurePa) {
            MoistAir.PRESSURE.require(pressurePa);
            return 1;
        }
    },

    /**
     * {@code f = 1.0007 + 3.46·10⁻⁶ p/hPa}; 1.00421 at 1013.25 hPa.
     *
     * @source Buck1981
     */
    BUCK_1981("enhancement factor of Buck 1981", "Buck1981") {
        @Override
        public double factor(double pressurePa) {
            return 1.0007 + 3.46e-6 * (MoistAir.PRESSURE.require(pressurePa) / 100);
        }
    };

    private final String label;
    private final String reference;

    Enhancement(String label, String reference) {
        this.label = label;
        this.reference = reference;
    }

    /**
     * The factor on the saturation pressure.
     *
     * @param pressurePa pressure of the air, Pa, inside {@link MoistAir#PRESSURE}
     * @return dimensionless
     * @throws IllegalArgumentException outside the range
     */
    public abstract double factor(double pressurePa);

    /** Name for people. */
    public String label() {
        return label;
    }

    /** Key in {@code references.bib}. */
    public String reference() {
        return reference;
    }
}
