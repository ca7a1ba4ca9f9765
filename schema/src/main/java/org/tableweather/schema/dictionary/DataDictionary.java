package org.tableweather.schema.dictionary;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.tableweather.schema.table.Column;
import org.tableweather.schema.table.KindOutcomes;
import org.tableweather.schema.table.TrialColumn;

/** Every field of format 1.0, from the schemas themselves. */
public final class DataDictionary {
    private static final ObjectMapper JSON = new ObjectMapper();

    private DataDictionary() {}

    /**
     * Fields that belong together.
     *
     * @param name of the object, or of the CSV file
     * @param description in words
     * @param fields in order
     */
    public record Section(String name, String description, List<Field> fields) {
        public Section {
            fields = List.copyOf(fields);
        }
    }

    /** The CSV files, then the objects of contribution.json. */
    public static List<Section> sections() {
        List<Section> sections = new ArrayList<>();
        for (FormatFile file : FormatFile.values()) {
            if (file.isCsvw()) {
                sections.add(table(file));
            }
        }
        for (FormatFile file : FormatFile.values()) {
            if (file.isJsonSchema()) {
                JsonNode schema = parsed(file);
                sections.add(object(file.title(), schema));
                schema.path("$defs")
                        .properties()
                        .forEach(entry -> sections.add(object(entry.getKey(), entry.getValue())));
            }
        }
        return List.copyOf(sections);
    }

    private static JsonNode parsed(FormatFile file) {
        try {
            return JSON.readTree(file.text());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(file.path() + " is no JSON", e);
        }
    }

    private static Section table(FormatFile file) {
        JsonNode description = parsed(file);
        List<Field> fields = new ArrayList<>();
        description.at("/tableSchema/columns").forEach(column -> fields.add(Field.column(column)));
        return new Section(
                description.path("url").asText(),
                description.path("dc:description").asText(),
                fields);
    }

    private static Section object(String name, JsonNode schema) {
        List<String> required = new ArrayList<>();
        schema.path("required").forEach(each -> required.add(each.asText()));
        List<Field> fields = new ArrayList<>();
        schema.path("properties")
                .properties()
                .forEach(entry -> fields.add(
                        Field.property(entry.getKey(), entry.getValue(), required.contains(entry.getKey()))));
        return new Section(name, schema.path("description").asText(), fields);
    }

    /** The whole page as Markdown. */
    public static String markdown() {
        StringBuilder page = new StringBuilder("""
                # Data dictionary, format 1.0

                Every field of a contribution folder: generated from the schemas by `tableweather schema dictionary`; do not edit
                by hand. Units are UCUM codes, `{diamond}` an eighth of the playing length along and a quarter of the playing width
                across. An empty cell was not measured. **Bold** names are required.

                ## Kinds of trial

                | kind | what | needs one of | more useful with | uncertainties |
                | --- | --- | --- | --- | --- |
                """);
        KindOutcomes.all()
                .forEach(kind -> page.append(row(
                        "`" + kind.kind().schemaName() + "`",
                        kind.description(),
                        names(kind.needsOneOf()),
                        names(kind.optional()),
                        names(kind.uncertainties()))));
        sections().forEach(section -> page.append(text(section)));
        return page.toString();
    }

    private static String names(List<TrialColumn> columns) {
        return String.join(
                ", ",
                columns.stream()
                        .map(Column::header)
                        .map(name -> "`" + name + "`")
                        .toList());
    }

    private static String text(Section section) {
        boolean file = section.name().endsWith(".csv");
        StringBuilder text = new StringBuilder("\n## " + (file ? "" : "Object ") + "`" + section.name() + "`\n\n"
                + section.description() + "\n\n| field | title | type | unit | accepted | example | meaning |\n"
                + "| --- | --- | --- | --- | --- | --- | --- |\n");
        for (Field field : section.fields()) {
            String name = "`" + field.name() + "`";
            text.append(row(
                    field.required() ? "**" + name + "**" : name,
                    field.title(),
                    field.type(),
                    field.unit().isEmpty() ? "" : "`" + field.unit() + "`",
                    field.bounds(),
                    field.example().isEmpty() ? "" : "`" + field.example() + "`",
                    field.description()));
        }
        return text.toString();
    }

    private static String row(String... cells) {
        StringJoiner row = new StringJoiner(" | ", "| ", " |\n");
        for (String cell : cells) {
            row.add(cell.replace("|", "\\|"));
        }
        return row.toString();
    }
}
