package org.tableweather.server.catalogue;

import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

/** How one column of a trial is told apart from nothing, and written. */
interface TrialField {

    /** Whether the trial has a value here. */
    boolean isPresent(Trial trial);

    /** Writes the value, or its absence. */
    void write(Trial trial, TrialEncoder out);

    /** A number, NaN when not measured. */
    static TrialField number(ToDoubleFunction<Trial> of) {
        return new TrialField() {
            @Override
            public boolean isPresent(Trial trial) {
                return !Double.isNaN(of.applyAsDouble(trial));
            }

            @Override
            public void write(Trial trial, TrialEncoder out) {
                out.number(of.applyAsDouble(trial));
            }
        };
    }

    /** A count, −1 when not stated. */
    static TrialField count(ToIntFunction<Trial> of) {
        return new TrialField() {
            @Override
            public boolean isPresent(Trial trial) {
                return of.applyAsInt(trial) >= 0;
            }

            @Override
            public void write(Trial trial, TrialEncoder out) {
                out.count(of.applyAsInt(trial));
            }
        };
    }

    /** A text, empty when not stated. */
    static TrialField text(Function<Trial, String> of) {
        return new TrialField() {
            @Override
            public boolean isPresent(Trial trial) {
                return !of.apply(trial).isEmpty();
            }

            @Override
            public void write(Trial trial, TrialEncoder out) {
                out.text(of.apply(trial));
            }
        };
    }

    /** A time. */
    static TrialField time(Function<Trial, Optional<Instant>> of) {
        return new TrialField() {
            @Override
            public boolean isPresent(Trial trial) {
                return of.apply(trial).isPresent();
            }

            @Override
            public void write(Trial trial, TrialEncoder out) {
                out.time(of.apply(trial));
            }
        };
    }

    /** Made or missed. */
    static TrialField made(Function<Trial, Made> of) {
        return new TrialField() {
            @Override
            public boolean isPresent(Trial trial) {
                return of.apply(trial) != Made.NOT_STATED;
            }

            @Override
            public void write(Trial trial, TrialEncoder out) {
                out.made(of.apply(trial));
            }
        };
    }
}
