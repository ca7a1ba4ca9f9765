package org.tableweather.schema.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.record.Shot;

/** The JSON of the schema's records, written and read the same way everywhere. */
public final class ContributionJson {
    /** The name of the file. */
    public static final String FILE = "contribution.json";

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .addModule(new JavaTimeModule())
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .disable(MapperFeature.SORT_CREATOR_PROPERTIES_FIRST)
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .disable(DeserializationFeature.ADJUST_DATES_TO_CONTEXT_TIME_ZONE)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .defaultPropertyInclusion(
                    JsonInclude.Value.construct(JsonInclude.Include.NON_EMPTY, JsonInclude.Include.NON_ABSENT))
            .build();

    private static final JsonMapper DECLARED = MAPPER.rebuild()
            .disable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .enable(SerializationFeature.INDENT_OUTPUT)
            .build();

    private ContributionJson() {}

    /**
     * A mapper for records: absent fields are left out, times keep their offset, names are sorted. Callers may copy it,
     * not change it.
     */
    public static JsonMapper mapper() {
        return MAPPER;
    }

    /** A mapper for people: names in the schema's order, indented. */
    public static JsonMapper readable() {
        return DECLARED;
    }

    /**
     * One shot of the catalogue.
     *
     * @throws IOException when it is not as the schema says
     */
    public static Shot readShot(InputStream in) throws IOException {
        Findings findings = new Findings();
        Optional<Shot> shot = new RecordBinder(findings)
                .bind(Shot.class, parse(in.readAllBytes(), findings), SchemaDocument.shot(), "");
        if (shot.isEmpty() || findings.refuse()) {
            throw new IOException(
                    findings.report(0, 0, java.util.Map.of()).findings().toString());
        }
        return shot.get();
    }

    static JsonNode parse(byte[] bytes, Findings findings) {
        Place file = Place.file(FILE);
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            String content = text.startsWith("\uFEFF") ? text.substring(1) : text;
            if (content.isBlank()) {
                findings.add(StructureChecks.EMPTY_FILE, file, null, () -> "the file is empty");
                return JsonNodeFactory.instance.missingNode();
            }
            return MAPPER.reader()
                    .with(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                    .readTree(content);
        } catch (CharacterCodingException e) {
            findings.add(StructureChecks.ENCODING, file, null, () -> "the file is not UTF-8");
        } catch (JsonProcessingException e) {
            int line = e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getLineNr());
            int column =
                    e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getColumnNr());
            String what = e.getOriginalMessage();
            findings.add(
                    StructureChecks.JSON,
                    Place.row(FILE, line),
                    null,
                    () -> "line " + line + ", character " + column + ": " + what);
        }
        return JsonNodeFactory.instance.missingNode();
    }
}
