package org.tableweather.server.logbook;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.tableweather.schema.equipment.PublishedTables;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;
import org.tableweather.schema.table.ClimateColumn;
import org.tableweather.schema.table.Column;
import org.tableweather.schema.table.KindOutcomes;
import org.tableweather.schema.table.TrialColumn;

/**
 * What the page knows of the schema: sizes of tables, shots, and what is typed for each kind, with its bounds.
 *
 * @param tables published sizes
 * @param shots of the catalogue
 * @param kinds the columns that may be typed for each kind
 * @param climate bounds of what the hygrometer shows
 */
record Definitions(
        List<TableEntry> tables,
        List<ShotEntry> shots,
        Map<String, List<TypedColumn>> kinds,
        List<TypedColumn> climate) {
    private static final String MADE = "made";

    Definitions {
        tables = List.copyOf(tables);
        shots = List.copyOf(shots);
        climate = List.copyOf(climate);
    }

    /**
     * A published size.
     *
     * @param id as the schema names it
     * @param name in words
     * @param lengthMm nose to nose along
     * @param widthMm nose to nose across
     * @param ballMm diameter of the ball
     * @param cornerMm mouth of a corner pocket; 0 without pockets
     * @param sideMm mouth of a side pocket; 0 without pockets
     */
    record TableEntry(
            String id, String name, double lengthMm, double widthMm, double ballMm, double cornerMm, double sideMm) {}

    /**
     * A shot.
     *
     * @param id as trials cite it
     * @param title in words
     * @param kind of its trials
     * @param delivery ramp or cue
     * @param start where the ball starts
     * @param target where it should come down
     * @param rails in order
     * @param targetRail where it should come down
     * @param howToLog what to write down
     */
    record ShotEntry(
            String id,
            String title,
            String kind,
            Optional<String> delivery,
            Optional<Shot.Position> start,
            Optional<Shot.Position> target,
            List<String> rails,
            Optional<String> targetRail,
            String howToLog) {

        static ShotEntry of(Shot shot) {
            return new ShotEntry(
                    shot.id(),
                    shot.title().orElse(""),
                    shot.kind().schemaName(),
                    shot.delivery(),
                    shot.start(),
                    shot.target(),
                    shot.rails().stream().map(Rail::schemaName).toList(),
                    shot.targetRail().map(Rail::schemaName),
                    shot.howToLog().orElse(""));
        }
    }

    /**
     * A number that may be typed.
     *
     * @param name of the column
     * @param words what it is
     * @param minimum least that is taken
     * @param maximum most that is taken
     * @param whole whether it is a count
     */
    record TypedColumn(String name, String words, double minimum, double maximum, boolean whole) {

        static TypedColumn of(Column column) {
            String unit = column.header().substring(column.header().lastIndexOf('_') + 1);
            boolean count = column.unit().equals("1");
            String quantity = count
                    ? column.header()
                    : column.header().substring(0, column.header().length() - unit.length() - 1);
            return new TypedColumn(
                    column.header(),
                    (Character.toUpperCase(quantity.charAt(0)) + quantity.substring(1)).replace('_', ' ')
                            + (count ? "" : ", " + unitWords(unit)),
                    column.min(),
                    column.max(),
                    count && !column.header().endsWith("lengths"));
        }

        private static String unitWords(String unit) {
            return switch (unit) {
                case "deg" -> "°";
                case "dia" -> "diamonds";
                case "in" -> "inches";
                case "c" -> "°C";
                case "f" -> "°F";
                case "pct" -> "%";
                case "lengths" -> "table lengths";
                default -> unit;
            };
        }
    }

    static Definitions ofSchema() {
        return new Definitions(
                PublishedTables.all().stream()
                        .map(table -> new TableEntry(
                                table.id(),
                                table.name(),
                                1000 * table.size().playingLengthM(),
                                1000 * table.size().playingWidthM(),
                                1000 * table.size().ballDiameterM(),
                                1000 * table.pockets().cornerM(),
                                1000 * table.pockets().sideM()))
                        .toList(),
                ShotCatalogue.all().stream().map(ShotEntry::of).toList(),
                Arrays.stream(Kind.values()).collect(Collectors.toMap(Kind::schemaName, Definitions::typed)),
                Stream.of("temp_c", "temp_f", "rh_pct")
                        .map(name -> Column.of(ClimateColumn.all(), name).orElseThrow())
                        .map(TypedColumn::of)
                        .toList());
    }

    private static List<TypedColumn> typed(Kind kind) {
        return KindOutcomes.of(kind).needsOneOf().stream()
                .map(TrialColumn::header)
                .filter(name -> !name.equals(MADE))
                .map(name -> TypedColumn.of(Column.of(TrialColumn.all(), name).orElseThrow()))
                .toList();
    }
}
