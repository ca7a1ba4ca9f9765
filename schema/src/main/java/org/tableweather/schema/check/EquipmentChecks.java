package org.tableweather.schema.check;

import java.util.List;

/** Rules that compare equipment with published specifications, all known from second-hand copies: they warn. */
public final class EquipmentChecks {
    private static final CheckGroup GROUP = new CheckGroup("equipment");

    public static final Check TABLE_SIZE = GROUP.warn(
            "table-size",
            "The playing area is that of a published or common table.",
            "length nose to nose near 1981, 2337, 2540 (pool), 2840 (carom) or 3569 mm (snooker), width half of it",
            "measure nose to nose, not the slate or the frame, in mm",
            "WpaEquipment");

    public static final Check TABLE_RATIO = GROUP.warn(
            "table-ratio",
            "The playing area is twice as long as wide.",
            "length within 1 % of twice the width",
            "measure both nose to nose",
            "WpaEquipment");

    public static final Check BALL_SIZE = GROUP.warn(
            "ball-size",
            "The balls have the diameter of a published set.",
            "57.15 ± 0.13 mm (pool), 61 to 61.5 mm (carom), 52.5 ± 0.05 mm (snooker)",
            "measure with a calliper; worn balls are smaller, and worth telling",
            "WpaEquipment");

    public static final Check BALL_MASS = GROUP.warn(
            "ball-mass",
            "The balls have the mass of a published set.",
            "156 to 170 g for 57.15 mm, 205 to 220 g for 61 to 61.5 mm",
            "weigh one ball alone, in g",
            "WpaEquipment");

    public static final Check NOSE_HEIGHT = GROUP.warn(
            "nose-height",
            "The cushion's nose is at the published height.",
            "62.5 to 64.5 % of the ball's diameter on pool tables, 36 to 38 mm on carom tables",
            "measure from the slate under the cloth to the nose",
            "WpaEquipment");

    public static final Check FIBRES = GROUP.refuse(
            "cloth-fibres",
            "Shares of wool, nylon and polyester make up at most the whole cloth.",
            "sum at most 100.5 %",
            "take the shares from the cloth's label",
            "CommonPractice");

    public static final Check CLOTH_UNKNOWN = GROUP.note(
            "cloth-unknown",
            "A table says what cloth it has, and since when.",
            "cloth with woolPct and fittedOn",
            "add the cloth; wool takes up more moisture than nylon",
            "WpaEquipment");

    public static final Check FIBRES_SHORT = GROUP.note(
            "cloth-fibres-short",
            "The shares of wool, nylon and polyester make up the whole cloth.",
            "sum at least 95 %",
            "add the missing share from the cloth's label",
            "CommonPractice");

    public static final Check CLOTH_WEIGHT = GROUP.warn(
            "cloth-weight",
            "A cloth has the weight of a billiard cloth.",
            "300 to 900 g/m²",
            "give grams per square metre, not per running metre",
            "CommonPractice");

    public static final Check FITTED_LATER = GROUP.warn(
            "fitted-later",
            "Cloth and cushions were fitted before the session.",
            "fittedOn not after the day of the session",
            "correct the date; a new cloth makes a new table entry",
            "CommonPractice");

    public static final Check CLEANED_LATER = GROUP.warn(
            "cleaned-later",
            "The balls were cleaned before the session.",
            "cleanedOn not after the day of the session",
            "correct the date",
            "CommonPractice");

    private EquipmentChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
