package org.tableweather.analyzers.standard.climate;

import java.time.LocalDate;
import java.util.Optional;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;
import org.tableweather.schema.record.Instrument;

/**
 * Both corrections of a thermo-hygrometer for one session.
 *
 * @param temperature of its temperatures
 * @param humidity of its humidities
 */
public record InstrumentCorrections(InstrumentCorrection temperature, InstrumentCorrection humidity) {

    /** From what is known of the instrument, for a session on that day. */
    public static InstrumentCorrections of(Instrument instrument, LocalDate on) {
        return new InstrumentCorrections(
                InstrumentCorrection.of(instrument, Quantity.TEMPERATURE, on),
                InstrumentCorrection.of(instrument, Quantity.HUMIDITY, on));
    }

    /**
     * A trial's air with the corrections applied and their uncertainty carried along; empty when one of the two is not known.
     *
     * @param tempC as read, °C
     * @param rhPct as read, %
     * @param pressurePa pressure of the air, Pa
     */
    public Optional<AirReading> air(double tempC, double rhPct, double pressurePa) {
        Optional<UncertainValue> temp = temperature.apply(tempC).uncertain();
        Optional<UncertainValue> damp = humidity.apply(rhPct).uncertain();
        return temp.isPresent() && damp.isPresent()
                ? Optional.of(AirReading.of(temp.get(), damp.get(), pressurePa))
                : Optional.empty();
    }
}
