package org.tableweather.analyzers.standard;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.reference.References;

class SourcesTest {

    @Test
    void everySourceTagIsAKnownKey() throws IOException {
        Set<String> keys = new TreeSet<>();
        try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
            for (Path source :
                    sources.filter(path -> path.toString().endsWith(".java")).toList()) {
                Matcher tag = Pattern.compile("@source\\s+(\\S+)").matcher(Files.readString(source));
                while (tag.find()) {
                    keys.add(tag.group(1));
                }
            }
        }
        assertThat(keys)
                .isNotEmpty()
                .allSatisfy(key -> assertThat(References.byKey(key)).as(key).isPresent());
    }
}
