package org.tableweather.schema.dictionary;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;

/**
 * One field of a JSON object, or one column of a CSV file.
 *
 * @param name as written
 * @param type {@code text}, {@code number}, {@code list of room} ...
 * @param required whether it must be there
 * @param unit UCUM code; empty for texts
 * @param bounds what is accepted, in words; empty without
 * @param title short, with the unit as people write it
 * @param description in words
 * @param example a value as JSON or as a cell; empty for objects
 */
public record Field(
        String name,
        String type,
        boolean required,
        String unit,
        String bounds,
        String title,
        String description,
        String example) {

    /** A property of an object. */
    static Field property(String name, JsonNode node, boolean required) {
        return new Field(
                name,
                type(node),
                required,
                node.path("unit").asText(""),
                bounds(node, node.path("enum")),
                node.path("title").asText(""),
                node.path("description").asText(""),
                node.path("examples").path(0).isMissingNode()
                        ? ""
                        : node.path("examples").path(0).toString());
    }

    /** A column. */
    static Field column(JsonNode node) {
        JsonNode datatype = node.path("datatype");
        String choice = datatype.path("format").asText("");
        return new Field(
                node.path("name").asText(),
                datatype.path("base").asText(),
                node.path("required").asBoolean(),
                node.path("schema:unitText").asText(""),
                choice.isEmpty() ? bounds(datatype, datatype.path("enum")) : choice.replace("|", ", "),
                node.path("dc:title").asText(""),
                node.path("dc:description").asText(""),
                node.path("skos:example").asText(""));
    }

    private static String type(JsonNode node) {
        if (node.has("$ref")) {
            return reference(node);
        }
        String type = node.path("type").asText();
        if (!type.equals("array")) {
            return node.has("format") ? node.path("format").asText() : type;
        }
        JsonNode items = node.path("items");
        return "list of "
                + (items.has("$ref") ? reference(items) : items.path("type").asText());
    }

    private static String reference(JsonNode node) {
        return node.path("$ref").asText().replaceAll(".*[/:]", "");
    }

    private static String bounds(JsonNode node, JsonNode allowed) {
        List<String> parts = new ArrayList<>();
        if (node.has("minimum")) {
            parts.add(node.path("minimum").asText() + " to "
                    + node.path("maximum").asText());
        }
        if (node.has("minItems")) {
            parts.add(node.path("minItems").asText() + " or more");
        }
        JsonNode choices = allowed.isMissingNode() ? node.path("items").path("enum") : allowed;
        if (!choices.isMissingNode()) {
            parts.add(String.join(
                    ", ",
                    StreamSupport.stream(choices.spliterator(), false)
                            .map(JsonNode::asText)
                            .toList()));
        }
        return String.join("; ", parts);
    }
}
