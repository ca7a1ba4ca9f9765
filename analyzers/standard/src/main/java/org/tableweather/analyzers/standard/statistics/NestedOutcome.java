package org.tableweather.analyzers.standard.statistics;

/** A fit of the nested model, or why there is none. */
public sealed interface NestedOutcome permits NestedFit, NestedRefusal {}
