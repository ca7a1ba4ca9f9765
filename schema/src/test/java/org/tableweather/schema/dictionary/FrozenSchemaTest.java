package org.tableweather.schema.dictionary;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.table.Column;
import org.tableweather.schema.table.KindOutcomes;

/**
 * The public surface of the format: fields, types, what is required, units, accepted values. A change needs an edited file here and a
 * line in CHANGES.md, by the rules of VERSIONING.md.
 */
class FrozenSchemaTest {
    private static final Path FROZEN = Path.of("src/test/resources/frozen/format-1.0.txt");

    @Test
    void isAsCommitted() throws IOException {
        Files.createDirectories(Path.of("target"));
        Files.writeString(Path.of("target/format-1.0.txt"), surface());

        assertThat(FROZEN)
                .as("the format changed: if that is meant, take over target/format-1.0.txt and say so in CHANGES.md")
                .hasContent(surface());
    }

    private static String surface() {
        StringBuilder text = new StringBuilder();
        for (DataDictionary.Section section : DataDictionary.sections()) {
            section.fields().forEach(field -> text.append(line(section.name(), field)));
        }
        for (KindOutcomes kind : KindOutcomes.all()) {
            text.append("kind ")
                    .append(kind.kind().schemaName())
                    .append(" needs one of: ")
                    .append(String.join(
                            ", ", kind.needsOneOf().stream().map(Column::header).toList()))
                    .append('\n');
        }
        return text.toString();
    }

    private static String line(String section, Field field) {
        return (section + " | " + field.name() + " | " + field.type() + " | "
                                + (field.required() ? "required" : "optional") + " | " + field.unit() + " | "
                                + field.bounds())
                        .strip()
                + "\n";
    }
}
