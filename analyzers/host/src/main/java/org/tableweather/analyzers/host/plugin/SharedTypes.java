package org.tableweather.analyzers.host.plugin;

import java.util.List;

/**
 * What a plugin shares with its host: the SPI, the schema, the annotations that a summary may carry, and the JDK. Nothing
 * else of the host can be seen, so that a plugin brings its own libraries in whatever version it likes.
 */
final class SharedTypes extends ClassLoader {
    private static final List<String> SHARED =
            List.of("org.tableweather.analyzers.spi.", "org.tableweather.schema.", "com.fasterxml.jackson.annotation.");

    private final ClassLoader host;

    SharedTypes(ClassLoader host) {
        super("shared with plugins", ClassLoader.getPlatformClassLoader());
        this.host = host;
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
        return SHARED.stream().anyMatch(name::startsWith) ? host.loadClass(name) : super.loadClass(name, resolve);
    }
}
