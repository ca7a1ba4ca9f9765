package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Rows as a spreadsheet counts them: the header is row 1, empty lines count. */
class RowOwnersTest {

    private static Map<Long, String> owners(String csv, Set<Long> rows) throws IOException {
        return RowOwners.of(
                new MemorySource(Map.of("trials.csv", csv.getBytes(StandardCharsets.UTF_8))),
                "trials.csv",
                "session",
                rows);
    }

    @Test
    void eachWantedRowTellsItsSession() throws IOException {
        String csv = "trial;Session;note\n1;s1;\"a;b\"\n\n2;s2;c\n3;s3;d\n";
        assertThat(owners(csv, Set.of(2L, 4L))).isEqualTo(Map.of(2L, "s1", 4L, "s2"));
    }

    @Test
    void aFileThatIsNotThereTellsNothing() throws IOException {
        assertThat(RowOwners.of(new MemorySource(Map.of()), "contacts.csv", "session", Set.of(2L)))
                .isEmpty();
    }
}
