package org.tableweather.schema.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.IdentityChecks;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.check.UnitChecks;

/** The bounds that a JSON Schema sets to one value. */
final class JsonBounds {
    private static final Map<String, Check> CHECKS = Map.of(
            "id", StructureChecks.ID_FORM,
            "schemaVersion", StructureChecks.SCHEMA_VERSION,
            "orcid", IdentityChecks.ORCID,
            "country", IdentityChecks.COUNTRY,
            "licence", IdentityChecks.LICENCE,
            "rhPct", UnitChecks.HUMIDITY,
            "tempC", UnitChecks.TEMPERATURE,
            "tempF", UnitChecks.TEMPERATURE,
            "bedC", UnitChecks.TEMPERATURE,
            "bedF", UnitChecks.TEMPERATURE);

    private JsonBounds() {}

    /** The check that a broken bound of this field belongs to. */
    static Check check(String pointer) {
        return CHECKS.getOrDefault(pointer.substring(pointer.lastIndexOf('/') + 1), StructureChecks.JSON_VALUE);
    }

    /** The bound that a number breaks, in words. */
    static Optional<String> broken(double number, JsonNode schema) {
        double min = schema.path("minimum").asDouble(Double.NEGATIVE_INFINITY);
        double max = schema.path("maximum").asDouble(Double.POSITIVE_INFINITY);
        if (number >= min && number <= max) {
            return Optional.empty();
        }
        String unit = schema.path("unit").asText("1");
        return Optional.of(schema.path("minimum").asText("any") + " to "
                + schema.path("maximum").asText("any") + (unit.equals("1") ? "" : " " + unit));
    }

    /** The bound that a text breaks, in words. */
    static Optional<String> broken(String text, JsonNode schema) {
        int length = text.codePointCount(0, text.length());
        int min = schema.path("minLength").asInt(0);
        int max = schema.path("maxLength").asInt(Integer.MAX_VALUE);
        if (length < min || length > max) {
            return Optional.of(min + " to " + max + " characters");
        }
        List<String> allowed = new ArrayList<>();
        schema.path("enum").forEach(value -> allowed.add(value.asText()));
        if (!allowed.isEmpty() && !allowed.contains(text)) {
            return Optional.of("one of " + String.join(", ", allowed));
        }
        String pattern = schema.path("pattern").asText("");
        return pattern.isEmpty() || Pattern.compile(pattern).matcher(text).find()
                ? Optional.empty()
                : Optional.of("the form of " + schema.path("examples").path(0).asText(pattern));
    }
}
