package org.tableweather.schema.reference;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The keys of sources that texts of this repository cite: source tags of Java, {@code source.key} lines of golden files. */
public final class SourceKeys {
    private static final Pattern TAG = Pattern.compile("@source\\s+([\\p{L}\\d]+)");
    private static final Pattern GOLDEN = Pattern.compile("(?m)^#?\\s*source\\.key = (.+)$");
    private static final Set<String> LEFT_OUT = Set.of("target", ".git", ".mvn", "node_modules");
    private static final String BIBLIOGRAPHY = "references.bib";

    private SourceKeys() {}

    /** The folder that holds the Maven wrapper, from wherever a module's tests run. */
    public static Path repository() {
        Path root = Path.of("").toAbsolutePath();
        while (root.getParent() != null && !Files.exists(root.resolve("mvnw"))) {
            root = root.getParent();
        }
        return root;
    }

    /** Every key that a source tag or a golden file names. */
    public static Set<String> cited(Path root) throws IOException {
        Set<String> keys = new TreeSet<>();
        for (Path file : texts(root)) {
            String text = Files.readString(file);
            if (file.toString().endsWith(".java")) {
                TAG.matcher(text).results().map(match -> match.group(1)).forEach(keys::add);
            } else {
                GOLDEN.matcher(text).results().forEach(match -> addAll(keys, match));
            }
        }
        return keys;
    }

    private static void addAll(Set<String> keys, MatchResult line) {
        if (!line.group(1).endsWith("see the column")) {
            keys.addAll(List.of(line.group(1).strip().split(",\\s*")));
        }
    }

    /** Those of some words that stand anywhere in code, data or tests; the bibliography aside. */
    public static Set<String> mentioned(Path root, Set<String> words) throws IOException {
        Pattern any = Pattern.compile("[\\p{L}\\d]+");
        Set<String> found = new TreeSet<>();
        for (Path file : texts(root)) {
            Matcher word = any.matcher(Files.readString(file));
            while (word.find()) {
                if (words.contains(word.group())) {
                    found.add(word.group());
                }
            }
        }
        return found;
    }

    private static List<Path> texts(Path root) throws IOException {
        List<Path> files = new ArrayList<>();
        Files.walkFileTree(root, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                return LEFT_OUT.contains(folder.getFileName().toString())
                        ? FileVisitResult.SKIP_SUBTREE
                        : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                String name = file.getFileName().toString();
                if (name.matches(".*\\.(java|json|csv|properties)") && !name.equals(BIBLIOGRAPHY)) {
                    files.add(file);
                }
                return FileVisitResult.CONTINUE;
            }
        });
        return files;
    }
}
