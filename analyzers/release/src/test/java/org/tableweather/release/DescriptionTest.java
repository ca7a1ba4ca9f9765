package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/** What a release says of itself, held against the published rules for such files. */
class DescriptionTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    static Path work;

    private static Path release;

    @BeforeAll
    static void build() throws IOException {
        release = InventedRelease.in(work).folder();
    }

    private static JsonNode json(String file) throws IOException {
        return JSON.readTree(release.resolve(file).toFile());
    }

    private static String schemaText() throws IOException {
        try (InputStream in = DescriptionTest.class.getResourceAsStream("/schema/v1/manifest.schema.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void theManifestIsAsItsJsonSchemaSays() throws IOException {
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(schemaText());
        assertThat(schema.validate(json(Manifest.FILE))).isEmpty();
        // and the schema can tell: a wrong hash, a missing number
        String manifest = Files.readString(release.resolve(Manifest.FILE));
        assertThat(schema.validate(JSON.readTree(manifest.replaceFirst("\"sha256\" : \"..", "\"sha256\" : \"XX"))))
                .isNotEmpty();
        assertThat(schema.validate(JSON.readTree(manifest.replaceFirst("\"number\" : 1,", ""))))
                .isNotEmpty();
    }

    /** Names of the manifest, and of every object in it, that the schema does not describe would be missing there. */
    @Test
    void theJsonSchemaDescribesEveryNameOfTheManifest() throws IOException {
        JsonNode schema = JSON.readTree(schemaText());
        Set<String> described = new TreeSet<>();
        schema.findValues("properties")
                .forEach(properties -> properties.fieldNames().forEachRemaining(described::add));
        schema.at("/properties")
                .forEach(property -> property.path("properties").fieldNames().forEachRemaining(described::add));
        Set<String> used = new TreeSet<>();
        names(json(Manifest.FILE), used);
        assertThat(described).containsAll(used);
    }

    /** A server keeps a report on one line, with nulls: in a release it is the same as from a folder. */
    @Test
    void checkReportsAreLaidOutAlike() throws IOException {
        String kept =
                "{\"trials\":4,\"findings\":[{\"check\":\"a.b\",\"row\":null,\"column\":\"\"}],\"cautions\":[],\"ratio\":67.10000000000001}";
        String again = ReleaseJson.again(kept);
        assertThat(again).isEqualTo("""
                {
                  "trials" : 4,
                  "findings" : [
                    {
                      "check" : "a.b"
                    }
                  ],
                  "ratio" : 67.10000000000001
                }
                """);
        assertThat(ReleaseJson.again(again)).isEqualTo(again);
        assertThat(ReleaseJson.again("")).isEmpty();
        for (Manifest.FileEntry file : ReleaseFolder.open(release).manifest().files()) {
            if (file.isIn("reports")) {
                String report = Files.readString(release.resolve(file.path()));
                assertThat(ReleaseJson.again(report)).isEqualTo(report);
            }
        }
    }

    /** Whoever has the folder alone knows what was shot: the definitions are the schema's, and every shot has one. */
    @Test
    void theReleaseSaysWhatItsShotsMean() throws IOException {
        Set<String> defined = new TreeSet<>();
        try (Stream<Path> files = Files.walk(release.resolve("shots"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                for (JsonNode shot : JSON.readTree(file.toFile()).path("shots")) {
                    Shot read = ContributionJson.readShot(
                            new ByteArrayInputStream(shot.toString().getBytes(StandardCharsets.UTF_8)));
                    defined.add(read.id());
                }
            }
        }
        ReleaseFolder.open(release).manifest().files().stream()
                .flatMap(file -> file.shots().stream())
                .forEach(run -> assertThat(defined).contains(run.shot()));
        assertThat(defined).contains("own-kick").hasSize(ShotCatalogue.all().size() + 1);
        assertThat(json("manifest.json").toString()).contains("shots/contributions/");
    }

    private static void names(JsonNode node, Set<String> into) {
        node.fieldNames().forEachRemaining(into::add);
        node.forEach(child -> names(child, into));
    }

    /**
     * The rules: specification 1.1, sections Root Data Entity, Data Entities, Contextual Entities.
     *
     * @source ROCrate
     */
    @Test
    void theResearchObjectHasWhatTheSpecificationDemands() throws IOException {
        JsonNode crate = json("ro-crate-metadata.json");
        assertThat(crate.path("@context").asText()).isEqualTo("https://w3id.org/ro/crate/1.1/context");
        Map<String, JsonNode> byId = new HashMap<>();
        for (JsonNode entity : crate.path("@graph")) {
            // "MUST NOT list multiple entities with the same @id"
            assertThat(byId.put(entity.path("@id").asText(), entity))
                    .as("%s", entity)
                    .isNull();
            assertThat(entity.path("@type").asText()).isNotEmpty();
        }
        JsonNode descriptor = byId.get("ro-crate-metadata.json");
        assertThat(descriptor.path("@type").asText()).isEqualTo("CreativeWork");
        assertThat(descriptor.at("/about/@id").asText()).isEqualTo("./");
        assertThat(descriptor.at("/conformsTo/@id").asText()).isEqualTo("https://w3id.org/ro/crate/1.1");
        JsonNode root = byId.get("./");
        assertThat(root.path("@type").asText()).isEqualTo("Dataset");
        assertThat(root.path("name").asText()).isEqualTo("Invented, release 1");
        assertThat(root.path("description").asText()).contains("360 trials in 12 sessions of 6 rooms");
        assertThat(LocalDate.parse(root.path("datePublished").asText())).isEqualTo(LocalDate.of(2026, 2, 1));
        assertThat(references(root.path("license"))).containsExactly("https://spdx.org/licenses/CC-BY-4.0.html");
        // every reference leads to an entity; every file is linked from the root and there
        for (String property : List.of("license", "author", "hasPart", "variableMeasured")) {
            assertThat(references(root.path(property)))
                    .isNotEmpty()
                    .allSatisfy(id -> assertThat(byId).containsKey(id));
        }
        assertThat(byId.get(root.at("/publisher/@id").asText()).path("@type").asText())
                .isEqualTo("Organization");
        for (String file : references(root.path("hasPart"))) {
            assertThat(byId.get(file).path("@type").asText()).isEqualTo("File");
            assertThat(byId.get(file).path("contentSize").asText())
                    .isEqualTo(Long.toString(Files.size(release.resolve(file))));
        }
        assertThat(references(root.path("hasPart"))).contains("trials/kind=kick/room_group=000/part-0.parquet");
    }

    private static List<String> references(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false)
                .map(each -> each.path("@id").asText())
                .toList();
    }

    /**
     * The rules: the required properties, patterns and lists of the JSON Schema of version 4.5.
     *
     * @source DataCiteSchema
     */
    @Test
    void theMetadataHaveWhatDataCiteDemands() throws IOException {
        JsonNode metadata = json("datacite.json");
        assertThat(metadata.path("schemaVersion").asText()).isEqualTo("http://datacite.org/schema/kernel-4");
        assertThat(metadata.at("/types/resourceTypeGeneral").asText()).isEqualTo("Dataset");
        assertThat(metadata.path("creators"))
                .hasSize(2)
                .allSatisfy(creator -> assertThat(creator.path("name").asText()).endsWith("Invented"));
        assertThat(metadata.at("/titles/0/title").asText()).isEqualTo("Invented, release 1");
        assertThat(metadata.at("/publisher/name").asText()).isNotEmpty();
        assertThat(metadata.path("publicationYear").isTextual()).isTrue();
        assertThat(metadata.path("publicationYear").asText()).matches("^[0-9]{4}$");
        assertThat(metadata.path("dates")).allSatisfy(date -> {
            assertThat(LocalDate.parse(date.path("date").asText())).isEqualTo(LocalDate.of(2026, 2, 1));
            assertThat(date.path("dateType").asText()).isEqualTo("Issued");
        });
        assertThat(metadata.path("descriptions")).allSatisfy(description -> {
            assertThat(description.path("description").asText()).isNotEmpty();
            assertThat(description.path("descriptionType").asText()).isEqualTo("Abstract");
        });
        assertThat(metadata.path("alternateIdentifiers")).allSatisfy(identifier -> {
            assertThat(identifier.path("alternateIdentifier").asText()).startsWith("sha256:");
            assertThat(identifier.path("alternateIdentifierType").asText()).isNotEmpty();
        });
        assertThat(metadata.path("rightsList")).hasSize(1);
        // all others that the schema allows at the top; a DOI is registered, never invented
        Set<String> names = new TreeSet<>();
        metadata.fieldNames().forEachRemaining(names::add);
        assertThat(Set.of(
                        "types",
                        "creators",
                        "titles",
                        "publisher",
                        "publicationYear",
                        "dates",
                        "language",
                        "alternateIdentifiers",
                        "formats",
                        "version",
                        "rightsList",
                        "descriptions",
                        "schemaVersion"))
                .containsAll(names);
    }

    /**
     * The rules: JSON Schema 1.2.0: required keys, allowed keys, patterns.
     *
     * @source CitationFileFormat
     */
    @Test
    void theCitationFileIsValid() throws IOException {
        Map<String, Object> file = citation(Files.readString(release.resolve("CITATION.cff")));
        assertThat(file).containsKeys("authors", "cff-version", "message", "title");
        assertThat(Set.of(
                        "abstract",
                        "authors",
                        "cff-version",
                        "date-released",
                        "identifiers",
                        "license",
                        "license-url",
                        "message",
                        "title",
                        "type",
                        "version"))
                .containsAll(file.keySet());
        assertThat(file)
                .containsEntry("cff-version", "1.2.0")
                .containsEntry("type", "dataset")
                .containsEntry("date-released", "2026-02-01")
                .containsEntry("license", "CC-BY-4.0");
        assertThat((List<?>) file.get("authors"))
                .isEqualTo(List.of(Map.of("name", "Ingrid Invented"), Map.of("name", "Otto Invented")));
        assertThat(file.get("identifiers"))
                .isEqualTo(List.of(Map.of(
                        "type",
                        "other",
                        "value",
                        json(Manifest.FILE).path("datasetHash").asText(),
                        "description",
                        "SHA-256 of the sorted digests of all sessions")));
    }

    /** Quotes, colons, ORCID iDs, licences that the format does not know, several licences. */
    @Test
    void namesAndLicencesOfAnyKindStayValid() {
        Map<String, Object> file = citation(
                new Citation(manifest(member("a", "O'Invented: \"the\" # one\n- two", "CDLA-Permissive-2.0", true)))
                        .citationFile());
        assertThat((List<?>) file.get("authors"))
                .isEqualTo(List.of(Map.of(
                        "name",
                        "O'Invented: \"the\" # one\n- two",
                        "orcid",
                        // the example of ORCID's own documentation
                        "https://orcid.org/0000-0002-1825-0097")));
        assertThat(file)
                .containsEntry("license-url", "https://spdx.org/licenses/CDLA-Permissive-2.0.html")
                .doesNotContainKey("license");
        // several would be read as a choice among them
        assertThat(citation(
                        new Citation(manifest(member("a", "A", "CC-BY-4.0", false), member("b", "B", "CC0-1.0", false)))
                                .citationFile()))
                .doesNotContainKeys("license", "license-url");
    }

    @Test
    void theLicencesAreSummedUp() throws IOException {
        assertThat(Files.readString(release.resolve("LICENCES.md")))
                .contains("| [CC-BY-4.0](https://spdx.org/licenses/CC-BY-4.0.html) | 2 | 12 | 360 |")
                .contains("Otto Invented");
    }

    private static Map<String, Object> citation(String text) {
        return new Yaml(new SafeConstructor(new LoaderOptions())).load(text);
    }

    private static Manifest.Member member(String id, String contributor, String licence, boolean orcid) {
        Optional<String> iD = orcid ? Optional.of("0000-0002-1825-0097") : Optional.empty();
        return new Manifest.Member(id, Optional.empty(), licence, contributor, iD, true, "", 1, 1);
    }

    private static Manifest manifest(Manifest.Member... members) {
        return new Manifest(
                "1.0",
                1,
                "Invented",
                LocalDate.of(2026, 2, 1),
                true,
                "sha256:00",
                new Manifest.Totals(members.length, members.length, 1, 1, 1),
                new Manifest.RoomGrouping(0, 1),
                Optional.empty(),
                new Manifest.ChangeCounts(members.length, 0, 0),
                new ArrayList<>(List.of(members)),
                List.of(),
                "");
    }
}
