package org.tableweather.schema.table;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.tableweather.schema.record.Kind;

/**
 * What a kind of trial states: the one source for the reader, the writer of new folders, and the documentation.
 *
 * @param kind what the trial tests
 * @param description in words
 * @param needsOneOf columns of which at least one is needed
 * @param optional columns that make a trial of this kind more useful
 */
public record KindOutcomes(Kind kind, String description, List<TrialColumn> needsOneOf, List<TrialColumn> optional) {
    private static final String RESOURCE = "/schema/v1/kinds.json";
    private static final Map<Kind, KindOutcomes> BY_KIND = load();

    public KindOutcomes {
        needsOneOf = List.copyOf(needsOneOf);
        optional = List.copyOf(optional);
    }

    /** What this kind states. */
    public static KindOutcomes of(Kind kind) {
        return BY_KIND.get(kind);
    }

    /** All kinds in the order of {@link Kind}. */
    public static List<KindOutcomes> all() {
        return List.copyOf(BY_KIND.values());
    }

    /** The columns for the standard uncertainties of what it states, needed and optional. */
    public List<TrialColumn> uncertainties() {
        return Stream.concat(needsOneOf.stream(), optional.stream())
                .map(TrialColumn::uncertainty)
                .flatMap(Optional::stream)
                .distinct()
                .toList();
    }

    private static Map<Kind, KindOutcomes> load() {
        try (InputStream in = KindOutcomes.class.getResourceAsStream(RESOURCE)) {
            Map<Kind, KindOutcomes> kinds = new EnumMap<>(Kind.class);
            for (JsonNode entry : new ObjectMapper().readTree(in).path("kinds")) {
                KindOutcomes outcomes = outcomes(entry);
                kinds.put(outcomes.kind(), outcomes);
            }
            return kinds;
        } catch (IOException e) {
            throw new UncheckedIOException(RESOURCE, e);
        }
    }

    private static KindOutcomes outcomes(JsonNode entry) {
        return new KindOutcomes(
                Kind.of(entry.path("kind").asText()).orElseThrow(),
                entry.path("description").asText(),
                columns(entry.path("needsOneOf")),
                columns(entry.path("optional")));
    }

    private static List<TrialColumn> columns(JsonNode names) {
        return StreamSupport.stream(names.spliterator(), false)
                .map(name -> Column.of(TrialColumn.all(), name.asText()).orElseThrow())
                .toList();
    }
}
