package org.tableweather.schema.record;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A cue.
 *
 * @param id unique in the contribution
 * @param massG g
 * @param tipDiameterMm mm
 * @param tip material or hardness of the tip
 * @param shaft material of the shaft
 */
public record Cue(
        String id, OptionalDouble massG, OptionalDouble tipDiameterMm, Optional<String> tip, Optional<String> shaft) {}
