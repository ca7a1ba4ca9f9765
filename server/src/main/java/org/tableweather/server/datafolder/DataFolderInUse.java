package org.tableweather.server.datafolder;

import java.io.IOException;

/** Another server runs on the data folder. */
public final class DataFolderInUse extends IOException {
    private static final long serialVersionUID = 1L;

    DataFolderInUse(DataFolder folder, String holder) {
        super("data folder " + folder + " is in use by another server" + holder
                + ": stop that one, or name another folder in TABLEWEATHER_DATA");
    }
}
