package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A folder that appears when it is complete: all of it, or nothing.
 *
 * @param files what is in it; the first one makes it a contribution
 * @param content writes them into an empty folder
 */
record FolderDraft(List<String> files, Content content) {

    /** Writes all files. */
    interface Content {
        void writeInto(Path folder) throws IOException;
    }

    /**
     * Writes it beside its place and moves it there.
     *
     * @throws FileAlreadyExistsException when one of the files is there already
     */
    void write(Path folder) throws IOException {
        Path place = folder.toAbsolutePath().normalize();
        for (String file : files) {
            if (Files.exists(place.resolve(file))) {
                throw new FileAlreadyExistsException(folder.resolve(file).toString(), null, "the folder is taken");
            }
        }
        Files.createDirectories(place.getParent());
        Path draft = Files.createTempDirectory(place.getParent(), ".new-");
        try {
            content.writeInto(draft);
            publish(draft, place);
        } finally {
            for (String file : files) {
                Files.deleteIfExists(draft.resolve(file));
            }
            Files.deleteIfExists(draft);
        }
    }

    /** The first file goes last: without it, nothing takes the folder for a contribution. */
    private void publish(Path draft, Path place) throws IOException {
        List<String> moved = new ArrayList<>();
        boolean complete = false;
        Files.createDirectories(place);
        try {
            for (int i = files.size() - 1; i >= 0; i--) {
                Files.move(draft.resolve(files.get(i)), place.resolve(files.get(i)));
                moved.add(files.get(i));
            }
            complete = true;
        } finally {
            for (String file : complete ? List.<String>of() : moved) {
                Files.deleteIfExists(place.resolve(file));
            }
        }
    }
}
