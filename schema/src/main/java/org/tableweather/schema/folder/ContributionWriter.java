package org.tableweather.schema.folder;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Trial;

/** Writes a contribution folder; only the columns that some row fills are written. */
public interface ContributionWriter extends Closeable {

    /**
     * Opens a folder for writing. The files appear complete or not at all when the writer is closed.
     *
     * @param folder created if need be; must not hold a contribution yet
     * @param contribution what {@code contribution.json} will say
     * @throws IOException when the folder cannot be written or is taken
     */
    static ContributionWriter into(Path folder, Contribution contribution) throws IOException {
        throw new UnsupportedOperationException("schema helper" + folder + contribution);
    }

    /**
     * Packs a folder as a zip archive with fixed times and order: equal content gives equal bytes.
     *
     * @param folder with a contribution
     * @param archive written, replaced if it exists
     * @throws IOException when either cannot be read or written
     */
    static void pack(Path folder, Path archive) throws IOException {
        throw new UnsupportedOperationException("schema helper" + folder + archive);
    }

    /** Adds a row to {@code trials.csv}. */
    void write(Trial trial) throws IOException;

    /** Adds a row to {@code climate.csv}. */
    void write(ClimateReading reading) throws IOException;

    /** Adds a row to {@code contacts.csv}. */
    void write(Contact contact) throws IOException;
}
