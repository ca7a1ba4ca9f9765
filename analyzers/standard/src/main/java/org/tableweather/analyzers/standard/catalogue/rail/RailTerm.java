package org.tableweather.analyzers.standard.catalogue.rail;

/**
 * The coefficients: restitution e and the logarithm of friction μ, linear in the speed across the rail, humidity and temperature.
 * {@code typical} is how much each might matter: what is known worse than that is not known.
 */
enum RailTerm {
    /** e at the origin. */
    RESTITUTION(0.1),
    /** Change of e per m/s across. */
    RESTITUTION_SPEED(0.1),
    /** Change of e per step of humidity. */
    RESTITUTION_HUMIDITY(0.03),
    /** Change of e per 5 K. */
    RESTITUTION_TEMPERATURE(0.03),
    /** log μ at the origin. */
    FRICTION(0.5),
    /** Change of log μ per step of humidity. */
    FRICTION_HUMIDITY(0.15),
    /** Change of log μ per 5 K. */
    FRICTION_TEMPERATURE(0.15);

    final double typical;

    RailTerm(double typical) {
        this.typical = typical;
    }

    /** Whether it is one of e's. */
    boolean ofRestitution() {
        return ordinal() < FRICTION.ordinal();
    }

    /** The name in the answer. */
    String key() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', '.');
    }
}
