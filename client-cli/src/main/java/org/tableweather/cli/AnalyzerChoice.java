package org.tableweather.cli;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.spi.Analyzer;
import picocli.CommandLine.Option;

/** Which analyzers there are: those that come with the program, and those in jars that the user names. */
final class AnalyzerChoice {
    @Option(
            names = "--plugin",
            paramLabel = "JAR",
            description = "Also offer the analyzers in this jar; it runs with your rights.")
    private List<Path> plugins = List.of();

    /**
     * All that are at hand.
     *
     * @throws IOException when a jar is missing
     */
    AnalyzerCatalogue catalogue() throws IOException {
        if (plugins.isEmpty()) {
            return AnalyzerCatalogue.discover();
        }
        List<URL> jars = new ArrayList<>();
        for (Path plugin : plugins) {
            LocalData.mustExist(plugin);
            jars.add(plugin.toUri().toURL());
        }
        // stays open: an analyzer's classes load as they are used
        return AnalyzerCatalogue.discover(
                new URLClassLoader(jars.toArray(URL[]::new), AnalyzerCatalogue.class.getClassLoader()));
    }

    /**
     * The analyzer of this id.
     *
     * @throws Failure when there is none; the message lists those there are
     */
    Analyzer<?> find(String id) throws IOException {
        AnalyzerCatalogue catalogue = catalogue();
        return catalogue.find(id).orElseThrow(() -> {
            String known = catalogue.all().stream().map(one -> one.info().id()).collect(Collectors.joining(", "));
            return Failure.usage("there is no analyzer " + id, "choose one of: " + known);
        });
    }
}
