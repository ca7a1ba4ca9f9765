package org.tableweather.schema.equipment;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.PoolTable;

/**
 * Pool, carom and snooker tables of the published and the common sizes.
 *
 * @source WpaEquipment
 * @source UmbRules
 * @source WpbsaRules
 * @source CommonPractice
 */
public final class PublishedTables {

    private static final String RESOURCE = "/schema/v1/equipment/tables.json";
    private static final List<PublishedTable> ALL = load();

    private PublishedTables() {}

    /** All sizes. */
    public static List<PublishedTable> all() {
        return ALL;
    }

    /**
     * The size of this id.
     *
     * @param id {@code pool-9ft} ...
     */
    public static Optional<PublishedTable> byId(String id) {
        return ALL.stream().filter(table -> table.id().equals(id)).findFirst();
    }

    /**
     * The size whose playing length is nearest.
     *
     * @param playingLengthMm mm
     */
    public static PublishedTable nearest(double playingLengthMm) {
        return ALL.stream()
                .min(Comparator.comparingDouble(
                        table -> Math.abs(table.playingLengthMm().nominal().orElseThrow() - playingLengthMm)))
                .orElseThrow();
    }

    /**
     * The size that a contribution states, with the ball of the nearest published table when it states none.
     *
     * @param table the table
     * @param balls the session's ball set, when there is one
     * @return empty when the playing length is not stated, or the figures make no table
     */
    public static Optional<TableSize> sizeOf(PoolTable table, Optional<BallSet> balls) {
        if (table.playingLengthMm().isEmpty()) {
            return Optional.empty();
        }
        double usualBallM =
                nearest(table.playingLengthMm().getAsDouble()).size().ballDiameterM();
        return TableSize.stated(table, balls, usualBallM);
    }

    private static List<PublishedTable> load() {
        ObjectMapper json = new ObjectMapper().registerModule(new Jdk8Module());
        try (InputStream in = PublishedTables.class.getResourceAsStream(RESOURCE)) {
            return List.of(json.treeToValue(json.readTree(in).get("tables"), PublishedTable[].class));
        } catch (IOException e) {
            throw new UncheckedIOException(RESOURCE, e);
        }
    }
}
