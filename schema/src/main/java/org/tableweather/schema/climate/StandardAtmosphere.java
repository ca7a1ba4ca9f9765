package org.tableweather.schema.climate;

/**
 * Pressure of the US Standard Atmosphere 1976 in its lowest layer: what to take for a room whose pressure nobody measured.
 *
 * <p>Weather moves the real pressure by about ±3 % around it.
 *
 * @source USSA1976
 */
public final class StandardAtmosphere {
    /** Altitudes of the lowest layer, m. */
    public static final ValidRange ALTITUDE = new ValidRange("altitudeM", -5_000, 11_000, "m");

    private static final double SEA_LEVEL_K = 288.15;
    private static final double LAPSE_K_PER_M = 0.0065;
    private static final double EARTH_RADIUS_M = 6_356_766;

    /** g₀ M / (R* L) with g₀ = 9.80665 m/s², M = 28.9644 g/mol, R* = 8.31432 J/(mol K). */
    private static final double EXPONENT = 9.80665 * 28.9644e-3 / (8.31432 * LAPSE_K_PER_M);

    private StandardAtmosphere() {}

    /**
     * Pressure at a height above the sea as maps have it (geometric): {@code H = r z / (r + z)}, then as below.
     *
     * @param altitudeM m, inside {@link #ALTITUDE}
     * @return Pa
     * @throws IllegalArgumentException outside the range
     */
    public static double pressurePa(double altitudeM) {
        double z = ALTITUDE.require(altitudeM);
        return pressure(EARTH_RADIUS_M * z / (EARTH_RADIUS_M + z));
    }

    /**
     * Pressure at a geopotential height: {@code p = 101325 (1 − L H / T₀)^(g₀M/(R*L))}. The two differ by 2 Pa at 1 km.
     *
     * @param geopotentialM m, inside {@link #ALTITUDE}
     * @return Pa
     * @throws IllegalArgumentException outside the range
     */
    public static double pressurePaAtGeopotential(double geopotentialM) {
        return pressure(ALTITUDE.require(geopotentialM));
    }

    private static double pressure(double geopotentialM) {
        return MoistAir.SEA_LEVEL_PA * StrictMath.pow(1 - LAPSE_K_PER_M * geopotentialM / SEA_LEVEL_K, EXPONENT);
    }
}
