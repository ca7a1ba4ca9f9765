package org.tableweather.schema.check;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * What a check found, and where.
 *
 * @param check id of the check
 * @param severity its severity
 * @param file {@code trials.csv} ...
 * @param row as a spreadsheet counts: the header is row 1; empty for JSON and for the file as a whole
 * @param column CSV column or JSON pointer; empty for the row or file as a whole
 * @param value what stands there, shortened
 * @param bound the bound it breaks
 * @param message what is wrong, in words
 * @param remedy what to do
 * @param reference key in {@code references.bib}
 */
public record Finding(
        String check,
        Severity severity,
        String file,
        OptionalLong row,
        Optional<String> column,
        Optional<String> value,
        String bound,
        String message,
        String remedy,
        String reference) {}
