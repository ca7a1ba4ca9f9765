package org.tableweather.schema.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jbibtex.BibTeXEntry;

/** Sources as CSL-JSON items, the form that reference managers read. */
final class CslJson {
    private static final Map<String, String> TYPES = Map.of(
            "article", "article-journal",
            "book", "book",
            "inproceedings", "paper-conference",
            "incollection", "chapter",
            "phdthesis", "thesis",
            "techreport", "report",
            "misc", "document");
    private static final Map<String, String> BY_KIND =
            Map.of("dataset", "dataset", "software", "software", "standard", "standard");
    private static final Map<String, String> FIELDS = fields();

    private CslJson() {}

    private static Map<String, String> fields() {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("title", "title");
        fields.put("journal", "container-title");
        fields.put("booktitle", "container-title");
        fields.put("publisher", "publisher");
        fields.put("institution", "publisher");
        fields.put("volume", "volume");
        fields.put("number", "number");
        fields.put("pages", "page");
        fields.put("doi", "DOI");
        fields.put("isbn", "ISBN");
        fields.put("url", "URL");
        return fields;
    }

    /**
     * One item. The kind of source stands in {@code custom}, and with what was seen of it in {@code note}.
     *
     * @param entry of references.bib
     */
    static Map<String, Object> item(BibTeXEntry entry) {
        String kind = References.field(entry, "kind").orElse("");
        String style = entry.getType().getValue().toLowerCase(java.util.Locale.ROOT);
        Map<String, Object> item = new LinkedHashMap<>();
        item.put("id", entry.getKey().getValue());
        item.put("type", style.equals("article") ? TYPES.get(style) : BY_KIND.getOrDefault(kind, TYPES.get(style)));
        References.field(entry, "author").ifPresent(names -> item.put("author", authors(entry)));
        References.field(entry, "year")
                .ifPresent(year -> item.put("issued", Map.of("date-parts", List.of(List.of(Integer.parseInt(year))))));
        FIELDS.forEach((bibtex, csl) -> References.field(entry, bibtex)
                .ifPresent(value -> item.put(csl.equals("number") && style.equals("article") ? "issue" : csl, value)));
        item.put(
                "note",
                "kind: " + kind
                        + References.field(entry, "note")
                                .map(seen -> "; " + seen)
                                .orElse(""));
        item.put("custom", Map.of("kind", kind));
        return item;
    }

    /** Names in braces are those of bodies and stay whole. */
    private static List<Map<String, String>> authors(BibTeXEntry entry) {
        List<Map<String, String>> authors = new ArrayList<>();
        String names = entry.getField(BibTeXEntry.KEY_AUTHOR).toUserString();
        for (String name : names.split("\\s+and\\s+")) {
            int comma = name.indexOf(',');
            authors.add(
                    comma < 0 || name.startsWith("{")
                            ? Map.of("literal", References.plain(name))
                            : named(name.substring(0, comma), name.substring(comma + 1)));
        }
        return authors;
    }

    private static Map<String, String> named(String family, String given) {
        Map<String, String> name = new LinkedHashMap<>();
        name.put("family", References.plain(family));
        name.put("given", References.plain(given));
        return name;
    }
}
