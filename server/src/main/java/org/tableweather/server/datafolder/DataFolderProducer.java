package org.tableweather.server.datafolder;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.nio.file.Path;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Hands the configured data folder to whoever needs it. */
@ApplicationScoped
class DataFolderProducer {
    private final String path;

    DataFolderProducer(@ConfigProperty(name = "tableweather.data") String path) {
        this.path = path;
    }

    @Produces
    @Singleton
    DataFolder dataFolder() throws IOException {
        return DataFolder.at(Path.of(path));
    }
}
