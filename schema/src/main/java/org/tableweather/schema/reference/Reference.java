package org.tableweather.schema.reference;

import java.util.Optional;

/**
 * One source.
 *
 * @param key how code, checks and docs cite it: {@code Satterthwaite1946}
 * @param kind {@code standard}, {@code handbook}, {@code paper}, {@code dataset}, {@code software},
 *     {@code common-practice} (no source) or {@code from-memory} (value to be confirmed)
 * @param citation author, year, title and where, in one line of plain text
 * @param doi DOI, without resolver
 * @param note what was seen of it: a stored copy, a second-hand quotation, nothing
 */
public record Reference(String key, String kind, String citation, Optional<String> doi, Optional<String> note) {}
