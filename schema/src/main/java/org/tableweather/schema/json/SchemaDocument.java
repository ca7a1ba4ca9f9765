package org.tableweather.schema.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One of the JSON Schemas that ship with this module, and the place in it that applies.
 *
 * @param document the whole schema
 * @param node the part that describes the value at hand
 */
record SchemaDocument(JsonNode document, JsonNode node) {
    private static final String PREFIX = "urn:tableweather:schema:v1:";
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Map<String, JsonNode> LOADED = new ConcurrentHashMap<>();

    /** The schema of {@code contribution.json}. */
    static SchemaDocument contribution() {
        return load("contribution");
    }

    /** The schema of one shot. */
    static SchemaDocument shot() {
        return load("shot");
    }

    /** The schema of a property of this object; a missing node when there is none. */
    SchemaDocument property(String name) {
        return new SchemaDocument(document, node.path("properties").path(name)).resolved();
    }

    /** The schema of this array's items. */
    SchemaDocument items() {
        return new SchemaDocument(document, node.path("items")).resolved();
    }

    /** Whether the schema says anything here. */
    boolean exists() {
        return !node.isMissingNode();
    }

    private SchemaDocument resolved() {
        String reference = node.path("$ref").asText("");
        if (reference.isEmpty()) {
            return this;
        }
        return reference.startsWith("#")
                ? new SchemaDocument(document, document.at(reference.substring(1)))
                : load(reference.substring(PREFIX.length()));
    }

    private static SchemaDocument load(String name) {
        JsonNode document = LOADED.computeIfAbsent(name, SchemaDocument::parse);
        return new SchemaDocument(document, document);
    }

    private static JsonNode parse(String name) {
        String resource = "/schema/v1/" + name + ".schema.json";
        try (InputStream in = SchemaDocument.class.getResourceAsStream(resource)) {
            return in == null ? MissingNode.getInstance() : JSON.readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(resource, e);
        }
    }
}
