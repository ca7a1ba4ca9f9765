package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class HumidityPartTest {

    @Test
    void tellsItsFactsInOneOrderInEveryJvm() {
        Map<String, Object> anyOrder =
                Map.of("h", 1, "c", 1, "a", 1, "f", 1, "b", 1, "g", 1, "e", 1, "d", 1, "j", 1, "i", 1);

        HumidityPart part = new HumidityPart("", List.of(), List.of(), List.of(), anyOrder);

        assertThat(part.facts().keySet()).containsExactly("a", "b", "c", "d", "e", "f", "g", "h", "i", "j");
    }
}
