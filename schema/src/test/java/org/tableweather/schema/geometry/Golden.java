package org.tableweather.schema.geometry;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Properties;

/** A file of golden values with their source. */
record Golden(Properties values) {

    static Golden read(String name) {
        Properties values = new Properties();
        try (InputStream in = Golden.class.getResourceAsStream("/golden/geometry/" + name + ".properties")) {
            values.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(name, e);
        }
        return new Golden(values);
    }

    double number(String key) {
        return Double.parseDouble(values.getProperty(key));
    }

    double[] row(String key) {
        return numbers(values.getProperty(key));
    }

    /** Rows separated by semicolons. */
    double[][] rows(String key) {
        return Arrays.stream(values.getProperty(key).split(";"))
                .map(Golden::numbers)
                .toArray(double[][]::new);
    }

    double tolerance() {
        return number("tolerance");
    }

    private static double[] numbers(String text) {
        return Arrays.stream(text.trim().split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }
}
