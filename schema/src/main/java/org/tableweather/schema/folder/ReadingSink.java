package org.tableweather.schema.folder;

import java.io.IOException;
import org.tableweather.schema.record.ClimateReading;

/** Takes every reading of {@code climate.csv} exactly once, in the order of the file, wherever the sensor was placed. */
@FunctionalInterface
public interface ReadingSink {

    /** Takes no notice. */
    ReadingSink NONE = reading -> {};

    /**
     * Takes one reading.
     *
     * @param reading as written, temperatures in °C; NaN and empty for what was not measured
     * @throws IOException when it cannot be passed on; the reading ends
     */
    void accept(ClimateReading reading) throws IOException;
}
