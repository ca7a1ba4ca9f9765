package org.tableweather.analyzers.host.plugin;

import java.io.File;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Where the classes lie that a plugin process needs; asked of the classes themselves, as hosts pack them differently. */
final class ChildClassPath {
    /** One class of each jar: host, SPI, schema and what these stand on. */
    private static final List<String> OF_EACH_JAR = List.of(
            "org.tableweather.analyzers.host.plugin.PluginProcess",
            "org.tableweather.analyzers.spi.Analyzer",
            "org.tableweather.schema.record.Trial",
            "com.fasterxml.jackson.databind.ObjectMapper",
            "com.fasterxml.jackson.core.JsonFactory",
            "com.fasterxml.jackson.annotation.JsonProperty",
            "com.fasterxml.jackson.datatype.jdk8.Jdk8Module",
            "com.fasterxml.jackson.datatype.jsr310.JavaTimeModule",
            "de.siegmar.fastcsv.reader.CsvReader",
            "org.jbibtex.BibTeXParser");

    private ChildClassPath() {}

    /** As {@code java -cp} takes it. */
    static String text() {
        Set<String> places = new LinkedHashSet<>();
        for (String name : OF_EACH_JAR) {
            places.add(placeOf(name).toString());
        }
        return String.join(File.pathSeparator, places);
    }

    private static Path placeOf(String name) {
        try {
            CodeSource source = Class.forName(name, false, ChildClassPath.class.getClassLoader())
                    .getProtectionDomain()
                    .getCodeSource();
            String place = source.getLocation().toURI().toString();
            return Path.of(URI.create(place.replaceFirst("^jar:", "").replaceFirst("!/.*$", "")));
        } catch (ClassNotFoundException | URISyntaxException e) {
            throw new IllegalStateException("a plugin process needs " + name, e);
        }
    }
}
