package org.tableweather.analyzers.host;

import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.Analyzer;

/** The analyzers at hand, by id. Immutable. */
public final class AnalyzerCatalogue {
    private final SortedMap<String, Analyzer<?>> byId;

    private AnalyzerCatalogue(SortedMap<String, Analyzer<?>> byId) {
        this.byId = Collections.unmodifiableSortedMap(byId);
    }

    /**
     * The analyzers on the class path, as {@link ServiceLoader} finds them.
     *
     * @throws IllegalStateException when two have the same id
     */
    public static AnalyzerCatalogue discover() {
        return discover(AnalyzerCatalogue.class.getClassLoader());
    }

    /**
     * The analyzers that a class loader sees.
     *
     * @param loader where to look
     * @throws IllegalStateException when two have the same id
     */
    public static AnalyzerCatalogue discover(ClassLoader loader) {
        List<Analyzer<?>> found = ServiceLoader.load(Analyzer.class, loader).stream()
                .<Analyzer<?>>map(ServiceLoader.Provider::get)
                .toList();
        return of(found);
    }

    /**
     * Exactly these analyzers.
     *
     * @throws IllegalStateException when two have the same id
     */
    public static AnalyzerCatalogue of(Collection<Analyzer<?>> analyzers) {
        SortedMap<String, Analyzer<?>> byId = new TreeMap<>();
        for (Analyzer<?> analyzer : analyzers) {
            String id = analyzer.info().id();
            Analyzer<?> other = byId.put(id, analyzer);
            if (other != null) {
                throw new IllegalStateException("two analyzers call themselves " + id + ": "
                        + other.getClass().getName() + " and "
                        + analyzer.getClass().getName() + "; remove one jar");
            }
        }
        return new AnalyzerCatalogue(byId);
    }

    /** The analyzer of this id. */
    public Optional<Analyzer<?>> find(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    /** All, ordered by id. */
    public Collection<Analyzer<?>> all() {
        return byId.values();
    }
}
