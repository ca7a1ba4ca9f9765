package org.tableweather.schema.reference;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jbibtex.BibTeXDatabase;
import org.jbibtex.BibTeXEntry;
import org.jbibtex.BibTeXParser;
import org.jbibtex.Key;
import org.jbibtex.ParseException;
import org.jbibtex.TokenMgrException;
import org.jbibtex.Value;

/** All sources, from {@code references.bib}. */
public final class References {
    private static final String RESOURCE = "/schema/v1/references.bib";

    /** The kinds of source. */
    public static final Set<String> KINDS =
            Set.of("standard", "handbook", "paper", "dataset", "software", "common-practice", "from-memory");

    private static final Map<String, Reference> BY_KEY = load();

    private References() {}

    /** All sources in the order of their keys. */
    public static List<Reference> all() {
        return List.copyOf(BY_KEY.values());
    }

    /**
     * The source of this key.
     *
     * @param key as code, checks and docs cite it
     */
    public static Optional<Reference> byKey(String key) {
        return Optional.ofNullable(BY_KEY.get(key));
    }

    /** All sources as BibTeX, the kind of each in the field {@code kind}. */
    public static String bibtex() {
        try (InputStream in = References.class.getResourceAsStream(RESOURCE)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(RESOURCE, e);
        }
    }

    /** All sources as items of CSL-JSON, in the order of their keys; the kind of each in {@code custom} and {@code note}. */
    public static List<Map<String, Object>> cslJson() {
        Map<String, Map<String, Object>> items = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        entries().forEach(entry -> items.put(entry.getKey().getValue(), CslJson.item(entry)));
        return List.copyOf(items.values());
    }

    private static Map<String, Reference> load() {
        Map<String, Reference> references = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        for (BibTeXEntry entry : entries()) {
            Reference reference = reference(entry);
            if (references.put(reference.key(), reference) != null) {
                throw new IllegalStateException(RESOURCE + " has " + reference.key() + " twice");
            }
        }
        return Collections.unmodifiableMap(references);
    }

    private static Collection<BibTeXEntry> entries() {
        try (Reader reader = new StringReader(bibtex())) {
            BibTeXDatabase database = new BibTeXParser().parseFully(reader);
            return database.getEntries().values();
        } catch (IOException e) {
            throw new UncheckedIOException(RESOURCE, e);
        } catch (ParseException | TokenMgrException e) {
            throw new IllegalStateException(RESOURCE + " is no BibTeX: " + e.getMessage(), e);
        }
    }

    private static Reference reference(BibTeXEntry entry) {
        return new Reference(
                entry.getKey().getValue(),
                field(entry, "kind").orElse(""),
                citation(entry),
                field(entry, "doi"),
                field(entry, "note"));
    }

    /** Authors (year). Title. Where. */
    private static String citation(BibTeXEntry entry) {
        List<String> parts = new ArrayList<>();
        field(entry, "author").ifPresent(authors -> parts.add(authors(authors)));
        field(entry, "year").ifPresent(year -> parts.add("(" + year + ")."));
        field(entry, "title").ifPresent(title -> parts.add(title + "."));
        List<String> where = new ArrayList<>();
        Stream.of("journal", "booktitle", "publisher", "institution", "volume", "number", "pages", "url")
                .forEach(name -> field(entry, name).ifPresent(where::add));
        if (!where.isEmpty()) {
            parts.add(String.join(", ", where) + ".");
        }
        return String.join(" ", parts);
    }

    private static String authors(String names) {
        return names.replace(" and ", "; ");
    }

    static Optional<String> field(BibTeXEntry entry, String name) {
        Value value = entry.getField(new Key(name));
        return value == null ? Optional.empty() : Optional.of(plain(value.toUserString()));
    }

    /** Without braces, with a dash for two hyphens. */
    static String plain(String text) {
        return text.replace("{", "")
                .replace("}", "")
                .replace("--", "–")
                .replaceAll("\\s+", " ")
                .strip();
    }
}
