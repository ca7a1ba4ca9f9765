package org.tableweather.release;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * How a release is cited: as text, as a citation file, and as metadata of DataCite. No DOI is stated: none was registered.
 *
 * @param manifest of the release, its files aside
 * @source CitationFileFormat, DataCiteSchema
 */
record Citation(Manifest manifest) {
    static final String PUBLISHER = "Tableweather";

    private static final int NAMED = 10;

    /** Full name: title and number. */
    String title() {
        return manifest.title() + ", release " + manifest.number();
    }

    /** What it is, in a paragraph. */
    String description() {
        Manifest.Totals totals = manifest.totals();
        return (manifest.invented() ? "INVENTED DATA, made up for demonstration. " : "")
                + "Attempts at defined shots on pool tables, with the climate of the room at each: "
                + count(totals.trials(), "trial") + " in " + count(totals.sessions(), "session") + " of "
                + count(totals.rooms(), "room") + ", from " + count(totals.contributions(), "contribution")
                + ". The set of sessions is named by " + manifest.datasetHash() + ".";
    }

    private static String count(long number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    /** {@code CITATION.txt}. */
    String text() {
        List<Author> authors = Author.of(manifest);
        String names = authors.stream().limit(NAMED).map(Author::name).collect(Collectors.joining("; "));
        return names + (authors.size() > NAMED ? "; et al." : "") + " ("
                + manifest.date().getYear() + "). " + title() + " [Data set]. " + PUBLISHER + ", "
                + manifest.date() + ". Sessions " + manifest.datasetHash() + ".\n";
    }

    /** {@code CITATION.cff}: YAML, every text quoted as JSON quotes it. */
    String citationFile() {
        StringBuilder file = new StringBuilder("cff-version: 1.2.0\ntype: dataset\n");
        line(file, "title", title());
        line(file, "message", "If you use this dataset, please cite it by the metadata of this file.");
        line(file, "abstract", description());
        file.append("authors:\n");
        for (Author author : Author.of(manifest)) {
            file.append("  - name: ").append(quoted(author.name())).append('\n');
            author.orcidAddress()
                    .ifPresent(orcid ->
                            file.append("    orcid: ").append(quoted(orcid)).append('\n'));
        }
        line(file, "version", Integer.toString(manifest.number()));
        line(file, "date-released", manifest.date().toString());
        identifiers(file);
        licence(file);
        return file.toString();
    }

    private void identifiers(StringBuilder file) {
        file.append("identifiers:\n  - type: other\n    value: ")
                .append(quoted(manifest.datasetHash()))
                .append("\n    description: ")
                .append(quoted("SHA-256 of the sorted digests of all sessions"))
                .append('\n');
    }

    /** Several licences would be read as a choice among them, so only a single one is stated. */
    private void licence(StringBuilder file) {
        List<Licence> licences = Licence.of(manifest);
        if (licences.size() == 1) {
            Licence only = licences.get(0);
            line(
                    file,
                    only.isKnownToCitationFiles() ? "license" : "license-url",
                    only.isKnownToCitationFiles() ? only.id() : only.address());
        }
    }

    private static void line(StringBuilder file, String key, String value) {
        file.append(key).append(": ").append(quoted(value)).append('\n');
    }

    private static String quoted(String value) {
        return ReleaseJson.line(value);
    }

    /** {@code datacite.json}. */
    Map<String, Object> dataCite() {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("schemaVersion", "http://datacite.org/schema/kernel-4");
        json.put("types", Map.of("resourceTypeGeneral", "Dataset"));
        json.put("creators", Author.of(manifest).stream().map(Citation::creator).toList());
        json.put("titles", List.of(Map.of("title", title())));
        json.put("publisher", Map.of("name", PUBLISHER));
        json.put("publicationYear", Integer.toString(manifest.date().getYear()));
        json.put("dates", List.of(ordered("date", manifest.date().toString(), "dateType", "Issued")));
        json.put("language", "en");
        json.put("version", Integer.toString(manifest.number()));
        json.put("formats", List.of("application/vnd.apache.parquet", "application/json"));
        json.put(
                "alternateIdentifiers",
                List.of(ordered(
                        "alternateIdentifier",
                        manifest.datasetHash(),
                        "alternateIdentifierType",
                        "SHA-256 of the sorted digests of all sessions")));
        json.put(
                "rightsList",
                Licence.of(manifest).stream().map(Citation::rights).toList());
        json.put("descriptions", List.of(ordered("description", description(), "descriptionType", "Abstract")));
        return json;
    }

    private static Map<String, Object> creator(Author author) {
        Map<String, Object> creator = new LinkedHashMap<>();
        creator.put("name", author.name());
        author.orcidAddress().ifPresent(orcid -> {
            creator.put("nameType", "Personal");
            Map<String, Object> identifier = ordered("nameIdentifier", orcid, "nameIdentifierScheme", "ORCID");
            identifier.put("schemeUri", "https://orcid.org");
            creator.put("nameIdentifiers", new ArrayList<>(List.of(identifier)));
        });
        return creator;
    }

    private static Map<String, Object> rights(Licence licence) {
        Map<String, Object> rights = ordered("rightsIdentifier", licence.id(), "rightsIdentifierScheme", "SPDX");
        rights.put("rightsUri", licence.address());
        rights.put("schemeUri", "https://spdx.org/licenses/");
        return rights;
    }

    private static Map<String, Object> ordered(String key, String value, String otherKey, String otherValue) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put(key, value);
        map.put(otherKey, otherValue);
        return map;
    }
}
