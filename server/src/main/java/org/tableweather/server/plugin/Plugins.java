package org.tableweather.server.plugin;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.tableweather.analyzers.host.plugin.IsolatedPlugin;
import org.tableweather.analyzers.host.plugin.PluginJar;
import org.tableweather.analyzers.host.plugin.PluginLimits;
import org.tableweather.analyzers.host.plugin.PluginRefused;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.server.datafolder.DataFolder;

/** The analyzers in the plugin folder's jars. Every jar that is not loaded is named in the log, with the reason. */
@ApplicationScoped
public class Plugins {
    private static final Logger LOG = Logger.getLogger(Plugins.class);

    private final Path folder;
    private final PluginLimits limits;

    Plugins(
            DataFolder data,
            @ConfigProperty(name = "tableweather.plugins.folder") Optional<String> folder,
            @ConfigProperty(name = "tableweather.plugins.seconds") int seconds,
            @ConfigProperty(name = "tableweather.plugins.memory-mb") int memoryMb) {
        this.folder = folder.map(Path::of).orElseGet(data::plugins);
        this.limits = new PluginLimits(Duration.ofSeconds(seconds), memoryMb);
    }

    /**
     * Loads what is pinned.
     *
     * @param taken ids that no plugin may use
     * @return the analyzers, jar by jar in the order of the names
     */
    public List<Analyzer<?>> beside(Collection<String> taken) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try {
            return loaded(new TreeSet<>(taken));
        } catch (IOException | UncheckedIOException e) {
            LOG.error("NO PLUGIN IS LOADED: " + folder + " cannot be read: " + e.getMessage());
            return List.of();
        }
    }

    private List<Analyzer<?>> loaded(Set<String> taken) throws IOException {
        Pins pins = Pins.of(folder);
        pins.faults().forEach(fault -> LOG.error(folder.resolve(Pins.FILE) + ": " + fault));
        List<Path> jars = jars();
        List<String> names =
                jars.stream().map(jar -> jar.getFileName().toString()).toList();
        pins.byName().keySet().stream()
                .filter(name -> !names.contains(name))
                .forEach(name -> LOG.warn("plugin " + name + " is pinned, but not in " + folder));
        List<Analyzer<?>> analyzers = new ArrayList<>();
        for (Path jar : jars) {
            analyzers.addAll(analyzersOf(jar, pins, taken));
        }
        return analyzers;
    }

    private List<Path> jars() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().endsWith(".jar"))
                    .sorted()
                    .toList();
        }
    }

    private List<Analyzer<?>> analyzersOf(Path jar, Pins pins, Set<String> taken) {
        List<Analyzer<?>> usable = new ArrayList<>();
        try {
            String hash = PluginJar.sha256(jar);
            mustBePinned(jar.getFileName().toString(), hash, pins);
            for (Analyzer<?> analyzer : IsolatedPlugin.load(jar, hash, limits)) {
                String id = analyzer.info().id();
                if (taken.add(id)) {
                    usable.add(analyzer);
                    LOG.infof(
                            "plugin %s (sha256 %s) adds %s %s",
                            jar.getFileName(), hash, id, analyzer.info().version());
                } else {
                    LOG.error("PLUGIN " + jar.getFileName() + ": ITS ANALYZER " + id
                            + " IS NOT LOADED: there is one of that id already");
                }
            }
        } catch (Unpinned | PluginRefused | IOException | RuntimeException e) {
            LOG.error("PLUGIN " + jar.getFileName() + " IS NOT LOADED: " + e.getMessage());
        }
        return usable;
    }

    private void mustBePinned(String name, String hash, Pins pins) throws Unpinned {
        Path file = folder.resolve(Pins.FILE);
        Optional<String> pinned = pins.hashOf(name);
        if (pinned.isEmpty()) {
            throw new Unpinned(file + " does not pin it. If you trust it, add the line: " + hash + "  " + name);
        }
        if (!pinned.get().equals(hash)) {
            throw new Unpinned(
                    "its SHA-256 is " + hash + ", pinned is " + pinned.get() + ". It is not the jar that was trusted");
        }
    }

    private static final class Unpinned extends Exception {
        private static final long serialVersionUID = 1L;

        Unpinned(String message) {
            super(message);
        }
    }
}
