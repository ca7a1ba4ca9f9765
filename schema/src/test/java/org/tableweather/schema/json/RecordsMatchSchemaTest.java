package org.tableweather.schema.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.folder.BrokenFolders;
import org.tableweather.schema.folder.ExampleFolder;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;

class RecordsMatchSchemaTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String PREFIX = "urn:tableweather:schema:v1:";

    /** A record and the part of a schema that describes it. */
    record Pair(Class<?> type, SchemaDocument schema) {
        @Override
        public String toString() {
            return type.getSimpleName();
        }
    }

    static Stream<Pair> pairs() {
        List<Pair> pairs = new ArrayList<>();
        collect(Contribution.class, SchemaDocument.contribution(), pairs);
        return pairs.stream();
    }

    private static void collect(Class<?> type, SchemaDocument schema, List<Pair> pairs) {
        if (pairs.stream().anyMatch(pair -> pair.type() == type)) {
            return;
        }
        pairs.add(new Pair(type, schema));
        for (RecordComponent component : type.getRecordComponents()) {
            Class<?> content = content(component.getGenericType());
            if (content.isRecord()) {
                SchemaDocument property = schema.property(component.getName());
                boolean list = component.getType() == List.class;
                collect(content, list ? property.items() : property, pairs);
            }
        }
    }

    private static Class<?> content(Type type) {
        return type instanceof ParameterizedType generic
                ? (Class<?>) generic.getActualTypeArguments()[0]
                : (Class<?>) type;
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void agreeInNames(Pair pair) {
        List<String> names = new ArrayList<>();
        pair.schema().node().path("properties").fieldNames().forEachRemaining(names::add);

        assertThat(names)
                .containsExactly(Arrays.stream(pair.type().getRecordComponents())
                        .map(RecordComponent::getName)
                        .toArray(String[]::new));
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void agreeInTypes(Pair pair) {
        for (RecordComponent component : pair.type().getRecordComponents()) {
            JsonNode property = pair.schema().property(component.getName()).node();
            assertThat(property.path("type").asText())
                    .as(component.getName())
                    .isEqualTo(jsonType(component.getGenericType()));
        }
    }

    private static String jsonType(Type type) {
        Class<?> content = content(type);
        if (type instanceof ParameterizedType generic && generic.getRawType() == List.class) {
            return "array";
        }
        if (content == OptionalDouble.class || content == double.class) {
            return "number";
        }
        if (content == OptionalInt.class) {
            return "integer";
        }
        if (content == Boolean.class) {
            return "boolean";
        }
        boolean text = content == String.class
                || content == LocalDate.class
                || content == OffsetDateTime.class
                || content.isEnum();
        return text ? "string" : "object";
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void agreeInWhatIsRequired(Pair pair) {
        Set<String> required = new TreeSet<>();
        pair.schema().node().path("required").forEach(name -> required.add(name.asText()));
        Set<String> components = new TreeSet<>();
        for (RecordComponent component : pair.type().getRecordComponents()) {
            Class<?> type = component.getType();
            boolean optional = type == Optional.class || type == OptionalDouble.class || type == OptionalInt.class;
            if (!optional && type != List.class
                    || Set.of("rooms", "tables", "sessions").contains(component.getName())) {
                components.add(component.getName());
            }
        }

        assertThat(required).isEqualTo(components);
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void describeEveryFieldWithTitleUnitAndExample(Pair pair) {
        pair.schema().node().path("properties").properties().forEach(field -> {
            JsonNode property = field.getValue();
            assertThat(property.path("title").asText()).as(field.getKey()).isNotBlank();
            assertThat(property.path("description").asText()).as(field.getKey()).isNotBlank();
            boolean nested = property.has("$ref") || property.path("items").has("$ref");
            assertThat(property.path("examples").size()).as(field.getKey()).isEqualTo(nested ? 0 : 1);
            String type = property.path("type").asText();
            boolean number = type.equals("number") || type.equals("integer");
            assertThat(property.has("unit")).as(field.getKey()).isEqualTo(number);
        });
    }

    private static Schema schema(String name) {
        SchemaRegistry registry = SchemaRegistry.withDefaultDialect(
                SpecificationVersion.DRAFT_2020_12,
                builder -> builder.schemas(Map.of(
                        PREFIX + "contribution", resource("contribution"),
                        PREFIX + "session", resource("session"),
                        PREFIX + "shot", resource("shot"))));
        return registry.getSchema(SchemaLocation.of(PREFIX + name));
    }

    private static String resource(String name) {
        try (InputStream in = RecordsMatchSchemaTest.class.getResourceAsStream("/schema/v1/" + name + ".schema.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<com.networknt.schema.Error> errors(String schema, JsonNode json) {
        return schema(schema)
                .validate(json, context -> context.executionConfig(config -> config.formatAssertionsEnabled(true)));
    }

    @Test
    void acceptAValidContribution() throws IOException {
        assertThat(errors("contribution", JSON.readTree(ExampleFolder.sound().get("contribution.json"))))
                .isEmpty();
    }

    @Test
    void acceptEveryExampleOfTheSchemas() {
        pairs().forEach(pair -> pair.schema()
                .node()
                .path("properties")
                .properties()
                .forEach(field -> {
                    for (JsonNode example : field.getValue().path("examples")) {
                        Schema alone = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                                .getSchema(field.getValue());
                        assertThat(alone.validate(
                                        example,
                                        context -> context.executionConfig(
                                                config -> config.formatAssertionsEnabled(true))))
                                .as(field.getKey())
                                .isEmpty();
                    }
                }));
    }

    @Test
    void acceptEveryShotOfTheCatalogue() throws IOException {
        for (Shot shot : ShotCatalogue.all()) {
            try (InputStream in = Shot.class.getResourceAsStream("/schema/v1/shots/" + shot.id() + ".json")) {
                assertThat(errors("shot", JSON.readTree(in))).as(shot.id()).isEmpty();
            }
        }
    }

    @Test
    void acceptWhatTheMapperWrites() throws IOException {
        Contribution contribution =
                ContributionJson.mapper().readValue(ExampleFolder.sound().get("contribution.json"), Contribution.class);

        assertThat(errors("contribution", ContributionJson.mapper().valueToTree(contribution)))
                .isEmpty();
        assertThat(ContributionJson.mapper()
                        .readValue(ContributionJson.readable().writeValueAsBytes(contribution), Contribution.class))
                .isEqualTo(contribution);
    }

    static Stream<BrokenFolders.Broken> brokenJson() {
        Set<String> names = Set.of(
                "json-number-in-quotes",
                "json-list-for-object",
                "json-impossible-date",
                "json-table-of-25-m",
                "json-unknown-delivery",
                "newer-format",
                "no-licence",
                "no-sessions",
                "slash-in-id",
                "session-time-without-zone");
        return BrokenFolders.all().stream().filter(broken -> names.contains(broken.name()));
    }

    /** An independent validator, given the schemas alone, refuses what the reader refuses. */
    @ParameterizedTest
    @MethodSource("brokenJson")
    void refuseWhatTheReaderRefuses(BrokenFolders.Broken broken, @TempDir Path directory) throws IOException {
        Path folder = broken.writeTo(directory);

        assertThat(errors(
                        "contribution",
                        JSON.readTree(folder.resolve("contribution.json").toFile())))
                .isNotEmpty();
    }
}
