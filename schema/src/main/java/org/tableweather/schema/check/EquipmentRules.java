package org.tableweather.schema.check;

import java.util.List;
import java.util.OptionalDouble;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Cloth;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.PoolTable;

/** Judges tables, cloths, cushions and balls by published specifications. */
final class EquipmentRules {
    private static final double POOL_BALL_MM = 57.15;

    /**
     * Playing lengths with their tolerance, mm: pool 7, 8, 9 ft, carom, snooker. The tolerance is the specification's;
     * 7 ft has none, and is met in two sizes.
     *
     * @source WpaEquipment
     * @source UmbRules
     * @source WpbsaRules
     */
    private static final double[][] LENGTHS = {
        {1930.4, 3.175}, {1981.2, 3.175}, {2133.6, 3.175}, {2336.8, 3.175}, {2540, 3.175}, {2840, 5}, {3569, 13}
    };

    private EquipmentRules() {}

    static void check(Contribution contribution, Findings findings) {
        List<PoolTable> tables = contribution.tables();
        for (int i = 0; i < tables.size(); i++) {
            table(tables.get(i), "/tables/" + i, findings);
        }
        List<BallSet> sets = contribution.ballSets();
        for (int i = 0; i < sets.size(); i++) {
            balls(sets.get(i), "/ballSets/" + i, findings);
        }
    }

    private static void table(PoolTable table, String pointer, Findings findings) {
        size(table, pointer, findings);
        table.cloth().ifPresent(cloth -> fibres(cloth, pointer + "/cloth", findings));
        if (table.cloth().isEmpty()
                || table.cloth().get().woolPct().isEmpty()
                || table.cloth().get().fittedOn().isEmpty()) {
            findings.add(
                    EquipmentChecks.CLOTH_UNKNOWN,
                    Place.json(pointer + "/cloth"),
                    null,
                    () -> "what the cloth is made of, or since when it lies, is not said");
        }
        table.cushion().ifPresent(cushion -> nose(table, cushion.noseHeightMm(), pointer, findings));
    }

    private static void size(PoolTable table, String pointer, Findings findings) {
        if (table.playingLengthMm().isEmpty()) {
            return;
        }
        double length = table.playingLengthMm().getAsDouble();
        boolean published = false;
        for (double[] size : LENGTHS) {
            published |= Math.abs(length - size[0]) <= size[1];
        }
        if (!published) {
            findings.add(
                    EquipmentChecks.TABLE_SIZE,
                    Place.json(pointer + "/playingLengthMm"),
                    Double.toString(length),
                    () -> "no published playing length is within its tolerance of " + length + " mm");
        }
        table.playingWidthMm().ifPresent(width -> {
            if (Math.abs(length / (2 * width) - 1) > 0.01) {
                findings.add(
                        EquipmentChecks.TABLE_RATIO,
                        Place.json(pointer + "/playingWidthMm"),
                        Double.toString(width),
                        () -> "the length is " + length / width + " times the width");
            }
        });
    }

    private static void fibres(Cloth cloth, String pointer, Findings findings) {
        double sum = cloth.woolPct().orElse(0)
                + cloth.nylonPct().orElse(0)
                + cloth.polyesterPct().orElse(0);
        if (sum > 0 && sum < 95) {
            findings.add(
                    EquipmentChecks.FIBRES_SHORT,
                    Place.json(pointer),
                    Double.toString(sum),
                    () -> "the shares sum to " + sum + " %");
        }
        if (cloth.weightGsm().isPresent()
                && (cloth.weightGsm().getAsDouble() < 300 || cloth.weightGsm().getAsDouble() > 900)) {
            double weight = cloth.weightGsm().getAsDouble();
            findings.add(
                    EquipmentChecks.CLOTH_WEIGHT,
                    Place.json(pointer + "/weightGsm"),
                    Double.toString(weight),
                    () -> weight + " g/m² is the weight of no billiard cloth");
        }
        if (sum > 100.5) {
            findings.add(
                    EquipmentChecks.FIBRES,
                    Place.json(pointer),
                    Double.toString(sum),
                    () -> "the shares sum to " + sum + " %");
        }
    }

    private static void nose(PoolTable table, OptionalDouble height, String pointer, Findings findings) {
        if (height.isEmpty()
                || table.playingLengthMm().isEmpty()
                || table.playingLengthMm().getAsDouble() > 3000) {
            return;
        }
        boolean carom = table.playingLengthMm().getAsDouble() > 2700;
        double low = carom ? 36 : 0.625 * POOL_BALL_MM;
        double high = carom ? 38 : 0.645 * POOL_BALL_MM;
        double value = height.getAsDouble();
        if (value < low - 0.05 || value > high + 0.05) {
            findings.add(
                    EquipmentChecks.NOSE_HEIGHT,
                    Place.json(pointer + "/cushion/noseHeightMm"),
                    Double.toString(value),
                    () -> value + " mm is not between " + Math.round(low * 100) / 100.0 + " and "
                            + Math.round(high * 100) / 100.0 + " mm");
        }
    }

    private static void balls(BallSet balls, String pointer, Findings findings) {
        if (balls.diameterMm().isEmpty()) {
            return;
        }
        double diameter = balls.diameterMm().getAsDouble();
        boolean pool = Math.abs(diameter - POOL_BALL_MM) <= 0.13;
        boolean carom = diameter >= 61 && diameter <= 61.5;
        if (!pool && !carom && Math.abs(diameter - 52.5) > 0.05) {
            findings.add(
                    EquipmentChecks.BALL_SIZE,
                    Place.json(pointer + "/diameterMm"),
                    Double.toString(diameter),
                    () -> diameter + " mm is the diameter of no published set");
        }
        balls.massG().ifPresent(mass -> {
            if (pool && (mass < 155.9 || mass > 170.1) || carom && (mass < 205 || mass > 220)) {
                findings.add(
                        EquipmentChecks.BALL_MASS,
                        Place.json(pointer + "/massG"),
                        Double.toString(mass),
                        () -> mass + " g is the mass of no published ball of this diameter");
            }
        });
    }
}
