package org.tableweather.analyzers.standard.climate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.reference.References;

class GoldenSourcesTest {

    @Test
    void everySourceOfAGoldenValueIsKnown() throws IOException {
        Set<String> keys = new TreeSet<>();
        try (Stream<Path> files = Files.list(Path.of("src/test/resources/golden/climate"))) {
            for (Path file : files.sorted().toList()) {
                List<String> lines = Files.readAllLines(file);
                assertThat(lines)
                        .as(file.getFileName().toString())
                        .anyMatch(line -> line.startsWith("# source.key = "));
                lines.stream()
                        .filter(line -> line.startsWith("# source.key = ") && !line.endsWith("see the column"))
                        .flatMap(line -> Stream.of(
                                line.substring("# source.key = ".length()).split(", ")))
                        .forEach(keys::add);
            }
        }
        GoldenTable.rows("regain_points").forEach(row -> keys.add(row.getField("source")));
        assertThat(keys)
                .isNotEmpty()
                .allSatisfy(key -> assertThat(References.byKey(key)).as(key).isPresent());
    }
}
