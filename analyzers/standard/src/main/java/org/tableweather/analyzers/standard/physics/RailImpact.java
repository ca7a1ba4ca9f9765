package org.tableweather.analyzers.standard.physics;

/** What a rail does to a ball. */
@FunctionalInterface
public interface RailImpact {

    /**
     * The motion after the impact.
     *
     * @param before on the cloth, {@code intoMps} above 0
     * @return {@code intoMps} at most 0; never more energy than before
     */
    RailMotion after(RailMotion before);
}
