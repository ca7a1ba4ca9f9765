package org.tableweather.schema.folder;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Trial;

/**
 * Writes a contribution folder; only the columns that some row fills are written. Not for use by several threads.
 *
 * <p>The files appear when the writer is closed, {@code contribution.json} last: a folder without it holds no
 * contribution yet. After a failed write, or {@link #abandon}, closing leaves nothing behind.
 */
public interface ContributionWriter extends Closeable {

    /**
     * Opens a folder for writing.
     *
     * @param folder created if need be; must not hold a contribution yet
     * @param contribution what {@code contribution.json} will say
     * @throws IOException when the folder cannot be written or is taken
     */
    static ContributionWriter into(Path folder, Contribution contribution) throws IOException {
        return FolderWriter.open(folder, contribution);
    }

    /**
     * Packs a folder as a zip archive with fixed times and order: equal content gives equal bytes. Only the files of the
     * format are packed. The archive appears when it is complete.
     *
     * @param folder with a contribution
     * @param archive written, replaced if it exists
     * @return SHA-256 of the archive, 32 bytes
     * @throws IOException when either cannot be read or written
     */
    static byte[] pack(Path folder, Path archive) throws IOException {
        return Packing.pack(folder, archive);
    }

    /** Adds a row to {@code trials.csv}. */
    void write(Trial trial) throws IOException;

    /** Adds a row to {@code climate.csv}. */
    void write(ClimateReading reading) throws IOException;

    /** Adds a row to {@code contacts.csv}. */
    void write(Contact contact) throws IOException;

    /** Gives up: closing then leaves nothing behind. */
    void abandon();
}
