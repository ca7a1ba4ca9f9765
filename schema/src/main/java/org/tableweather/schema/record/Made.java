package org.tableweather.schema.record;

/** Whether the attempt reached its target; every attempt is logged, made or missed. */
public enum Made {
    /** The ball went in, or the target was hit. */
    YES,
    /** A miss. */
    NO,
    /** Not stated. */
    NOT_STATED
}
