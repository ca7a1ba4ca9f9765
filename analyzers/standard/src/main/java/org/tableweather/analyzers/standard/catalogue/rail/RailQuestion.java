package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.HumidityMeasure;

/**
 * What is asked.
 *
 * @param shot only pairs of this shot
 * @param measure what is taken for humidity
 * @param stepped whether the stepped impact is fitted instead of the closed form
 */
record RailQuestion(Optional<String> shot, HumidityMeasure measure, boolean stepped) {

    static final String SHOT = "shot";
    static final String MEASURE = "humidity_measure";
    static final String IMPACT = "impact";
    static final String CLOSED_FORM = "closed-form";
    static final String STEPPED = "stepped";

    static RailQuestion of(Parameters parameters) {
        return new RailQuestion(
                parameters.text(SHOT),
                HumidityMeasure.of(parameters.text(MEASURE).orElse(HumidityMeasure.RELATIVE.parameter)),
                parameters.text(IMPACT).filter(STEPPED::equals).isPresent());
    }

    String impact() {
        return stepped ? STEPPED : CLOSED_FORM;
    }
}
