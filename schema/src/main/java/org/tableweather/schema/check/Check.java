package org.tableweather.schema.check;

/**
 * One rule.
 *
 * @param id {@code group.rule}, never renamed, never reused: {@code climate.dew-point-below-air}
 * @param severity what a finding means
 * @param title the rule in one sentence
 * @param bound the bound in words and figures, with units
 * @param remedy what to do about a finding
 * @param reference key in {@code references.bib}
 */
public record Check(String id, Severity severity, String title, String bound, String remedy, String reference) {}
