package org.tableweather.schema.folder;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** A folder that is held in memory. */
record MemorySource(Map<String, byte[]> contents) implements ContributionSource {

    @Override
    public String name() {
        return "memory";
    }

    @Override
    public SortedMap<String, Long> files() {
        SortedMap<String, Long> files = new TreeMap<>();
        contents.forEach((file, content) -> files.put(file, (long) content.length));
        return files;
    }

    @Override
    public Optional<InputStream> open(String file) {
        return Optional.ofNullable(contents.get(file)).map(ByteArrayInputStream::new);
    }

    @Override
    public void close() {
        // nothing is held open
    }
}
