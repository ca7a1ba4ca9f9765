package org.tableweather.release;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.tableweather.schema.digest.Sha256;

/**
 * The release as a research object: {@code ro-crate-metadata.json}, flattened JSON-LD.
 *
 * @param manifest of the release
 * @param files in it
 * @source ROCrate
 */
record ResearchCrate(Manifest manifest, List<Manifest.FileEntry> files) {
    static final String FILE = "ro-crate-metadata.json";

    private static final String ID = "@id";
    private static final String TYPE = "@type";
    private static final String NAME = "name";
    private static final String ROOT = "./";
    private static final String PUBLISHER = "#publisher";

    Map<String, Object> json() {
        List<Object> graph = new ArrayList<>();
        Map<String, Object> descriptor = entity(FILE, "CreativeWork");
        descriptor.put("conformsTo", reference("https://w3id.org/ro/crate/1.1"));
        descriptor.put("about", reference(ROOT));
        graph.add(descriptor);
        graph.add(root());
        Map<String, Object> publisher = entity(PUBLISHER, "Organization");
        publisher.put(NAME, Citation.PUBLISHER);
        graph.add(publisher);
        Author.of(manifest).forEach(author -> graph.add(author(author)));
        Licence.of(manifest).forEach(licence -> graph.add(licence(licence)));
        variables().forEach(variable -> graph.add(variable.entity()));
        files.forEach(file -> graph.add(file(file)));
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("@context", "https://w3id.org/ro/crate/1.1/context");
        json.put("@graph", graph);
        return json;
    }

    private Map<String, Object> root() {
        Citation citation = new Citation(manifest);
        Map<String, Object> root = entity(ROOT, "Dataset");
        root.put(NAME, citation.title());
        root.put("description", citation.description());
        root.put("datePublished", manifest.date().toString());
        root.put("version", Integer.toString(manifest.number()));
        root.put("identifier", manifest.datasetHash());
        root.put("publisher", reference(PUBLISHER));
        root.put("author", references(Author.of(manifest), ResearchCrate::id));
        root.put("license", references(Licence.of(manifest), Licence::address));
        root.put("variableMeasured", references(variables(), Variable::id));
        root.put("hasPart", references(files, Manifest.FileEntry::path));
        return root;
    }

    private static Map<String, Object> author(Author author) {
        Map<String, Object> entity = entity(id(author), "Person");
        entity.put(NAME, author.name());
        return entity;
    }

    private static String id(Author author) {
        return author.orcidAddress()
                .orElseGet(() -> "#author-"
                        + Sha256.hex(author.name().getBytes(java.nio.charset.StandardCharsets.UTF_8))
                                .substring(0, 16));
    }

    private static Map<String, Object> licence(Licence licence) {
        Map<String, Object> entity = entity(licence.address(), "CreativeWork");
        entity.put(NAME, licence.id());
        entity.put(
                "description", "The licence with the SPDX id " + licence.id() + "; LICENCES.md says what is under it");
        return entity;
    }

    /** The measured columns of trials, and of what else was recorded. */
    private List<Variable> variables() {
        List<Variable> variables = new ArrayList<>(measured("#", TrialTable.RELEASED));
        if (files.stream().anyMatch(file -> file.isIn(RecordedTables.READINGS))) {
            variables.addAll(measured("#readings-", ReadingTable.TABLE));
        }
        if (files.stream().anyMatch(file -> file.isIn(RecordedTables.CONTACTS))) {
            variables.addAll(measured("#contacts-", ContactTable.TABLE));
        }
        return variables;
    }

    private static <R> List<Variable> measured(String prefix, ParquetTable<R> table) {
        return table.columns().stream()
                .filter(column -> column.type() == ColumnType.NUMBER)
                .map(column -> new Variable(prefix + column.name(), column))
                .toList();
    }

    private record Variable(String id, TableColumn<?> column) {
        Map<String, Object> entity() {
            Map<String, Object> entity = ResearchCrate.entity(id, "PropertyValue");
            entity.put(NAME, column.name());
            entity.put("description", column.description());
            entity.put("unitText", column.unit());
            return entity;
        }
    }

    private static Map<String, Object> file(Manifest.FileEntry file) {
        Map<String, Object> entity = entity(file.path(), "File");
        entity.put(NAME, file.path());
        entity.put("contentSize", Long.toString(file.bytes()));
        entity.put("encodingFormat", mediaType(file.path()));
        return entity;
    }

    private static String mediaType(String path) {
        return switch (path.substring(path.lastIndexOf('.') + 1)) {
            case "parquet" -> "application/vnd.apache.parquet";
            case "json" -> "application/json";
            case "md" -> "text/markdown";
            case "cff" -> "application/yaml";
            default -> "text/plain";
        };
    }

    private static Map<String, Object> entity(String id, String type) {
        Map<String, Object> entity = new LinkedHashMap<>();
        entity.put(ID, id);
        entity.put(TYPE, type);
        return entity;
    }

    private static Map<String, Object> reference(String id) {
        return Map.of(ID, id);
    }

    private static <T> List<Map<String, Object>> references(List<T> things, Function<T, String> id) {
        return things.stream().map(id).map(ResearchCrate::reference).toList();
    }
}
