package org.tableweather.schema.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;

/**
 * Makes records of a JSON tree, reporting everything that is wrong with it instead of ending at the first fault. Types
 * come from the records, bounds from the JSON Schema. A field that cannot be used is left empty, a required text is
 * replaced by an empty one, so that the rest can still be checked.
 */
final class RecordBinder {
    private final Findings findings;

    RecordBinder(Findings findings) {
        this.findings = findings;
    }

    /** A required value that is not there and that nothing can stand for. */
    private static final Object UNUSABLE = new Object();

    /**
     * Makes a record.
     *
     * @param type a record class of the schema
     * @param json what should be its object
     * @param schema what the schema says of it
     * @param pointer JSON pointer to it
     * @return empty when it is no object, or lacks what nothing can stand for
     */
    <T extends Record> Optional<T> bind(Class<T> type, JsonNode json, SchemaDocument schema, String pointer) {
        if (!json.isObject()) {
            wrongType(pointer, json, "an object in braces");
            return Optional.empty();
        }
        reportUnknown(type, json, pointer);
        RecordComponent[] components = type.getRecordComponents();
        Object[] values = new Object[components.length];
        boolean usable = true;
        for (int i = 0; i < components.length; i++) {
            values[i] = component(components[i], json, schema, pointer);
            usable &= values[i] != UNUSABLE;
        }
        return usable ? Optional.of(create(type, components, values)) : Optional.empty();
    }

    private Object component(RecordComponent component, JsonNode object, SchemaDocument schema, String pointer) {
        String name = component.getName();
        JsonNode value = object.path(name);
        String where = pointer + "/" + name.replace("~", "~0").replace("/", "~1");
        if (value.isMissingNode() || value.isNull()) {
            if (isRequired(schema, name)) {
                findings.add(
                        StructureChecks.REQUIRED_FIELD,
                        Place.json(where),
                        null,
                        () -> "the field " + name + " is missing");
            }
            return absent(component.getGenericType());
        }
        Object converted = convert(component.getGenericType(), value, schema.property(name), where);
        return converted == UNUSABLE ? absent(component.getGenericType()) : converted;
    }

    private static boolean isRequired(SchemaDocument schema, String name) {
        for (JsonNode required : schema.node().path("required")) {
            if (required.asText().equals(name)) {
                return true;
            }
        }
        return false;
    }

    private Object convert(Type type, JsonNode value, SchemaDocument schema, String pointer) {
        if (type instanceof ParameterizedType generic) {
            Type of = generic.getActualTypeArguments()[0];
            if (generic.getRawType() == List.class) {
                return list(of, value, schema, pointer);
            }
            Object content = convert(of, value, schema, pointer);
            return content == UNUSABLE || "".equals(content) ? Optional.empty() : Optional.of(content);
        }
        Class<?> plain = (Class<?>) type;
        if (plain.isRecord()) {
            Optional<? extends Record> bound = bind(plain.asSubclass(Record.class), value, schema, pointer);
            return bound.isPresent() ? bound.get() : UNUSABLE;
        }
        return scalar(plain, value, schema, pointer);
    }

    private List<Object> list(Type of, JsonNode value, SchemaDocument schema, String pointer) {
        if (!value.isArray()) {
            wrongType(pointer, value, "a list in brackets");
            return List.of();
        }
        int least = schema.node().path("minItems").asInt(0);
        if (value.size() < least) {
            String found = value.isEmpty() ? "the list is empty" : "the list has " + value.size() + " of " + least;
            findings.add(StructureChecks.REQUIRED_FIELD, Place.json(pointer), "[]", () -> found);
        }
        List<Object> items = new ArrayList<>(value.size());
        SchemaDocument itemSchema = schema.items();
        for (int i = 0; i < value.size(); i++) {
            Object item = convert(of, value.get(i), itemSchema, pointer + "/" + i);
            if (item != UNUSABLE) {
                items.add(item);
            }
        }
        return items;
    }

    private Object scalar(Class<?> type, JsonNode value, SchemaDocument schema, String pointer) {
        if (type == String.class) {
            return text(value, schema, pointer);
        }
        if (type == OptionalDouble.class || type == double.class) {
            return number(type, value, schema, pointer);
        }
        if (type == OptionalInt.class) {
            return whole(value, schema, pointer);
        }
        if (type == Boolean.class) {
            return value.isBoolean() ? (Object) value.booleanValue() : wrongType(pointer, value, "true or false");
        }
        if (type.isEnum()) {
            return choice(type, value, pointer);
        }
        return time(type, value, pointer);
    }

    private Object text(JsonNode value, SchemaDocument schema, String pointer) {
        if (!value.isTextual()) {
            wrongType(pointer, value, "a text in quotes");
            return "";
        }
        String text = value.textValue();
        JsonBounds.broken(text, schema.node())
                .ifPresent(bound -> findings.add(
                        JsonBounds.check(pointer), Place.json(pointer), text, bound, () -> "the text is not allowed"));
        return text;
    }

    private Object number(Class<?> type, JsonNode value, SchemaDocument schema, String pointer) {
        if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
            wrongType(pointer, value, "a number without quotes");
            return absent(type);
        }
        double number = value.doubleValue();
        checkRange(number, value, schema, pointer);
        return type == double.class ? (Object) number : OptionalDouble.of(number);
    }

    private OptionalInt whole(JsonNode value, SchemaDocument schema, String pointer) {
        if (!value.isNumber() || value.doubleValue() != Math.rint(value.doubleValue()) || !value.canConvertToInt()) {
            wrongType(pointer, value, "a whole number without quotes");
            return OptionalInt.empty();
        }
        checkRange(value.doubleValue(), value, schema, pointer);
        return OptionalInt.of(value.intValue());
    }

    private void checkRange(double number, JsonNode value, SchemaDocument schema, String pointer) {
        JsonBounds.broken(number, schema.node())
                .ifPresent(bound -> findings.add(
                        JsonBounds.check(pointer),
                        Place.json(pointer),
                        value.asText(),
                        bound,
                        () -> value.asText() + " is out of range"));
    }

    private Object choice(Class<?> type, JsonNode value, String pointer) {
        List<String> names = Arrays.stream(type.getEnumConstants())
                .map(constant -> ((Enum<?>) constant).name().toLowerCase(Locale.ROOT))
                .toList();
        int index = value.isTextual() ? names.indexOf(value.textValue()) : -1;
        if (index >= 0) {
            return type.getEnumConstants()[index];
        }
        String allowed = "one of " + String.join(", ", names);
        findings.add(StructureChecks.JSON_VALUE, Place.json(pointer), value.asText(), allowed, () -> "not " + allowed);
        return UNUSABLE;
    }

    private Object time(Class<?> type, JsonNode value, String pointer) {
        boolean date = type == LocalDate.class;
        String text = value.asText();
        try {
            if (value.isTextual()) {
                return date ? (Object) LocalDate.parse(text) : OffsetDateTime.parse(text);
            }
        } catch (DateTimeException e) {
            // reported below
        }
        Check check = date ? StructureChecks.JSON_TYPE : timeCheck(text);
        String bound = date ? "a date such as 2026-01-12" : check.bound();
        findings.add(check, Place.json(pointer), text, bound, () -> "not " + (date ? bound : "a time with its offset"));
        return UNUSABLE;
    }

    private static Check timeCheck(String text) {
        boolean local = text.matches("\\d{4}-\\d\\d-\\d\\d[T ]\\d\\d:\\d\\d(:\\d\\d(\\.\\d+)?)?");
        return local ? StructureChecks.TIME_ZONE : StructureChecks.TIME;
    }

    private Object wrongType(String pointer, JsonNode value, String wanted) {
        String shown = value.isContainerNode() ? value.isArray() ? "[...]" : "{...}" : value.toString();
        findings.add(StructureChecks.JSON_TYPE, Place.json(pointer), shown, wanted, () -> shown + " is not " + wanted);
        return UNUSABLE;
    }

    private void reportUnknown(Class<?> type, JsonNode json, String pointer) {
        List<String> known = Arrays.stream(type.getRecordComponents())
                .map(RecordComponent::getName)
                .toList();
        for (Iterator<String> names = json.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            if (!known.contains(name) && !name.startsWith("$")) {
                String bound = "one of " + String.join(", ", known);
                findings.add(
                        StructureChecks.UNKNOWN_FIELD,
                        Place.json(pointer + "/" + name.replace("~", "~0").replace("/", "~1")),
                        name,
                        bound,
                        () -> "the field is not part of the format and is not read");
            }
        }
    }

    /** What stands for a value that is not there. */
    private static Object absent(Type type) {
        if (type instanceof ParameterizedType generic) {
            return generic.getRawType() == List.class ? List.of() : Optional.empty();
        }
        if (type == OptionalDouble.class) {
            return OptionalDouble.empty();
        }
        if (type == OptionalInt.class) {
            return OptionalInt.empty();
        }
        if (type instanceof Class<?> plain && plain.isRecord()) {
            RecordComponent[] components = plain.getRecordComponents();
            Object[] values = Arrays.stream(components)
                    .map(component -> absent(component.getGenericType()))
                    .toArray();
            return Arrays.asList(values).contains(UNUSABLE)
                    ? UNUSABLE
                    : create(plain.asSubclass(Record.class), components, values);
        }
        return type == String.class ? "" : type == double.class ? (Object) Double.NaN : UNUSABLE;
    }

    private static <T extends Record> T create(Class<T> type, RecordComponent[] components, Object[] values) {
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        try {
            return type.getDeclaredConstructor(types).newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("record " + type.getName() + " has no canonical constructor", e);
        }
    }
}
