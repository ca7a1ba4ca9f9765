package org.tableweather.schema.check;

import java.util.List;

/** Rules of hygrometers and thermometers: what is stated of them and how they were compared. */
public final class InstrumentChecks {
    private static final CheckGroup GROUP = new CheckGroup("instrument");

    public static final Check ACCURACY_UNSTATED = GROUP.note(
            "accuracy-unstated",
            "An instrument states the accuracy of what it reads.",
            "accuracyRhPct for humidity, accuracyC for temperature",
            "copy it from the data sheet",
            "JCGM100");

    public static final Check ACCURACY_POOR = GROUP.warn(
            "accuracy-poor",
            "An instrument is accurate enough to tell one climate from another.",
            "± 5 %RH and ± 1.5 K",
            "use a better one, or compare it with a saturated salt and add the calibration",
            "CommonPractice");

    public static final Check RESOLUTION_COARSE = GROUP.warn(
            "resolution-coarse",
            "An instrument shows steps finer than its accuracy.",
            "resolution at most twice the stated accuracy",
            "check both figures; do not round the readings",
            "CommonPractice");

    public static final Check CALIBRATION_OLD = GROUP.warn(
            "calibration-old",
            "A hygrometer was compared within a year before its session.",
            "366 days",
            "compare it again, also after the sessions: the older comparison then still counts",
            "CommonPractice");

    public static final Check CALIBRATION_ERROR = GROUP.warn(
            "calibration-error",
            "A comparison finds the instrument near the reference.",
            "within 10 %RH and 2 K",
            "check the comparison; an instrument so far off is unfit",
            "CommonPractice");

    public static final Check BEYOND_ACCURACY = GROUP.note(
            "beyond-accuracy",
            "An instrument keeps what its data sheet says.",
            "stated accuracy and twice the standard uncertainty of the reference, added in quadrature",
            "keep the calibration with the data: a constant offset shifts a room, not its slope",
            "JCGM100");

    public static final Check DRIFT = GROUP.warn(
            "drift",
            "An instrument does not drift from one comparison to the next.",
            "errors within 3 %RH (references within 10 %RH) or 0.5 K of each other",
            "renew the sensor; compare before and after each series of sessions",
            "CommonPractice");

    public static final Check SALT_UNKNOWN = GROUP.warn(
            "salt-unknown",
            "A comparison over a saturated salt names a salt of the table.",
            "LiCl, MgCl2, K2CO3, Mg(NO3)2, NaBr, KI, NaCl, KCl, K2SO4",
            "write its formula",
            "Greenspan1977");

    public static final Check SALT_VALUE = GROUP.warn(
            "salt-value",
            "The humidity over a saturated salt is the published one.",
            "the value at saltTempC, else those from 15 to 30 °C, ± 1 %RH",
            "take the value at the temperature of the salt from the table",
            "Greenspan1977");

    public static final Check CALIBRATED_QUANTITY = GROUP.warn(
            "calibrated-quantity",
            "An instrument was compared in what it reads.",
            "one of its quantities",
            "add the quantity to the instrument, or correct the calibration",
            "Tableweather10");

    public static final Check TWO_CALIBRATION_FORMS = GROUP.warn(
            "salt-of-another-method",
            "A salt belongs to a comparison over a saturated salt of humidity.",
            "quantity humidity and method saturated-salt",
            "write method saturated-salt, or leave the salt out",
            "Tableweather10");

    private InstrumentChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
