package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.plugin.PluginJar;
import org.tableweather.analyzers.host.plugin.PluginRefused;
import org.tableweather.analyzers.spi.Analyzer;
import picocli.CommandLine.Option;

/** Which analyzers there are: those that come with the program, and those in jars that the user names. */
final class AnalyzerChoice {
    @Option(
            names = "--plugin",
            paramLabel = "JAR",
            description = "Also offer the analyzers in this jar; it runs with your rights.")
    private List<Path> plugins = List.of();

    List<Path> plugins() {
        return plugins;
    }

    /**
     * All that are at hand.
     *
     * @throws Failure when a jar cannot be used, or an analyzer in it has the id of another
     * @throws IOException when a jar cannot be read
     */
    AnalyzerCatalogue catalogue() throws IOException {
        AnalyzerCatalogue builtIn = AnalyzerCatalogue.discover();
        List<Analyzer<?>> all = new ArrayList<>(builtIn.all());
        for (Path plugin : plugins) {
            for (Analyzer<?> analyzer : analyzersOf(plugin)) {
                mustBeNew(plugin, analyzer, all);
                all.add(analyzer);
            }
        }
        return AnalyzerCatalogue.of(all);
    }

    private static List<Analyzer<?>> analyzersOf(Path plugin) throws IOException {
        LocalData.mustExist(plugin);
        try {
            return PluginJar.analyzers(plugin);
        } catch (PluginRefused refused) {
            throw Failure.usage(refused.getMessage(), refused.remedy()).because(refused);
        }
    }

    private static void mustBeNew(Path plugin, Analyzer<?> analyzer, List<Analyzer<?>> others) {
        String id = analyzer.info().id();
        if (others.stream().anyMatch(other -> other.info().id().equals(id))) {
            throw Failure.usage(
                    plugin.getFileName() + " holds an analyzer " + id + ", and there is one of that id already",
                    "leave the jar out, or ask its author for another id");
        }
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
