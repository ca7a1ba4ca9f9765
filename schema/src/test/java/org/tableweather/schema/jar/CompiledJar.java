package org.tableweather.schema.jar;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** A jar as somebody outside makes it: sources compiled in a temporary folder against a few jars, and packed. */
public final class CompiledJar {
    private final String classPath;
    private final Map<String, byte[]> others = new LinkedHashMap<>();
    private final Map<String, String> sources = new LinkedHashMap<>();
    private String leftOut = "";

    private CompiledJar(String classPath) {
        this.classPath = classPath;
    }

    /** Compiled against the jars or folders that these classes come from, and nothing else. */
    public static CompiledJar against(Class<?>... types) {
        return new CompiledJar(
                Arrays.stream(types).map(CompiledJar::placeOf).collect(Collectors.joining(File.pathSeparator)));
    }

    /** With a class of this full name. */
    public CompiledJar source(String name, String text) {
        sources.put(name.replace('.', '/') + ".java", text);
        return this;
    }

    /** With every source of a module: its {@code java} and {@code resources}. */
    public CompiledJar module(Path main) throws IOException {
        for (Path source : filesBelow(main.resolve("java"))) {
            sources.put(named(main.resolve("java"), source), Files.readString(source));
        }
        for (Path resource : filesBelow(main.resolve("resources"))) {
            others.put(named(main.resolve("resources"), resource), Files.readAllBytes(resource));
        }
        return this;
    }

    /** With an entry that is no class. */
    public CompiledJar entry(String name, String text) {
        others.put(name, text.getBytes(StandardCharsets.UTF_8));
        return this;
    }

    /** Names a provider of a service. */
    public CompiledJar service(Class<?> service, String provider) {
        return entry("META-INF/services/" + service.getName(), provider + "\n");
    }

    /** Without a class that it needs. */
    public CompiledJar without(String name) {
        leftOut = name.replace('.', '/') + ".class";
        return this;
    }

    /** Compiles and packs. */
    public Path writeTo(Path jar) throws IOException {
        Path work = Files.createTempDirectory(jar.toAbsolutePath().getParent(), "compiled");
        compile(work);
        try (OutputStream file = Files.newOutputStream(jar);
                JarOutputStream out = new JarOutputStream(file)) {
            for (Map.Entry<String, byte[]> other : others.entrySet()) {
                put(out, other.getKey(), other.getValue());
            }
            for (Path compiled : filesBelow(work.resolve("classes"))) {
                String name = named(work.resolve("classes"), compiled);
                if (!name.equals(leftOut)) {
                    put(out, name, Files.readAllBytes(compiled));
                }
            }
        }
        return jar;
    }

    private void compile(Path work) throws IOException {
        Files.createDirectories(work.resolve("classes"));
        for (Map.Entry<String, String> source : sources.entrySet()) {
            Path file = work.resolve("java").resolve(source.getKey());
            Files.createDirectories(file.getParent());
            Files.writeString(file, source.getValue());
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter said = new StringWriter();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
            List<String> options = List.of(
                    "-proc:none",
                    "-parameters",
                    "--release",
                    "17",
                    "-cp",
                    classPath,
                    "-d",
                    work.resolve("classes").toString());
            boolean sound = sources.isEmpty()
                    || compiler.getTask(
                                    said,
                                    files,
                                    null,
                                    options,
                                    null,
                                    files.getJavaFileObjectsFromPaths(filesBelow(work.resolve("java"))))
                            .call();
            if (!sound) {
                throw new IllegalStateException("the sources do not compile: " + said);
            }
        }
    }

    private static void put(JarOutputStream out, String name, byte[] bytes) throws IOException {
        out.putNextEntry(new JarEntry(name));
        out.write(bytes);
        out.closeEntry();
    }

    private static List<Path> filesBelow(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).sorted().toList();
        }
    }

    private static String named(Path folder, Path file) {
        return folder.relativize(file).toString().replace(File.separatorChar, '/');
    }

    private static String placeOf(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException("a class path is made of files", e);
        }
    }
}
