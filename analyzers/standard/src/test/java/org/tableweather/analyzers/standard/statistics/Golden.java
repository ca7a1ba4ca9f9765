package org.tableweather.analyzers.standard.statistics;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;

/** Golden values and data sets; {@code golden/README.md} names the source of each. */
final class Golden {

    private Golden() {}

    static JsonNode json(String name) {
        try (InputStream in = open(name)) {
            return new ObjectMapper().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Rows of a CSV file without quotes, by column name. */
    static List<Map<String, String>> rows(String name) {
        try (InputStream in = open(name)) {
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            String[] names = lines.get(0).split(",");
            List<Map<String, String>> rows = new ArrayList<>();
            for (String line : lines.subList(1, lines.size())) {
                String[] cells = line.split(",");
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < names.length; i++) {
                    row.put(names[i], cells[i]);
                }
                rows.add(row);
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Groups rows into rooms and sessions, in the order of first appearance. */
    static List<RoomSessions> rooms(
            String data,
            Function<Map<String, String>, String> room,
            Function<Map<String, String>, String> session,
            Function<Map<String, String>, double[]> columns) {
        Map<String, Map<String, MomentsBuilder>> groups = new LinkedHashMap<>();
        for (Map<String, String> row : rows(data)) {
            double[] numbers = columns.apply(row);
            groups.computeIfAbsent(room.apply(row), key -> new LinkedHashMap<>())
                    .computeIfAbsent(session.apply(row), key -> new MomentsBuilder(numbers.length))
                    .add(numbers);
        }
        return groups.entrySet().stream()
                .map(entry -> new RoomSessions(
                        entry.getKey(),
                        entry.getValue().values().stream()
                                .map(MomentsBuilder::build)
                                .toList()))
                .toList();
    }

    static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    static double[] numbers(JsonNode array) {
        double[] numbers = new double[array.size()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = array.get(i).asDouble();
        }
        return numbers;
    }

    static double relative(double actual, double expected) {
        return Math.abs(actual - expected) / Math.abs(expected);
    }

    private static InputStream open(String name) {
        return Objects.requireNonNull(Golden.class.getResourceAsStream("/golden/" + name), name);
    }
}
