package org.tableweather.analyzers.standard.statistics.golden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Objects;
import java.util.Properties;

/** Expected values with their source, from a file of {@code golden/}. */
public final class GoldenFile {

    private final String name;
    private final Properties values = new Properties();

    private GoldenFile(String name) {
        this.name = name;
        try (Reader reader = new InputStreamReader(
                Objects.requireNonNull(GoldenFile.class.getResourceAsStream("/golden/" + name), name),
                StandardCharsets.UTF_8)) {
            values.load(reader);
        } catch (IOException e) {
            throw new UncheckedIOException(name, e);
        }
    }

    /** Reads a file, such as {@code meta/dat-bcg.properties}. */
    public static GoldenFile read(String name) {
        return new GoldenFile(name);
    }

    /** One text. */
    public String text(String key) {
        return Objects.requireNonNull(values.getProperty(key), () -> key + " is missing in " + name);
    }

    /** One number. */
    public double number(String key) {
        return Double.parseDouble(text(key));
    }

    /** Words, parted by blanks. */
    public String[] words(String key) {
        return text(key).trim().split("\\s+");
    }

    /** Numbers, parted by blanks. */
    public double[] numbers(String key) {
        return Arrays.stream(words(key)).mapToDouble(Double::parseDouble).toArray();
    }

    /** Asserts a relative difference of at most {@code tolerance}. */
    public static void assertNear(double actual, double expected, double tolerance) {
        assertThat(actual).isCloseTo(expected, within(tolerance * Math.max(Math.abs(expected), 1e-30)));
    }
}
