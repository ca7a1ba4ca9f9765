package org.tableweather.schema.record;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A thermometer, hygrometer or logger.
 *
 * @param id unique in the contribution
 * @param model make and type, free text
 * @param quantities {@code temperature}, {@code humidity}, {@code pressure}
 * @param accuracyRhPct stated accuracy, ± %RH
 * @param accuracyC stated accuracy, ± K
 * @param resolutionRhPct smallest step, %RH
 * @param resolutionC smallest step, K
 * @param calibrations comparisons with something better known
 */
public record Instrument(
        String id,
        Optional<String> model,
        List<String> quantities,
        OptionalDouble accuracyRhPct,
        OptionalDouble accuracyC,
        OptionalDouble resolutionRhPct,
        OptionalDouble resolutionC,
        List<Calibration> calibrations) {

    public Instrument {
        quantities = quantities == null ? List.of() : List.copyOf(quantities);
        calibrations = calibrations == null ? List.of() : List.copyOf(calibrations);
    }
}
