package org.tableweather.analyzers.host;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.AnalyzerInfo;

/**
 * The envelope that every analysis keeps; CLI and server print the same bytes. Parameters and facts of the fit come in the
 * order of their names: a map without an order of its own has another one in every JVM.
 */
public final class AnalysisJson {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .enable(SerializationFeature.INDENT_OUTPUT)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private AnalysisJson() {}

    /** UTF-8 JSON of a run, with a line end at the end. */
    public static byte[] bytes(AnalysisRun run) {
        Map<String, Object> envelope = new LinkedHashMap<>();
        envelope.put("analyzer", run.info().id());
        envelope.put("version", run.info().version());
        run.analysis().<Void>fold(answer -> estimated(envelope, run, answer), none -> declined(envelope, run, none));
        try {
            byte[] json = MAPPER.writeValueAsBytes(envelope);
            byte[] line = java.util.Arrays.copyOf(json, json.length + 1);
            line[json.length] = '\n';
            return line;
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("an analysis is made of plain records", e);
        }
    }

    /**
     * A run from its JSON, as another host printed it. Of the analyzer only id and version are known then.
     *
     * @throws IOException when it is not such JSON
     */
    public static AnalysisRun read(byte[] json) throws IOException {
        JsonNode envelope = MAPPER.readTree(json);
        AnalyzerInfo info = new AnalyzerInfo(
                envelope.path("analyzer").asText(),
                envelope.path("version").asText(),
                "",
                "",
                "",
                "",
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        AnalysisRun.Dataset dataset = MAPPER.treeToValue(envelope.path("dataset"), AnalysisRun.Dataset.class);
        Class<? extends Analysis> outcome =
                switch (envelope.path("outcome").asText()) {
                    case "estimated" -> Analysis.Estimated.class;
                    case "declined" -> Analysis.Declined.class;
                    default -> throw new IOException("not an analysis: it has no outcome estimated or declined");
                };
        return new AnalysisRun(info, dataset, MAPPER.treeToValue(envelope, outcome));
    }

    /** A value with every map in it, at whatever depth, in the order of its keys. */
    private static Object ordered(Object value) {
        if (value instanceof Map<?, ?> map) {
            SortedMap<String, Object> sorted = new TreeMap<>();
            map.forEach((key, inner) -> sorted.put(String.valueOf(key), ordered(inner)));
            return sorted;
        }
        return value instanceof List<?> list
                ? list.stream().map(AnalysisJson::ordered).toList()
                : value;
    }

    private static Void estimated(Map<String, Object> envelope, AnalysisRun run, Analysis.Estimated answer) {
        envelope.put("outcome", "estimated");
        envelope.put("sentence", answer.sentence());
        envelope.put("dataset", run.dataset());
        envelope.put("parameters", ordered(answer.parameters()));
        envelope.put("fit", ordered(answer.fit()));
        envelope.put("estimates", answer.estimates());
        envelope.put("variance", answer.variance());
        envelope.put("curve", answer.curve());
        envelope.put("rooms", answer.rooms());
        envelope.put("plots", answer.plots());
        envelope.put("warnings", answer.warnings());
        envelope.put("references", answer.references());
        return null;
    }

    private static Void declined(Map<String, Object> envelope, AnalysisRun run, Analysis.Declined none) {
        envelope.put("outcome", "declined");
        envelope.put("reason", none.reason());
        envelope.put("detail", none.detail());
        envelope.put("dataset", run.dataset());
        envelope.put("parameters", ordered(none.parameters()));
        envelope.put("warnings", none.warnings());
        envelope.put("references", none.references());
        return null;
    }
}
