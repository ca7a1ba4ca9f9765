package org.tableweather.analyzers.spi;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.annotation.Annotation;
import java.lang.reflect.AnnotatedElement;
import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.Member;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Type;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The public surface that plugins are compiled against. A change needs an edited file here and a line in CHANGES.md; what is
 * taken away or renamed breaks jars that are out there.
 */
class FrozenSpiTest {
    private static final Path FROZEN = Path.of("src/test/resources/frozen/spi-1.0.txt");

    @Test
    void isAsCommitted() throws Exception {
        String surface = surface();
        Files.createDirectories(Path.of("target"));
        Files.writeString(Path.of("target/spi-1.0.txt"), surface);

        assertThat(FROZEN)
                .as("the SPI changed: if that is meant, take over target/spi-1.0.txt and say so in CHANGES.md")
                .hasContent(surface);
    }

    private static String surface() throws Exception {
        StringBuilder text = new StringBuilder();
        for (Class<?> type : publicTypes()) {
            text.append(declared(type)).append('\n');
            members(type)
                    .sorted()
                    .forEach(member -> text.append("  ").append(member).append('\n'));
        }
        return text.toString()
                .replace(Analyzer.class.getPackageName() + ".", "")
                .replaceAll("\\bjava\\.(lang|util)\\.(?=[A-Z])", "");
    }

    private static List<Class<?>> publicTypes() throws IOException, URISyntaxException, ClassNotFoundException {
        Path place = Path.of(Analyzer.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        List<Class<?>> types = new ArrayList<>();
        for (String name : namesIn(place)) {
            Class<?> type = Class.forName(Analyzer.class.getPackageName() + "." + name);
            if (Modifier.isPublic(type.getModifiers())) {
                types.add(type);
            }
        }
        return types;
    }

    /** From a folder of classes, or from the jar when that is what is tested. */
    private static List<String> namesIn(Path place) throws IOException {
        String inside = Analyzer.class.getPackageName().replace('.', '/');
        if (Files.isDirectory(place)) {
            return names(place.resolve(inside));
        }
        try (FileSystem jar = FileSystems.newFileSystem(place)) {
            return names(jar.getPath(inside));
        }
    }

    private static List<String> names(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".class") && !name.startsWith("package-info"))
                    .map(name -> name.substring(0, name.length() - ".class".length()))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String declared(Class<?> type) {
        String kind = type.isRecord() ? "record" : type.isEnum() ? "enum" : type.isInterface() ? "interface" : "class";
        return annotations(type) + (type.isSealed() ? "sealed " : "") + kind + " "
                + type.toGenericString().replaceFirst(".* ", "")
                + Arrays.stream(type.getGenericInterfaces())
                        .map(Type::getTypeName)
                        .map(name -> " : " + name)
                        .collect(Collectors.joining())
                + (type.isSealed()
                        ? Arrays.stream(type.getPermittedSubclasses())
                                .map(Class::getName)
                                .collect(Collectors.joining(", ", " permits ", ""))
                        : "");
    }

    private static Stream<String> members(Class<?> type) {
        Stream<String> constructors = Arrays.stream(type.getDeclaredConstructors())
                .filter(FrozenSpiTest::isOpen)
                .map(Constructor::toGenericString);
        Stream<String> methods = Arrays.stream(type.getDeclaredMethods())
                .filter(FrozenSpiTest::isOpen)
                .filter(method -> !isOfEveryRecord(method))
                .map(method -> annotations(method) + method.toGenericString());
        Stream<String> fields = Arrays.stream(type.getDeclaredFields())
                .filter(FrozenSpiTest::isOpen)
                .map(Field::toGenericString);
        return Stream.of(constructors, methods, fields).flatMap(each -> each);
    }

    private static boolean isOpen(Member member) {
        return (Modifier.isPublic(member.getModifiers()) || Modifier.isProtected(member.getModifiers()))
                && !member.isSynthetic();
    }

    private static boolean isOfEveryRecord(Method method) {
        return method.getDeclaringClass().isRecord()
                && List.of("equals", "hashCode", "toString").contains(method.getName());
    }

    /** Annotations shape the JSON of what a plugin returns. */
    private static String annotations(AnnotatedElement element) {
        return Arrays.stream(element.getDeclaredAnnotations())
                .map(annotation -> "@" + annotation.annotationType().getSimpleName() + valueOf(annotation) + " ")
                .sorted()
                .collect(Collectors.joining());
    }

    private static String valueOf(Annotation annotation) {
        try {
            Object value = annotation.annotationType().getMethod("value").invoke(annotation);
            return "(" + (value instanceof String[] names ? String.join(", ", names) : value) + ")";
        } catch (ReflectiveOperationException e) {
            return "";
        }
    }
}
