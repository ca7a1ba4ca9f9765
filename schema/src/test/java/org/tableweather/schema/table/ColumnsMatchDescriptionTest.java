package org.tableweather.schema.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.Trial;

class ColumnsMatchDescriptionTest {
    private static JsonNode description(String file) throws IOException {
        try (InputStream in = Column.class.getResourceAsStream("/schema/v1/" + file + ".csvw.json")) {
            return new ObjectMapper().readTree(in);
        }
    }

    private static List<? extends Column> columns(String file) {
        return switch (file) {
            case "trials" -> TrialColumn.all();
            case "climate" -> ClimateColumn.all();
            default -> ContactColumn.all();
        };
    }

    @ParameterizedTest
    @ValueSource(strings = {"trials", "climate", "contacts"})
    void agreeInNamesUnitsBoundsAndWhatIsRequired(String file) throws IOException {
        JsonNode described = description(file).path("tableSchema").path("columns");
        List<? extends Column> columns = columns(file);

        assertThat(description(file).path("url").asText()).isEqualTo(file + ".csv");
        assertThat(described).hasSize(columns.size());
        for (int i = 0; i < columns.size(); i++) {
            Column column = columns.get(i);
            JsonNode words = described.get(i);
            assertThat(words.path("name").asText()).isEqualTo(column.header());
            assertThat(words.path("titles").asText()).isEqualTo(column.header());
            assertThat(words.path("schema:unitText").asText("")).isEqualTo(column.unit());
            assertThat(words.path("required").asBoolean()).isEqualTo(column.required());
            assertThat(words.path("datatype").path("minimum").asDouble(Double.NEGATIVE_INFINITY))
                    .isEqualTo(column.min());
            assertThat(words.path("datatype").path("maximum").asDouble(Double.POSITIVE_INFINITY))
                    .isEqualTo(column.max());
            for (String field : List.of("dc:title", "dc:description", "skos:example")) {
                assertThat(words.path(field).asText())
                        .as(column.header() + " " + field)
                        .isNotBlank();
            }
        }
    }

    @Test
    void standForTheComponentsOfATrial() {
        List<String> names = new ArrayList<>(Arrays.stream(Trial.class.getRecordComponents())
                .map(RecordComponent::getName)
                .map(ColumnsMatchDescriptionTest::snake)
                .toList());
        names.remove("climate");
        names.remove("uncertainty");
        names.addAll(
                names.indexOf("note"),
                Arrays.stream(OutcomeUncertainty.class.getRecordComponents())
                        .map(RecordComponent::getName)
                        .map(ColumnsMatchDescriptionTest::snake)
                        .toList());

        assertThat(TrialColumn.all())
                .filteredOn(column -> column.standard() == column)
                .extracting(TrialColumn::header)
                .containsExactlyElementsOf(names);
    }

    @Test
    void standForTheComponentsOfAContact() {
        List<String> names = Arrays.stream(Contact.class.getRecordComponents())
                .map(RecordComponent::getName)
                .map(ColumnsMatchDescriptionTest::snake)
                .map(name -> name.equals("time_s") ? "t_s" : name)
                .toList();

        assertThat(ContactColumn.all()).extracting(ContactColumn::header).containsExactlyElementsOf(names);
    }

    private static String snake(String camel) {
        return camel.replaceAll("(?<!^)([A-Z])", "_$1").toLowerCase(Locale.ROOT);
    }

    @Test
    void convertToTheUnitsOfTheRecords() {
        // NIST SP 811 appendix B: 80 °F = 26.6667 °C; 1 mi/h = 0.44704 m/s, 1 in = 25.4 mm exactly
        assertThat(TrialColumn.TEMP_F.toStandard(80)).isEqualTo(26.6667, within(5e-5));
        assertThat(TrialColumn.TEMP_F.toStandard(-40)).isEqualTo(-40);
        assertThat(TrialColumn.APPROACH_SPEED_MPH.toStandard(1)).isEqualTo(0.44704);
        assertThat(TrialColumn.HOP_HEIGHT_IN.toStandard(1)).isEqualTo(25.4);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"temp_k", "temp", "TEMP_R", "rh", "rh_frac", "approach_speed_kmh", "hop_height_cm", "run_out_ft"
            })
    void areMeantByNamesWithUnitsThatAreNotRead(String name) {
        assertThat(Column.of(TrialColumn.all(), name)).isEmpty();
        assertThat(Column.meant(TrialColumn.all(), name)).isPresent();
    }

    @ParameterizedTest
    @ValueSource(strings = {"weather", "rails_seen", "note_2", "player", "shot_no"})
    void areNotMeantByOtherNames(String name) {
        assertThat(Column.meant(TrialColumn.all(), name)).isEmpty();
    }
}
