package org.tableweather.schema.dictionary;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.table.TrialColumn;

class DataDictionaryTest {

    /** The committed page is what {@code tableweather schema dictionary} prints. */
    @Test
    void isTheCommittedPage() throws IOException {
        Files.createDirectories(Path.of("target"));
        Files.writeString(Path.of("target/DICTIONARY.md"), DataDictionary.markdown());

        assertThat(Path.of("DICTIONARY.md"))
                .as("print it again: tableweather schema dictionary > schema/DICTIONARY.md")
                .hasContent(DataDictionary.markdown());
    }

    @Test
    void describesEveryFieldInFull() {
        assertThat(DataDictionary.sections()).hasSizeGreaterThan(14).allSatisfy(section -> {
            assertThat(section.description()).isNotBlank();
            assertThat(section.fields()).isNotEmpty().allSatisfy(field -> {
                assertThat(field.title()).as(field.name()).isNotBlank();
                assertThat(field.description()).as(field.name()).isNotBlank();
                boolean nested = field.type().matches("(list of )?[a-z]+[A-Z]?[a-zA-Z]*")
                        && field.example().isEmpty();
                assertThat(nested || !field.example().isEmpty())
                        .as(field.name())
                        .isTrue();
            });
        });
    }

    @Test
    void hasEveryColumnOfTheTrials() {
        for (TrialColumn column : TrialColumn.all()) {
            assertThat(DataDictionary.markdown()).contains("`" + column.header() + "`");
        }
    }

    @Test
    void findsFilesByTitleAndPath() {
        assertThat(FormatFile.of("trials")).contains(FormatFile.TRIALS);
        assertThat(FormatFile.of("shot.schema.json")).contains(FormatFile.SHOT);
        assertThat(FormatFile.of("nothing")).isEmpty();
        for (FormatFile file : FormatFile.values()) {
            assertThat(file.text()).startsWith("{").endsWith("}\n");
        }
    }
}
