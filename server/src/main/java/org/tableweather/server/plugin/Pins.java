package org.tableweather.server.plugin;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which jars the operator trusts, as {@code sha256sum *.jar} prints them: hash, blanks, file name. Empty lines and lines
 * that begin with # do not count.
 *
 * @param byName hash of each jar, lower-case hex
 * @param faults lines that cannot be read, in words
 */
record Pins(Map<String, String> byName, List<String> faults) {
    /** The file beside the jars. */
    static final String FILE = "plugins.sha256";

    private static final Pattern LINE = Pattern.compile("([0-9a-fA-F]{64})[ \t]+\\*?(.+)");

    /** What the folder's file says; nothing is pinned where there is none. */
    static Pins of(Path folder) throws IOException {
        Path file = folder.resolve(FILE);
        return Files.exists(file) ? of(Files.readAllLines(file)) : new Pins(Map.of(), List.of());
    }

    static Pins of(List<String> lines) {
        Map<String, String> byName = new TreeMap<>();
        List<String> faults = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            Matcher pin = LINE.matcher(line);
            if (!pin.matches()) {
                faults.add("line " + (i + 1) + " is not a hash of 64 hexadecimal digits, a blank and a file name");
            } else if (byName.put(pin.group(2), pin.group(1).toLowerCase(Locale.ROOT)) != null) {
                faults.add("line " + (i + 1) + " pins " + pin.group(2) + " again: the last line counts");
            }
        }
        return new Pins(byName, faults);
    }

    Optional<String> hashOf(String jarName) {
        return Optional.ofNullable(byName.get(jarName));
    }
}
