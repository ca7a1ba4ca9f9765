/**
 * The rows and entries of the open schema as immutable records.
 *
 * <p>Component names are the schema's field names in camelCase with the unit at the end ({@code rhPct}, {@code speedMps});
 * the JSON carries them as they are, the CSV files in snake_case ({@code rh_pct}). What was not measured is empty: an
 * absent {@link java.util.Optional}, an empty string, or, in the per-trial columns where millions of rows are held,
 * {@link java.lang.Double#NaN}.
 */
package org.tableweather.schema.record;
