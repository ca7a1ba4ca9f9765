package org.tableweather.schema.check;

import java.util.List;
import org.tableweather.schema.table.Column;

/** Rules of units and of the ranges that a value can have at all. */
public final class UnitChecks {
    private static final CheckGroup GROUP = new CheckGroup("units");

    public static final Check UNKNOWN_UNIT = GROUP.refuse(
            "unknown-unit",
            "A column of a known quantity names a unit that is read.",
            "the unit at the end of the column's name",
            "convert the values, and name the column as said",
            "UCUM");

    public static final Check DISAGREE = GROUP.refuse(
            "disagree",
            "The same quantity written in two units is the same.",
            "0.1 K; 0.05 m/s; 0.5 mm",
            "correct one of the two, or leave it out",
            "NistSp811");

    public static final Check HUMIDITY = GROUP.refuse(
            "humidity-range",
            "Relative humidity lies between dry and saturated air.",
            "0 to 100 %",
            "correct the reading; 0.45 means 45 %",
            "WMO8");

    public static final Check TEMPERATURE = GROUP.refuse(
            "temperature-range",
            "The temperature is one that a room can have.",
            "-20 to 60 °C (-4 to 140 °F)",
            "correct the reading, or put °F into temp_f",
            "CommonPractice");

    public static final Check TEMPERATURE_UNUSUAL = GROUP.warn(
            "temperature-unusual",
            "The temperature is one in which people play.",
            "5 to 45 °C",
            "check that the reading is of the room, and its unit",
            "CommonPractice");

    public static final Check ANGLE = GROUP.refuse(
            "angle-range",
            "Angles are degrees from the normal of the rail, or from the line named.",
            "approach 0 to 90°, rebound -90 to 90°, deflection -45 to 45°",
            "measure from the line straight out of the rail, in degrees",
            "CommonPractice");

    public static final Check SPEED = GROUP.refuse(
            "speed-range",
            "Speeds are those of a billiard ball.",
            "0 to 20 m/s",
            "correct the value, or its unit",
            "CommonPractice");

    public static final Check LANDING_OFFSET = GROUP.refuse(
            "landing-offset-range",
            "The ball lands on the rail.",
            "-8 to 8 diamonds along a long rail, -4 to 4 along a short one",
            "give the signed distance from the target in diamonds",
            "WpaEquipment");

    public static final Check SPIN = GROUP.refuse(
            "spin-range",
            "Spins and tip offsets are those of a billiard ball.",
            "side spin ±100 rev/s, roll ratio ±5, tip offset within the ball's radius",
            "correct the value, or its unit",
            "CommonPractice");

    public static final Check LENGTH = GROUP.refuse(
            "length-range",
            "Distances are those of a table.",
            "the range named",
            "correct the value, or its unit",
            "CommonPractice");

    public static final Check COUNT = GROUP.refuse(
            "count-range",
            "Counts are whole numbers of a possible size.",
            "the range named",
            "correct the count",
            "CommonPractice");

    public static final Check PRESSURE = GROUP.refuse(
            "pressure-range",
            "The pressure is the station's, in hPa.",
            "500 to 1100 hPa",
            "correct the reading, or its unit",
            "WMO8");

    private UnitChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }

    /**
     * The check of a numeric column's range.
     *
     * @param column a column with a unit
     */
    public static Check range(Column column) {
        String header = column.header();
        if (header.startsWith("rh_")) {
            return HUMIDITY;
        }
        if (header.startsWith("temp_")) {
            return TEMPERATURE;
        }
        if (header.equals("landing_offset_dia")) {
            return LANDING_OFFSET;
        }
        if (header.startsWith("pressure_")) {
            return PRESSURE;
        }
        if (header.startsWith("side_spin") || header.equals("roll_ratio") || header.startsWith("tip_offset")) {
            return SPIN;
        }
        if (header.equals("rails") || header.equals("balls_made") || header.equals("seq")) {
            return COUNT;
        }
        return header.endsWith("_deg") ? ANGLE : header.contains("_speed_") ? SPEED : LENGTH;
    }

    /**
     * The bound of a numeric column in words.
     *
     * @param column a column with a unit
     */
    public static String bound(Column column) {
        String unit = column.unit().equals("1") ? "" : " " + column.unit();
        return plain(column.min()) + " to " + plain(column.max()) + unit;
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
