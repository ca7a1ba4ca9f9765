package org.tableweather.schema.folder;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;
import org.tableweather.schema.table.ClimateColumn;
import org.tableweather.schema.table.Column;
import org.tableweather.schema.table.ContactColumn;
import org.tableweather.schema.table.TrialColumn;

/** Sound files made unsound, and files made up within the bounds of their columns, from a seed. */
final class Mutations {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final byte[] NASTY =
            ",;\t\"'\n\r\\/{}[]:-+.eE0\u00009NaN%\u00C3\u00FF".getBytes(StandardCharsets.ISO_8859_1);
    private static final List<String> WORDS = List.of(
            "",
            "0",
            "-0",
            "1",
            "45",
            "90",
            "-90",
            "360",
            "1e308",
            "-4.9e-324",
            "99999999999999999999",
            "0.1",
            "\"1,5\"",
            "NaN",
            "NA",
            "-",
            "=1+1",
            "s2",
            "2",
            "ramp",
            "rail",
            "rest",
            "far",
            "speed",
            "hop",
            "kick-6-rail",
            "break-15",
            "cam1",
            "bed",
            "yes",
            "perhaps",
            "\uFFFD",
            "\u0000",
            "2026-02-30T00:00:00Z",
            "2026-01-12T18:05:00+23:59",
            "9999-12-31T23:59:59Z",
            "0000-01-01T00:00:00Z",
            "-999999999-01-01T00:00:00Z",
            "\"");

    private final Random random;

    Mutations(long seed) {
        this.random = new Random(seed);
    }

    int choice(int bound) {
        return random.nextInt(bound);
    }

    /** Bytes changed, cut, doubled or put in. */
    byte[] bytes(byte[] original) {
        byte[] result = original.clone();
        for (int change = 1 + random.nextInt(3); change > 0 && result.length > 0; change--) {
            int at = random.nextInt(result.length);
            int length = Math.min(random.nextInt(40), result.length - at);
            switch (random.nextInt(5)) {
                case 0 -> result[at] = NASTY[random.nextInt(NASTY.length)];
                case 1 -> result[at] ^= (byte) (1 << random.nextInt(8));
                case 2 -> result = Arrays.copyOf(result, at);
                case 3 ->
                    result = joined(Arrays.copyOf(result, at), Arrays.copyOfRange(result, at + length, result.length));
                default ->
                    result = joined(Arrays.copyOf(result, at + length), Arrays.copyOfRange(result, at, result.length));
            }
        }
        return result;
    }

    private static byte[] joined(byte[] one, byte[] other) {
        byte[] both = Arrays.copyOf(one, one.length + other.length);
        System.arraycopy(other, 0, both, one.length, other.length);
        return both;
    }

    /** Cells replaced, rows and columns left out, doubled or exchanged. */
    String cells(String csv) {
        List<String> rows = new ArrayList<>(List.of(csv.split("\n", -1)));
        for (int change = 1 + random.nextInt(4); change > 0; change--) {
            int at = random.nextInt(rows.size());
            switch (random.nextInt(8)) {
                case 0 -> rows.add(at, rows.get(random.nextInt(rows.size())));
                case 1 -> rows.set(at, rows.get(random.nextInt(rows.size())));
                case 2 -> rows.set(0, cell(rows.get(0), header()));
                default -> rows.set(at, cell(rows.get(at), word()));
            }
        }
        return String.join("\n", rows);
    }

    private String cell(String row, String by) {
        String[] cells = row.split(",", -1);
        cells[random.nextInt(cells.length)] = by;
        return String.join(",", cells);
    }

    private String word() {
        return random.nextInt(3) == 0 ? Double.toString(random.nextGaussian() * 50) : WORDS.get(choice(WORDS.size()));
    }

    private String header() {
        List<Column> columns = new ArrayList<>(TrialColumn.all());
        columns.addAll(ClimateColumn.all());
        columns.addAll(ContactColumn.all());
        return columns.get(choice(columns.size())).header();
    }

    /** Values of the document replaced, left out or moved. */
    String json(String document) throws IOException {
        JsonNode root = JSON.readTree(document);
        for (int change = 1 + random.nextInt(3); change > 0; change--) {
            List<JsonNode> inner = new ArrayList<>();
            collect(root, inner);
            JsonNode parent = inner.get(choice(inner.size()));
            if (parent instanceof ObjectNode object && object.size() > 0) {
                List<String> names = new ArrayList<>();
                object.fieldNames().forEachRemaining(names::add);
                change(object, names.get(choice(names.size())), inner);
            } else if (parent instanceof ArrayNode array && array.size() > 0) {
                array.set(choice(array.size()), value(inner));
            }
        }
        return JSON.writeValueAsString(root);
    }

    private void change(ObjectNode object, String name, List<JsonNode> inner) {
        if (random.nextInt(6) == 0) {
            object.remove(name);
        } else {
            object.set(name, value(inner));
        }
    }

    private static void collect(JsonNode node, List<JsonNode> inner) {
        if (node.isContainerNode()) {
            inner.add(node);
            node.forEach(child -> collect(child, inner));
        }
    }

    private JsonNode value(List<JsonNode> inner) {
        JsonNodeFactory nodes = JsonNodeFactory.instance;
        return switch (random.nextInt(8)) {
            case 0 -> nodes.nullNode();
            case 1 -> nodes.booleanNode(random.nextBoolean());
            case 2 -> nodes.numberNode(random.nextInt(200) - 100);
            case 3 -> nodes.numberNode(random.nextGaussian() * 1000);
            case 4 -> nodes.numberNode(1e300);
            case 5 -> inner.get(choice(inner.size())).deepCopy();
            default -> nodes.textNode(WORDS.get(choice(WORDS.size())));
        };
    }

    /** Trials of every kind with any value that their columns allow. */
    String trials() {
        List<TrialColumn> columns = TrialColumn.all();
        StringBuilder csv = new StringBuilder(header(columns));
        for (int trial = 1; trial <= 10; trial++) {
            Kind kind = Kind.values()[choice(Kind.values().length)];
            List<Shot> shots = ShotCatalogue.all();
            for (TrialColumn column : columns) {
                csv.append(column == columns.get(0) ? "" : ",")
                        .append(
                                switch (column) {
                                    case SESSION -> "s" + (1 + choice(2));
                                    case TRIAL -> Integer.toString(trial);
                                    case KIND -> kind.schemaName();
                                    case SHOT -> shots.get(choice(shots.size())).id();
                                    case MADE -> random.nextBoolean() ? "yes" : "";
                                    case STARTED_AT ->
                                        "2026-01-1%dT18:%02d:00+01:00".formatted(2 + choice(2), trial * 5);
                                    default -> column.isNumber() ? number(column, column.isCount()) : "";
                                });
            }
            csv.append('\n');
        }
        return csv.toString();
    }

    /** Paths of any shape. */
    String contacts() {
        List<ContactColumn> columns = ContactColumn.all();
        StringBuilder csv = new StringBuilder(header(columns));
        for (int trial = 1; trial <= 10; trial++) {
            int points = 1 + choice(6);
            for (int seq = 1; seq <= points; seq++) {
                Contact.Point point = Contact.Point.values()[choice(4)];
                for (ContactColumn column : columns) {
                    csv.append(column == columns.get(0) ? "" : ",").append(contact(column, trial, seq, point));
                }
                csv.append('\n');
            }
        }
        return csv.toString();
    }

    private String contact(ContactColumn column, int trial, int seq, Contact.Point point) {
        Rail rail = Rail.values()[choice(4)];
        return switch (column) {
            case SESSION -> "s" + (1 + trial % 2);
            case TRIAL -> Integer.toString(trial);
            case SEQ -> Integer.toString(seq);
            case POINT -> point.name().toLowerCase(java.util.Locale.ROOT);
            case RAIL -> point == Contact.Point.RAIL ? rail.schemaName() : "";
            case X_DIA -> rail == Rail.HEAD ? "0.09" : rail == Rail.FOOT ? "7.91" : number(column, false);
            case Y_DIA -> rail == Rail.NEAR ? "0.09" : rail == Rail.FAR ? "3.91" : number(column, false);
            case T_S -> random.nextInt(4) == 0 ? "" : Double.toString(seq * random.nextDouble());
            case X_PX, Y_PX -> number(column, false);
            case CAMERA -> "cam1";
            default -> "";
        };
    }

    private String header(List<? extends Column> columns) {
        return String.join(",", columns.stream().map(Column::header).toList()) + "\n";
    }

    /** Any number of a column, its ends more often; empty half of the time; units beside the standard one stay empty. */
    private String number(Column column, boolean whole) {
        boolean other = column instanceof TrialColumn trial && trial.standard() != trial;
        if (other || random.nextInt(2) == 0) {
            return "";
        }
        double value =
                switch (random.nextInt(8)) {
                    case 0 -> column.min();
                    case 1 -> column.max();
                    case 2 -> 0;
                    default -> column.min() + random.nextDouble() * (column.max() - column.min());
                };
        return whole ? Integer.toString((int) value) : Double.toString(value);
    }
}
