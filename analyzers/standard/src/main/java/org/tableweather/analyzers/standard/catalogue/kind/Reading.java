package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.function.ToDoubleFunction;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** A number of one attempt, which may need the table or the balls of its session. */
@FunctionalInterface
interface Reading {

    /** Numbers beyond this are no measurement, and their squares could overflow. */
    double LARGEST = 1e9;

    /** The number; NaN when it is not measured. */
    double of(SessionRecord session, Trial trial);

    /** A column of the trial. */
    static Reading column(ToDoubleFunction<Trial> column) {
        return (session, trial) -> column.applyAsDouble(trial);
    }

    /** The same counted from an origin. */
    default Reading from(double origin) {
        return (session, trial) -> of(session, trial) - origin;
    }

    /** The number, NaN also when it is beyond measurement. */
    default double bounded(SessionRecord session, Trial trial) {
        double number = of(session, trial);
        return Math.abs(number) <= LARGEST ? number : Double.NaN;
    }
}
