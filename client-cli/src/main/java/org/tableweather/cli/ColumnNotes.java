package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.tableweather.schema.table.Column;

/** What the schema's description of a CSV file says about its columns, for people. */
final class ColumnNotes {
    private ColumnNotes() {}

    /**
     * One line for each column.
     *
     * @param table {@code trials} or {@code climate}
     * @param columns which, in order
     */
    static String of(String table, List<Column> columns) throws IOException {
        Map<String, JsonNode> described = described(table);
        return columns.stream()
                .map(column -> line(column, described.get(column.header())))
                .collect(Collectors.joining("\n"));
    }

    private static Map<String, JsonNode> described(String table) throws IOException {
        String resource = "/schema/v1/" + table + ".csvw.json";
        try (InputStream in = Column.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new FileNotFoundException(resource);
            }
            JsonNode columns = JsonText.tree(in.readAllBytes()).at("/tableSchema/columns");
            return StreamSupport.stream(columns.spliterator(), false)
                    .collect(Collectors.toMap(column -> column.path("name").asText(), column -> column));
        }
    }

    private static String line(Column column, JsonNode description) {
        String words = description == null
                ? ""
                : description
                        .path("dc:description")
                        .asText(description.path("titles").asText());
        return String.format("  %-24s %s%s", column.header(), words, column.required() ? " (required)" : "");
    }
}
