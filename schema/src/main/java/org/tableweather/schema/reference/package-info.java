/** The only door to {@code references.bib}, where every source is spelled out once. */
package org.tableweather.schema.reference;
