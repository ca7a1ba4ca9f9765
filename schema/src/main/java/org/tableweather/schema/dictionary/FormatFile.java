package org.tableweather.schema.dictionary;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The files that define format 1.0, as they ship with this module. */
public enum FormatFile {
    CONTRIBUTION("contribution", "contribution.schema.json", "JSON Schema of contribution.json"),
    SESSION("session", "session.schema.json", "JSON Schema of a session in it"),
    SHOT("shot", "shot.schema.json", "JSON Schema of a test shot"),
    TRIALS("trials", "trials.csvw.json", "CSVW description of trials.csv"),
    CLIMATE("climate", "climate.csvw.json", "CSVW description of climate.csv"),
    CONTACTS("contacts", "contacts.csvw.json", "CSVW description of contacts.csv"),
    KINDS("kinds", "kinds.json", "what each kind of trial states"),
    TABLES("tables", "equipment/tables.json", "published sizes of tables and balls");

    private final String title;
    private final String path;
    private final String description;

    FormatFile(String title, String path, String description) {
        this.title = title;
        this.path = path;
        this.description = description;
    }

    /** How it is asked for: {@code trials}. */
    public String title() {
        return title;
    }

    /** Its path under {@code schema/v1}. */
    public String path() {
        return path;
    }

    /** What it is, in words. */
    public String description() {
        return description;
    }

    /** Whether it is a JSON Schema. */
    public boolean isJsonSchema() {
        return path.endsWith(".schema.json");
    }

    /** Whether it describes a CSV file. */
    public boolean isCsvw() {
        return path.endsWith(".csvw.json");
    }

    /** Its text. */
    public String text() {
        try (InputStream in = FormatFile.class.getResourceAsStream("/schema/v1/" + path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(path, e);
        }
    }

    /** The file of this title or path. */
    public static Optional<FormatFile> of(String name) {
        return Arrays.stream(values())
                .filter(file -> file.title.equals(name) || file.path.equals(name))
                .findFirst();
    }

    /** All titles. */
    public static List<String> titles() {
        return Arrays.stream(values()).map(FormatFile::title).toList();
    }
}
