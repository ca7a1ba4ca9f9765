package org.tableweather.analyzers.standard;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.reference.References;
import org.tableweather.schema.reference.SourceKeys;

class SourcesTest {

    @Test
    void everySourceTagIsAKnownKey() throws IOException {
        assertThat(SourceKeys.cited(Path.of("src")))
                .isNotEmpty()
                .allSatisfy(key -> assertThat(References.byKey(key)).as(key).isPresent());
    }
}
