package org.tableweather.analyzers.standard.uncertainty;

/** A measurement model: the result as a function of its inputs. */
@FunctionalInterface
public interface Measurand {
    /**
     * The result.
     *
     * @param inputs in the order of the {@link UncertainInputs}
     */
    double at(double[] inputs);
}
