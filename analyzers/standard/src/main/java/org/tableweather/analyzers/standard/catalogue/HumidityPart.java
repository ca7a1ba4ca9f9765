package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Plot;

/**
 * What stands beside the pooled model in an answer.
 *
 * @param words added to the sentence; empty for none
 * @param estimates behind those of the model
 * @param plots behind the curve
 * @param warnings behind those of the model
 * @param facts of the fit
 */
record HumidityPart(
        String words, List<Estimate> estimates, List<Plot> plots, List<String> warnings, Map<String, Object> facts) {

    static final HumidityPart NOTHING = new HumidityPart("", List.of(), List.of(), List.of(), Map.of());

    static HumidityPart warning(String words) {
        return new HumidityPart("", List.of(), List.of(), List.of(words), Map.of());
    }
}
