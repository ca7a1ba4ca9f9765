package org.tableweather.schema.folder;

import java.io.IOException;
import org.tableweather.schema.record.Contact;

/** Takes every marked point of {@code contacts.csv} exactly once, in the order of the file. */
@FunctionalInterface
public interface ContactSink {

    /** Takes no notice. */
    ContactSink NONE = contact -> {};

    /**
     * Takes one point.
     *
     * @param contact as written; NaN and empty for what was not marked
     * @throws IOException when it cannot be passed on; the reading ends
     */
    void accept(Contact contact) throws IOException;
}
