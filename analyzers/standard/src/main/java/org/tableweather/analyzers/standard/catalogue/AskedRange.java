package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.spi.Parameters;

/**
 * The humidities that were asked for, as those of a curve.
 *
 * @param fromPct where they begin, %RH; empty: as the data have it
 * @param toPct where they end, %RH; empty: as the data have it
 */
public record AskedRange(Optional<Double> fromPct, Optional<Double> toPct) {

    /** Parameter of the beginning. */
    public static final String FROM = "curve_from_pct";
    /** Parameter of the end. */
    public static final String TO = "curve_to_pct";

    /** The parameter of the beginning. */
    public static ParameterInfo beginning() {
        return new ParameterInfo(
                FROM, "humidity where the curve begins; when not set, where the sessions begin", "%", "", List.of());
    }

    /** The parameter of the end. */
    public static ParameterInfo end() {
        return new ParameterInfo(
                TO, "humidity where the curve ends; when not set, where the sessions end", "%", "", List.of());
    }

    /**
     * Reads them.
     *
     * @throws IllegalArgumentException for a value that cannot be; the message holds name, value, bound and remedy
     */
    public static AskedRange of(Parameters parameters) {
        return of(parameters, FROM, TO);
    }

    /** The same from parameters of these names. */
    public static AskedRange of(Parameters parameters, String from, String to) {
        AskedRange asked = new AskedRange(humidity(parameters, from), humidity(parameters, to));
        if (asked.fromPct.isPresent() && asked.toPct.isPresent() && !(asked.fromPct.get() < asked.toPct.get())) {
            throw new IllegalArgumentException("parameter " + from + " = " + Figures.plain(asked.fromPct.get())
                    + " is not below " + to + " = " + Figures.plain(asked.toPct.get()) + ": set a lower one");
        }
        return asked;
    }

    private static Optional<Double> humidity(Parameters parameters, String name) {
        Optional<Double> number = parameters.number(name);
        number.ifPresent(pct -> {
            if (pct < 0 || pct > 100) {
                throw new IllegalArgumentException("parameter " + name + " = " + Figures.plain(pct)
                        + " is outside 0 to 100 %RH: set a relative humidity");
            }
        });
        return number;
    }
}
