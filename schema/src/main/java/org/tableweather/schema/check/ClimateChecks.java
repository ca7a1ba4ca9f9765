package org.tableweather.schema.check;

import java.util.List;

/** Rules of the air that the trials felt. */
public final class ClimateChecks {
    private static final CheckGroup GROUP = new CheckGroup("climate");

    public static final Check UNKNOWN = GROUP.warn(
            "unknown",
            "Every trial has a climate.",
            "a spot reading, a log that covers the time, or a climate stated for the session",
            "log the room, or state temperature and humidity on the session",
            "Tableweather10");

    public static final Check STATED = GROUP.note(
            "stated-by-hand",
            "One climate stated by hand stands for all trials of a session.",
            "a reading per trial or a log says more",
            "put a logger beside the table and add climate.csv",
            "Tableweather10");

    public static final Check LOG_GAP = GROUP.warn(
            "log-gap",
            "The log of the session's instrument covers the times of its trials.",
            "neighbouring readings at most 30 min apart; at either end of the log at most 5 min away",
            "log at least every 10 min, from before the first attempt until after the last",
            "CommonPractice");

    public static final Check LOG_WITHOUT_TIMES = GROUP.note(
            "log-without-times",
            "Trials without a time take the log's climate at the start of their session.",
            "started_at of the trial",
            "write started_at for each attempt",
            "Tableweather10");

    public static final Check SPOT_DIFFERS_FROM_LOG = GROUP.warn(
            "spot-differs-from-log",
            "Spot reading and log of the same moment agree.",
            "within 2 K and 10 %RH",
            "compare the two instruments side by side; check the clock and zone of the log",
            "CommonPractice");

    public static final Check NOT_HELD = GROUP.warn(
            "not-held",
            "A session's climate is held: a change of climate is a new session.",
            "range over a session's trials at most 6 %RH and 3 K",
            "split the session where the climate changed, or hold it better",
            "CommonPractice");

    public static final Check BED_BELOW_DEW_POINT = GROUP.warn(
            "bed-below-dew-point",
            "The bed is warmer than the dew point of the room's air; else it sweats.",
            "bed temperature above the dew point",
            "warm the table to the room before playing; check both readings",
            "ASHRAE2017");

    public static final Check DRY_ZERO = GROUP.warn(
            "humidity-zero",
            "A humidity of exactly 0 % is a failed sensor rather than a room.",
            "above 0 %",
            "leave the cell empty when the sensor gave nothing",
            "CommonPractice");

    public static final Check READING_REPEATED = GROUP.warn(
            "reading-repeated",
            "An instrument reads once at a time.",
            "each time once per instrument; the first reading stands",
            "take the second one out; look for the end of summer time",
            "CommonPractice");

    public static final Check READINGS_DISORDERED = GROUP.note(
            "readings-disordered",
            "Readings of an instrument are in the order of time.",
            "times that do not go back",
            "nothing: they were put in order",
            "CommonPractice");

    public static final Check UNCALIBRATED = GROUP.note(
            "uncalibrated",
            "Hygrometers are compared with something better known.",
            "at least one calibration of humidity per instrument",
            "keep the hygrometer over a saturated salt for a day, and add the calibration",
            "Greenspan1977");

    public static final Check NO_INSTRUMENT = GROUP.note(
            "no-instrument",
            "A session names the instrument that read its climate.",
            "instrument of the session",
            "add the instrument, with its stated accuracy",
            "Tableweather10");

    public static final Check BED_DAMP = GROUP.warn(
            "bed-damp",
            "The air at a cold bed stays drier than what feeds mould.",
            "below 80 %RH at the bed's temperature",
            "warm the table, or dry the room",
            "ASHRAE160");

    public static final Check BED_UNREAD = GROUP.note(
            "bed-unread",
            "A session on a heated table says how warm the bed was.",
            "bedC of the session",
            "read the bed with a contact thermometer: a heated bed is a dry bed",
            "ASHRAE2017");

    public static final Check HEAT = GROUP.warn(
            "heat-danger",
            "Nobody shoots in heat that makes people ill.",
            "heat index below 103 °F (39.4 °C)",
            "cool the room; people come before data",
            "NwsHeatIndex");

    public static final Check DAMP_ROOM = GROUP.note(
            "damp-room",
            "A room is not kept damp for long.",
            "mean at most 60 %RH",
            "dry room and cloth after the session",
            "EPA402");

    public static final Check DAMP_MOULD = GROUP.note(
            "damp-mould",
            "A room is not kept so damp that mould grows.",
            "mean below 80 %RH",
            "keep humid series short, and dry the room between them",
            "ASHRAE160");

    public static final Check DEW_POINT_EXTREME = GROUP.warn(
            "dew-point-extreme",
            "No room is damper than the dampest places of the earth.",
            "dew point at most 30 °C",
            "check both readings and their units",
            "CommonPractice");

    public static final Check TEMPERATURE_JUMP = GROUP.warn(
            "temperature-jump",
            "A room's air changes slowly from reading to reading.",
            "at most 5 K within 10 min",
            "look for a moved sensor, a draught, or a mistyped reading",
            "CommonPractice");

    public static final Check HUMIDITY_JUMP = GROUP.warn(
            "humidity-jump",
            "A room's humidity changes slowly from reading to reading.",
            "at most 15 %RH within 10 min",
            "look for a moved sensor, breath on it, or a mistyped reading",
            "CommonPractice");

    public static final Check HUMIDITY_STUCK = GROUP.warn(
            "humidity-stuck",
            "A working hygrometer moves when the temperature does.",
            "no 24 equal readings over 6 h in which the temperature moves by more than 1 K",
            "replace the sensor, or leave its readings out",
            "CommonPractice");

    public static final Check PRESSURE_ALTITUDE = GROUP.warn(
            "pressure-altitude",
            "The pressure is the room's own, not reduced to sea level.",
            "within 6 % of the standard atmosphere at the room's altitude",
            "give the station pressure; correct altitudeM",
            "USSA1976");

    public static final Check STATED_DIFFERS_FROM_LOG = GROUP.warn(
            "stated-differs-from-log",
            "The climate stated by hand and the log at the session's start agree.",
            "within 2 K and 10 %RH",
            "compare the two instruments; check the clock and zone of the log",
            "CommonPractice");

    public static final Check HUMIDITY_FRACTION = GROUP.warn(
            "humidity-fraction",
            "Humidity is in per cent.",
            "above 1 % where it is not 0",
            "multiply by 100",
            "CommonPractice");

    private ClimateChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
